package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/curve"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// batten is a stick lashed flat along the ribs.
type batten struct {
	wood         timber.Species
	width, depth float64 // along and off the rib, mm
}

// battens judges the keel and the stringers.
func (r *Report) battens() error {
	d := r.Frame.Design
	wood, err := d.Wood(d.Keel.Species)
	if err != nil {
		return err
	}
	keel := batten{wood, float64(d.Keel.Width), float64(d.Keel.Depth)}
	worst := 0.0
	for _, rib := range r.Frame.Ribs {
		_, up := bendAt(r.Frame.Keel.Line, rib.Station)
		worst = math.Max(worst, math.Abs(up))
	}
	r.note(keel.judge("keel", worst, 0))
	return r.stringers()
}

// bendAt returns how a line is curved at the station x, outward in plan and upward in
// profile, 1/mm of station.
func bendAt(line *curve.Track, x float64) (out, up float64) {
	const h = 0.5 // mm
	lo, hi := line.Ends()
	x = math.Min(math.Max(x, lo+h), hi-h)
	y1, z1 := line.Slopes(x - h)
	y2, z2 := line.Slopes(x + h)
	return (y2 - y1) / (2 * h), (z2 - z1) / (2 * h)
}

// stress is that of the corner when it is curved by off over its depth and by
// along over its width, N/mm2.
func (b batten) stress(off, along float64) float64 {
	return b.wood.MOE * (b.depth*off + b.width*along) / 2
}

// judge takes the batten dry where the stress allows, else by the bands of a
// steamed bend, the harder of its two ways.
func (b batten) judge(part string, off, along float64) finding.Finding {
	f := byStress(part, b.wood, b.stress(off, along), finding.TooTight)
	if f.Verdict.Passes() {
		return f
	}
	spare := ""
	if thin := 2*f.Limit/b.wood.MOE - b.width*along; off > 0 && thin/off >= b.depth/2 {
		spare = fmt.Sprintf("%.1f mm thinner there would bend dry, but only where the cloth clears the ribs by more than that", math.Ceil((b.depth-thin/off)*10)/10)
	}
	f = steamed(part, b.wood, innerRatio(off, b.depth), false)
	if side := steamed(part, b.wood, innerRatio(along, b.width), false); side.Verdict > f.Verdict {
		f = side
	}
	if f.Verdict.Passes() {
		f.Cure = spare
		return f
	}
	f.Cure = fmt.Sprintf("%.1f mm thinner there and steamed", math.Ceil(b.depth*(1-f.Value/f.Limit)*10)/10)
	return f
}

// innerRatio is the inner radius over the thickness for a curvature at
// mid-thickness; +Inf when straight.
func innerRatio(curvature, thickness float64) float64 {
	return 1/(curvature*thickness) - 0.5
}
