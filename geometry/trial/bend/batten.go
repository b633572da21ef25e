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
	name         string
	wood         timber.Species
	line         *curve.Track
	width, depth float64 // along and off the rib, mm
}

// battens judges the stringers and the keel.
//
// A stringer is lashed flat on every rib, so it bends both off the rib, over its
// depth, and along it, over its width; the two stresses meet in a corner. From
// the last rib but one on to the stem it leaves the ribs' slope and turns its flat
// into the bend as it is let down onto the stem, so there the whole bend is taken
// over its depth.
func (r *Report) battens() error {
	d := r.Frame.Design
	wood, err := d.Wood(d.Keel.Species)
	if err != nil {
		return err
	}
	keel := batten{"keel", wood, r.Frame.Keel.Line, float64(d.Keel.Width), float64(d.Keel.Depth)}
	worst := 0.0
	for _, rib := range r.Frame.Ribs {
		_, up := keel.bendAt(rib.Station)
		worst = math.Max(worst, math.Abs(up))
	}
	r.note(keel.judge("keel", worst, 0))
	if wood, err = d.Wood(d.Stringers.Species); err != nil {
		return err
	}
	for _, s := range r.Frame.Stringers {
		b := batten{fmt.Sprintf("stringer %d", s.Number), wood, s.Line, float64(d.Stringers.Width), float64(d.Stringers.Depth)}
		r.judgeStringer(b, s.Share)
	}
	return nil
}

// judgeStringer looks at every rib, where a batten through pins bends most.
func (r *Report) judgeStringer(b batten, share float64) {
	var off, along, end float64
	for i, rib := range r.Frame.Ribs {
		out, up := b.bendAt(rib.Station)
		if i < 2 || i >= len(r.Frame.Ribs)-2 {
			end = math.Max(end, math.Hypot(out, up))
			continue
		}
		_, heading := rib.Section.Half.At(share * rib.Section.Half.Length())
		sin, cos := math.Sincos(heading)
		o, a := math.Abs(out*sin-up*cos), math.Abs(out*cos+up*sin)
		if b.stress(o, a) > b.stress(off, along) {
			off, along = o, a
		}
	}
	r.note(b.judge(b.name, off, along))
	r.note(b.judge(b.name+", ends", end, 0))
}

// bendAt returns how the batten is curved at the station x, outward in plan and
// upward in profile, 1/mm of station.
func (b batten) bendAt(x float64) (out, up float64) {
	const h = 0.5 // mm
	lo, hi := b.line.Ends()
	x = math.Min(math.Max(x, lo+h), hi-h)
	y1, z1 := b.line.Slopes(x - h)
	y2, z2 := b.line.Slopes(x + h)
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
		spare = fmt.Sprintf("%.1f mm thinner there to bend it dry", math.Ceil((b.depth-thin/off)*10)/10)
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
