package bend

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/finding"
	"ribwright/geometry/wood/beam"
)

// seated judges the gunwales under each hung seat: all of a person's load on the front rail,
// the heavier side's share of it on one hanger, on top of what the gunwale bears at rest: at
// the hanger's bolts and the mortises beside it.
//
// How: a gunwale is a beam on the heads of its ribs, pinned at the stems. A rib gives above
// its bottom arc, which slats, keel, stringers and the water under the cloth hold; cross
// pieces keep the gunwales apart. A hanger pulls along itself: the rail that is pegged to
// both keeps their feet apart. Cloth, stringers and outwales, which help, are left out. An
// estimate: the bottom is no rock. Afloat the whole frame bends too, which is not judged here,
// nor are the ribs beside the hanger.
func (r *Report) seated(s seat.Seat) {
	h, at := s.Hung.Front.Hanger, pulls(r.Frame, s)
	bent, ok := r.rails().Under(at...)
	if !ok {
		return
	}
	l := loaded{Report: r, bent: bent}
	for _, m := range r.Frame.Gunwale.Mortises {
		if math.Abs(m.Station-h.Station) <= float64(r.Frame.Design.Ribs.Pitch) { // farther off the load hardly bends it
			hole := []beam.Opening{slot(m), r.Joints.Head.Out(r.Frame.Gunwale.Width)}
			l.take("mortise "+m.Rib, m.Station, hole, hole)
		}
	}
	for _, b := range at {
		l.take("a hanger", b.At, h.Out(), []beam.Opening{h.Bored()})
	}
	f := finding.Finding{About: s.Name + ", gunwale under its load, the bottom held, at " + l.of, Verdict: finding.Holds, Standing: finding.Estimate,
		Measure: finding.Measure{Value: l.most, Limit: r.Boat.Wood.MOR / seat.WantFactor, Unit: stressUnit, AtMost: true}}
	if !(f.Value <= f.Limit) {
		f.Verdict = finding.Weak
	}
	r.noteCure(f, "a sweep that begins nearer midship (gunwale.edge_set_from), wider gunwales, or a saddle (kind = \"saddle\")")
}

// loaded is a gunwale that a load bends, and the most that it bears at a hole taken so far.
type loaded struct {
	*Report
	bent beam.Curved
	most float64
	of   string
}

// take adds a hole: what is out while the gunwale lies at rest, and what the load finds out.
func (l *loaded) take(of string, x float64, out, then []beam.Opening) {
	g := &l.Frame.Gunwale
	n, rest := l.opened(x, out...)
	tall, flat := l.bent.At(x)
	load := beam.Opened(g.Width, g.Height, nil, then...).Over(func(y, z float64) float64 {
		return -l.Boat.Wood.MOE * (tall*(z-g.Height/2) + flat*y)
	})
	if bears := n.Worst(func(y, z float64) float64 { return rest(y, z) + load(y, z) }); bears > l.most {
		l.most, l.of = bears, of
	}
}

// pulls are those of the front hanger's bolts.
func pulls(f *frame.Frame, s seat.Seat) (out []beam.Point) {
	h := s.Hung.Front.Hanger
	down := s.Share() / float64(len(h.Bolts))
	for _, b := range h.Bolts {
		out = append(out, beam.Point{At: f.Gunwale.StationOf(b), Up: -down, Across: -down * math.Tan(h.Lean())})
	}
	return out
}

// rails is a gunwale on the heads of its ribs.
func (r *Report) rails() beam.Resting {
	f, b := r.Frame, r.Boat
	g := &f.Gunwale
	out := beam.Resting{Lean: g.Tilt,
		Tall: b.Wood.MOE * beam.Rectangle(g.Width, g.Height).Inertia,
		Flat: b.Wood.MOE * beam.Rectangle(g.Height, g.Width).Inertia}
	for _, rib := range f.Ribs {
		out.On = append(out.On, headGives(rib, b.Ribs.MOE*beam.Rectangle(float64(f.Design.Ribs.Width), rib.Thickness).Inertia))
	}
	for _, c := range f.Thwarts {
		out.On = append(out.On, beam.Support{At: c.At, Across: math.Inf(1)})
	}
	aft, fore := g.Line.Ends()
	for _, x := range []float64{aft, fore} {
		out.On = append(out.On, beam.Support{At: x, Up: math.Inf(1), Across: math.Inf(1)})
	}
	return out
}

// headGives is how a rib's head gives, with its stiffness against bending, N mm2. With the
// levers a outward and c upward from a place of the rib to its head,
//
//	E I up = V ∫ a² ds - H ∫ a c ds    E I out = H ∫ c² ds - V ∫ a c ds
//
// for a push V up and H outward, over what lies beyond the bottom arc; over all of a rib that has
// no such arc of its own. Length that the wood gives is added to both, so that a rib without a
// bend is no rigid post.
// Source: Castigliano, as in S. Timoshenko, Strength of Materials.
func headGives(rib frame.Rib, stiff float64) beam.Support {
	half := rib.Section.Half
	head, _ := half.End()
	var up, out, both float64
	half.Along(func(bend int, p geometry.Point, ds float64) {
		if bend == 0 && !rib.Section.Merged {
			return
		}
		a, c := head.X-p.X, head.Y-p.Y
		shrinks := ds * rib.Thickness * rib.Thickness / 12
		up, out, both = up+ds*a*a+shrinks, out+ds*c*c+shrinks, both+ds*a*c
	})
	det := up*out - both*both
	return beam.Support{At: rib.Station, Up: stiff * out / det, Across: stiff * up / det, Both: stiff * both / det}
}
