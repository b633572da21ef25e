package fair

import (
	"fmt"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/survey/offsets"
	"ribwright/geometry/water/float"
)

// Displaced is the volume of the measured boat, of the faired one as its cloth makes it,
// and of the faired one if the cloth lay on its ribs' curves, mm3, all up to one
// waterline, mm above the baseline.
type Displaced struct{ Waterline, Measured, Faired, Smooth float64 }

// More is by what share a volume is more than the measured one; negative for less.
func (d Displaced) More(volume float64) float64 { return volume/d.Measured - 1 }

// displaced floats both boats level at the designed waterline: the measured one by the
// sections of its table.
func displaced(t *offsets.Table, f *frame.Frame) (Displaced, error) {
	out := Displaced{Waterline: float64(f.Design.Hull.Waterline)}
	old, err := t.Hull()
	if err != nil {
		return out, err
	}
	cloth, err := skin.Of(f)
	if err != nil {
		return out, fmt.Errorf("the faired boat cannot be covered: %w", err)
	}
	smooth, err := skin.Smooth(f, cloth)
	if err != nil {
		return out, fmt.Errorf("the faired boat cannot be covered: %w", err)
	}
	for _, v := range []struct {
		to   *float64
		hull *float.Hull
	}{{&out.Measured, old}, {&out.Faired, cloth.Hull}, {&out.Smooth, smooth}} {
		*v.to = v.hull.Immerse(float.Level(out.Waterline)).Volume
	}
	if !(out.Measured > 0) {
		return out, fmt.Errorf("the measured boat holds nothing under the waterline at %.0f mm; its heights must be measured up from the keel", out.Waterline)
	}
	return out, nil
}
