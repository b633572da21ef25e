package sizing

import (
	"fmt"
	"math"

	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water/float"
)

// Change is what a boat for open or moving water has otherwise than the same people's boat
// for sheltered water.
type Change struct{ What, Sheltered, Here, Why string }

// watered lists what waters may change, with why; common practice, no source.
func watered() []struct{ name, what, why string } {
	return []struct{ name, what, why string }{
		{"hull.rocker_bow", "Rocker at each end", "the ends swing round with less water in the way, and ride up on a wave"},
		{"hull.keel_straight", "Straight keel", "a shorter one lets go and turns"},
		{"hull.length", "Length", "a shorter boat turns in less room"},
		{"fullness", "Width at the quarters, of the beam", "volume in the ends lifts them before water comes in"},
		{"hull.depth", "Depth", "more side over the water keeps waves out"},
		{"end_rise", "Rise of the gunwales sprung in at the ends", "higher ends keep waves out; the wind catches them too"},
		{"freeboard", "Least freeboard at the load", "what waves may reach before water comes in"},
		{"hull.beam", "Beam", "stands up to the lever that is aimed at"},
		{"seat_height", "Seat over the floor", "stands up to the lever that is aimed at"},
		{"lever_want", "Righting lever aimed at", "rough water rolls a boat harder"},
	}
}

// Beside compares a settled case with that of the same people on sheltered water: nil where
// it is sheltered itself. Rows that are alike to
// 0.3 % are left out.
func (c *Case) Beside(sheltered *Case) (out []Change) {
	if c.Brief.Waters == family.Sheltered {
		return nil
	}
	for _, w := range watered() {
		k, err := c.Family.Program.Kind(w.name)
		if err != nil || k.Class != formula.Number {
			continue // a family of the builder's own may do without
		}
		show := func(v float64) string { return fmt.Sprintf("%.1f %%", 100*v) }
		if k.Dim == formula.Length {
			show = func(v float64) string { return fmt.Sprintf("%.0f mm", v) }
		}
		if a, b := sheltered.run.Number(w.name), c.run.Number(w.name); math.Abs(b-a) > 0.003*math.Abs(a) && show(a) != show(b) {
			out = append(out, Change{w.what, show(a), show(b), w.why})
		}
	}
	if a, b := sheltered.turning(), c.turning(); a > 0 && math.Abs(b/a-1) > 0.02 {
		out = append(out, Change{"Resists being turned on the spot", "100 %", fmt.Sprintf("%.0f %%", 100*b/a), "the skin under water far from midship, by the cube of its distance; an estimate that compares boats"})
	}
	return out
}

// turning is what holds a boat that is turned on the spot, mm5: the depth of skin under
// water times the cube of its distance from midship, summed along the boat. A section that
// is drawn sideways through still water meets a force that goes with its depth and with the
// square of its speed, so with that of its distance; the moment takes one distance more
// (Hoerner's cross-flow, with one coefficient all along).
func (c *Case) turning() float64 { return turning(c.lying.hull, c.lying.rest.Plane) }

func turning(h *float.Hull, p float.Plane) (sum float64) {
	if h == nil {
		return 0
	}
	const steps = 400
	aft, fore := h.Ends()
	step := (fore - aft) / steps
	for i := range steps {
		x := aft + (float64(i)+0.5)*step
		keel, _ := h.Heights(x)
		sum += math.Max(0, p.Water(x)-keel) * math.Abs(x*x*x) * step
	}
	return sum
}

// Sheltered is the case of the same brief on sheltered water, with the values that were set
// by hand.
//
// Errors: those of NewCase and Settle.
func (c *Case) Sheltered() (*Case, error) {
	b := c.Brief
	b.Waters = family.Sheltered
	s, err := NewCase(c.Family, b)
	if err != nil {
		return nil, err
	}
	for name, v := range c.hand {
		if err := s.Set(name, v); err != nil {
			return nil, err
		}
	}
	return s, s.Settle()
}
