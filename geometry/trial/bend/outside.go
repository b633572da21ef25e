package bend

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/beam"
	"ribwright/geometry/wood/fasten"
	"ribwright/geometry/wood/timber"
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
		r.pulled(s, wood, flat)
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

// pulled judges the screws of an outwale of a wood that springs back from a bend: the one at its
// end holds the moment with the lever to the next. Screws in a gunwale are shallower than building
// rules want; what is told is how deep they are.
func (r *Report) pulled(s outside.Strip, wood timber.Species, curvature float64) {
	if s.Screws == nil {
		return
	}
	n := len(s.Screws)
	lever := math.Min(s.Screws[1]-s.Screws[0], s.Screws[n-1]-s.Screws[n-2])
	pull := wood.MOE * beam.Rectangle(s.Tall, s.Across).Inertia * curvature / lever
	thread := math.Min(s.Into, s.Screw*2/3) // of a wood screw's length; common practice, no source
	holds := fasten.Withdraws(r.Boat.Wood.Gravity(), fasten.Number6Shank, thread) * fasten.Wet
	about := fmt.Sprintf("outwale's screws, pulled by its spring, %.0f mm deep", s.Into)
	if want := fasten.ScrewDeep * fasten.Number6Shank; s.Into < want {
		about += fmt.Sprintf(" (%.0f by building rules)", want)
	}
	r.bears(about, joint.One(pull, holds), "a thinner outwale (outside.outwale)")
	if short := s.EdgeShort(); short > 1e-9 {
		r.short("outwale", fmt.Sprintf("its screws stand %.0f mm from its edges, %.0f mm are wanted; give outside.outwale_height %.0f mm", s.Tall/2, (s.Tall+short)/2, math.Ceil(s.Tall+short)))
	}
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
