package bend

import (
	"math"

	"ribwright/geometry/boat/outside"
	"ribwright/geometry/finding"
)

// Outside is what goes on over the skin, and how its strips take their bends.
type Outside struct {
	outside.Fit
	Outwales, UnderKeel finding.Finding // zero where there are none
}

// outside judges the strips outside the skin. An outwale follows its gunwale, flat and
// edgewise; the strip under the keel follows the keel.
func (r *Report) outside() error {
	out := Outside{Fit: outside.Of(r.Frame)}
	wood, err := r.Frame.Design.Wood(out.Wood)
	if err != nil {
		return err
	}
	if s := out.Outwale; s.There() {
		flat, edge := 0.0, 0.0
		sin, cos := math.Sincos(r.Frame.Gunwale.Tilt)
		for _, x := range r.AtRest.X {
			over, up := bendAt(r.Frame.Gunwale.Line, x)
			flat, edge = math.Max(flat, math.Abs(over*cos-up*sin)), math.Max(edge, math.Abs(over*sin+up*cos))
		}
		out.Outwales = batten{wood, s.Tall, s.Across}.judge("outwale", flat, edge)
		r.note(out.Outwales)
	}
	if s := out.Keel; s.There() {
		worst := 0.0
		for _, rib := range r.Frame.Ribs {
			_, up := bendAt(r.Frame.Keel.Line, rib.Station)
			worst = math.Max(worst, math.Abs(up))
		}
		out.UnderKeel = batten{wood, s.Tall, s.Across}.judge("strip under the keel", worst, 0)
		r.note(out.UnderKeel)
	}
	r.Outside = out
	return nil
}
