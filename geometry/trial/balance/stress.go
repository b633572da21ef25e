package balance

import (
	"math"
	"slices"

	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// Glue is what gluing does to a gunwale: how far its plies are bent before the
// glue holds them, and how much of the designed curve the finished stick keeps by
// itself.
type Glue struct {
	Plies int     // as glued in the bend: 1 when they are glued straight, for then they bend as one
	Form  float64 // curvature of the plies when they are glued, over the designed one
	Back  float64 // share of that curvature lost when it comes off
	Kept  float64 // what is left, over the designed curvature: Form (1 - Back)
}

// glueOf reads it from a design. Source of what springs back: timber.Springback.
func glueOf(d *design.Design) (Glue, error) {
	g := Glue{Plies: d.Gunwale.Plies}
	if d.Gunwale.Glued == design.GluedStraight || d.Gunwale.Plies < 2 {
		return Glue{Plies: 1, Back: 1}, nil
	}
	s, err := timber.Springback(slices.Repeat([]float64{float64(d.Gunwale.Width) / float64(g.Plies)}, g.Plies))
	if err != nil {
		return g, err
	}
	g.Back = math.Min(s*d.Bending.GlueCreep, 0.95)
	g.Form = 1
	if d.Gunwale.Glued == design.GluedOnForm {
		g.Form = 1 / (1 - g.Back)
	}
	g.Kept = g.Form * (1 - g.Back)
	return g, nil
}

// Back returns the share of a form's curvature that the plies of the design lose
// when they are glued on one, whether they are or not; 1 for a single ply.
func (b *Boat) Back() float64 {
	d := *b.Frame.Design
	d.Gunwale.Glued = design.GluedOnForm
	g, err := glueOf(&d)
	if err != nil {
		return 1
	}
	return g.Back
}

// Layer is the bending stress in plan through one ply, N/mm2, straight from face to face;
// pulls are positive.
type Layer struct {
	In, Out     float64 // its faces off the middle of the stack, outboard positive, mm
	AtIn, AtOut float64
}

// Layers returns the stress in every ply, from the inner face outward, of a stack of the
// given width in mm that was glued at Form times the curvature designed and is now held at
// now (y” of the port gunwale, 1/mm).
//
// How: a ply has its own bend from the gluing, and from then on bends with the
// stack: at the height y of the stack, c the middle of the ply, the strain is
// (y - c) form + y (now - form), a pull where a stick that bulges is farthest out.
func (g Glue) Layers(moe, width, designed, now float64) []Layer {
	form, ply := g.Form*designed, width/float64(g.Plies)
	out := make([]Layer, g.Plies)
	for i := range out {
		in := float64(i)*ply - width/2
		at := func(y float64) float64 { return -moe * ((y-in-ply/2)*form + y*(now-form)) }
		out[i] = Layer{In: in, Out: in + ply, AtIn: at(in), AtOut: at(in + ply)}
	}
	return out
}

// Rest is the stress in a gunwale at one place, N/mm2.
type Rest struct {
	X    float64 // station, mm
	Plan float64 // from the bend in plan, plies and all
	Edge float64 // from the edge-set, in the tall way: the underside is pulled, the top pressed

	Plies []Layer // what Plan is the greatest of
}

// At is the stress at a place of the section, pulls positive: off the middle of the width,
// outboard positive, and over the underside of a gunwale of that height, mm.
func (r Rest) At(across, up, height float64) float64 {
	edge := r.Edge * (1 - 2*up/height)
	for i, p := range r.Plies {
		if across < p.Out || i == len(r.Plies)-1 {
			return edge + p.AtIn + (p.AtOut-p.AtIn)*(across-p.In)/(p.Out-p.In)
		}
	}
	return edge
}

// Sum is the stress in the corner where both meet.
func (r Rest) Sum() float64 { return r.Plan + r.Edge }

// Rests returns the stress in the gunwale at every node of a state.
func (b *Boat) Rests(s *State) []Rest {
	out := make([]Rest, len(s.X))
	for i, x := range s.X {
		out[i] = b.rest(x, s.Moment[i])
	}
	return out
}

// RestAt returns the stress in the gunwale at a station between its ends, mm: its moment
// runs straight from node to node.
func (b *Boat) RestAt(s *State, x float64) Rest {
	i, _ := slices.BinarySearch(s.X, x)
	i = min(max(i, 1), len(s.X)-1)
	lo, hi := s.X[i-1], s.X[i]
	return b.rest(x, s.Moment[i-1]+(s.Moment[i]-s.Moment[i-1])*(x-lo)/(hi-lo))
}

func (b *Boat) rest(x, moment float64) Rest {
	plies := b.planStress(x, moment)
	return Rest{x, most(plies), b.edgeStress(x), plies}
}

// Worst returns the place where the gunwale is stressed most.
func (b *Boat) Worst(s *State) Rest {
	const alike = 1 + 1e-9 // two ends that are alike, but for rounding: the after one
	var worst Rest
	for _, r := range b.Rests(s) {
		if r.Sum() > alike*worst.Sum() {
			worst = r
		}
	}
	return worst
}

func most(plies []Layer) (worst float64) {
	for _, p := range plies {
		worst = max(worst, math.Abs(p.AtIn), math.Abs(p.AtOut))
	}
	return worst
}

// planStress is the stress at the station x under the moment of the model there.
// The stick is bent by moment cos ψ over its stiffness beyond what it keeps by
// itself.
func (b *Boat) planStress(x, moment float64) []Layer {
	g := &b.Frame.Gunwale
	designed := b.Curvature(x)
	now := b.Glue.Kept*designed + moment*math.Cos(g.Tilt)/b.Stiff()
	return b.Glue.Layers(b.Wood.MOE, g.Width, designed, now)
}

// edgeStress is the stress from the sprung edge-set at the station x. Gluing the plies
// bent does not ease it: they are as tall as the gunwale.
func (b *Boat) edgeStress(x float64) float64 {
	set, u := b.Frame.Hull.Sheer.At(x)
	if u < set.From || set.Sprung() == 0 {
		return 0
	}
	return b.Wood.MOE * set.Strain(b.Frame.Gunwale.Height)
}
