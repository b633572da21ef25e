package balance

import "math"

// Rest is the stress in a gunwale at one place, N/mm2.
type Rest struct {
	X    float64 // station, mm
	Plan float64 // from the bend in plan, plies and all
	Edge float64 // from the edge-set, in the tall way
}

// Sum is the stress in the corner where both meet.
func (r Rest) Sum() float64 { return r.Plan + r.Edge }

// Rests returns the stress in the gunwale at every node of a state.
func (b *Boat) Rests(s *State) []Rest {
	out := make([]Rest, len(s.X))
	for i, x := range s.X {
		out[i] = Rest{x, b.planStress(x, s.Moment[i]), b.edgeStress(x)}
	}
	return out
}

// Worst returns the place where the gunwale is stressed most.
func (b *Boat) Worst(s *State) Rest {
	var worst Rest
	for _, r := range b.Rests(s) {
		if r.Sum() > worst.Sum() {
			worst = r
		}
	}
	return worst
}

// planStress is the stress at the station x under the moment of the model there.
// The stick is bent by moment cos ψ over its stiffness beyond what it keeps by
// itself.
func (b *Boat) planStress(x, moment float64) float64 {
	g := &b.Frame.Gunwale
	designed := b.Curvature(x)
	now := b.Glue.Kept*designed + moment*math.Cos(g.Tilt)/b.stiff()
	return b.Glue.Stress(b.Wood.MOE, g.Width, designed, now)
}

// edgeStress is the stress from the edge-set at the station x. Gluing the plies
// bent does not ease it: they are as tall as the gunwale.
func (b *Boat) edgeStress(x float64) float64 {
	set, u := b.Frame.Hull.Sheer.BowSet, x
	if x < 0 {
		set, u = b.Frame.Hull.Sheer.SternSet, -x
	}
	if u < set.From || set.Rise == 0 {
		return 0
	}
	return b.Wood.MOE * set.Strain(b.Frame.Gunwale.Height)
}
