package bend

import (
	"math"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/finding"
)

// Outside is what goes on over the skin, and how its strips take their bends.
type Outside struct {
	outside.Fit
	Outwales, UnderKeel finding.Finding // zero where there are none
}

// outside judges the strips outside the skin. An outwale follows its gunwale, flat and
// edgewise where that is sprung; the strip under the keel follows the keel.
func (r *Report) outside(fit outside.Fit) error {
	out := Outside{Fit: fit}
	wood, err := r.Frame.Design.Wood(out.Wood)
	if err != nil {
		return err
	}
	if s := out.Outwale; s.There() {
		flat, edge := r.gunwaleBends()
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

// gunwaleBends returns the sharpest curvature of the gunwale off its flat and, where an
// edge-set begins, along it, 1/mm. The two are not at one place, and are taken as if they
// were.
func (r *Report) gunwaleBends() (flat, edge float64) {
	for _, x := range r.AtRest.X {
		flat = math.Max(flat, math.Abs(r.Boat.Curvature(x)))
	}
	for _, set := range []hull.EdgeSet{r.Frame.Hull.Sheer.BowSet, r.Frame.Hull.Sheer.SternSet} {
		if set.Rise > 0 {
			edge = math.Max(edge, 1/set.Unmade().Radius())
		}
	}
	return flat, edge
}
