package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/report"
)

// headFigure draws a rib's head in its mortise, across the gunwale and from inboard.
func (w *writer) headFigure(h joint.Head) report.Figure {
	g, d := &w.Frame.Gunwale, w.Frame.Design
	m := g.Mortises[0]
	for _, o := range g.Mortises {
		if o.Rib == h.WallRib {
			m = o
		}
	}
	per := jointScale(150, g.Height+45, 160, 120)
	s := newSketch("rib-head", "Rib to gunwale", per)
	// Across the gunwale, inboard to the left, upright: the slot with the rib's lean.
	half, t := g.Width/2, h.Thick/2
	s.box(layout.Cut, -half, 0, half, g.Height)
	lean := math.Tan(m.Bevel)
	slot := func(y, off float64) geometry.Point { return geometry.Pt(off+y*lean, y) }
	s.path(layout.Mark, curve.Polyline(slot(0, -m.Width/2), slot(m.Depth, -m.Width/2), slot(m.Depth, m.Width/2), slot(0, m.Width/2)))
	s.path(layout.Cut, curve.Polyline(slot(-25, -t), slot(h.Tenon, -t), slot(h.Tenon, t), slot(-25, t)))
	r := h.Fastener.Diameter / 2
	to := h.Long - half
	s.box(layout.Cut, -half, h.Up-r, to, h.Up+r)
	s.line(layout.Center, -half-18*per, h.Up, to+2*per, h.Up)
	s.up(0, h.Up, (-half)/per-18, w.Fine(h.Up))
	s.up(h.Up, h.Tenon, (half)/per+6, w.Fine(h.TenonEnd))
	s.across(-half, h.Up*lean-m.Width/2, g.Height/per+3, w.Fine(math.Floor(10*h.Wall)/10))
	s.across(-half, to, g.Height/per+8, w.whole(h.Long)+" deep")
	s.across(-half, half, -30/per-3, w.Fine(g.Width))
	s.note(-half, g.Height, -2, -8, layout.Right, "inboard")
	s.note(slot(-20, t).X, -20, 1.5, 0, layout.Left, "rib")
	// From inboard: the rib's width, the peg in its middle.
	x0 := 2*half + 60
	wide := float64(d.Ribs.Width)
	s.line(layout.Cut, x0-35, 0, x0+35, 0)
	s.line(layout.Cut, x0-35, g.Height, x0+35, g.Height)
	s.path(layout.Cut, curve.Polyline(geometry.Pt(x0-wide/2, -25), geometry.Pt(x0-wide/2, 0)))
	s.path(layout.Cut, curve.Polyline(geometry.Pt(x0+wide/2, -25), geometry.Pt(x0+wide/2, 0)))
	s.path(layout.Guide, curve.Polyline(geometry.Pt(x0-wide/2, 0), geometry.Pt(x0-wide/2, h.Tenon), geometry.Pt(x0+wide/2, h.Tenon), geometry.Pt(x0+wide/2, 0)))
	s.hole(geometry.Pt(x0, h.Up), h.Fastener.Diameter)
	s.across(x0-wide/2, x0, -30/per-3, w.Fine(h.Side))
	s.up(0, g.Height, (x0+35)/per+4, w.Fine(g.Height))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Head of rib %s, %s, across the gunwale and from inboard. The peg of %s goes through the inner wall and the tenon and stops short of the outer face.", m.Rib, times(per), w.Drill(h.Fastener.Diameter)),
		About:   "A rib's end in the mortise of the gunwale with a peg through one wall, and the peg's place in the middle of the rib."}
}

// lashingFigure draws the X lashing in four steps from outside, the batten level over the
// upright rib, and what it is like from inboard.
func (w *writer) lashingFigure(c joint.Crossing) report.Figure {
	const apart = 34.0 // mm of paper
	per := math.Max(1, c.Rib/16)
	s := newSketch("lashing", "The X lashing", per)
	for i, name := range []string{"1 start", "2 one diagonal", "3 the other", "4 frap and finish", "from inboard"} {
		x := apart * per * float64(i)
		if i < 4 {
			s.crossing(c, i+1, x)
		} else {
			s.inboard(c, x)
		}
		s.note(x, -c.Wide/2, 0, -16, layout.Middle, name)
	}
	s.note(-c.Rib/2-shownBeside*s.per, 0, 0, -1, layout.Left, "batten")
	s.note(0, c.Wide/2+shownBeside*s.per, 0, -3, layout.Middle, "rib")
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("The X lashing, %s, from outside: the batten lies over the rib, and an arrow points to where the cord goes next, dashed where it is hidden. Last, from inboard: each turn comes back across the rib on its own diagonal, the way from one to the other is level, and the knot is there.", times(per)),
		About:   "Five drawings of a lashing: a clove hitch on the rib, two turns over one diagonal, two over the other, a turn round the strands, and the crossing from inboard with the knot."}
}

// shownBeside is what is drawn of rib and batten beside a crossing, mm of paper.
const shownBeside = 8.5

// sticks draws an upright rib and a level batten of these half widths that cross at x.
func (s *sketch) sticks(x, rib, batten float64, battenOver bool) {
	reach := shownBeside * s.per
	for _, side := range []float64{1, -1} {
		if battenOver {
			s.line(layout.Cut, x-rib-reach, side*batten, x+rib+reach, side*batten)
			s.line(layout.Cut, x+side*rib, batten, x+side*rib, batten+reach)
			s.line(layout.Cut, x+side*rib, -batten, x+side*rib, -batten-reach)
			continue
		}
		s.line(layout.Cut, x+side*rib, -batten-reach, x+side*rib, batten+reach)
		s.line(layout.Cut, x-rib-reach, side*batten, x-rib, side*batten)
		s.line(layout.Cut, x+rib, side*batten, x+rib+reach, side*batten)
	}
}

// pair draws two strands side by side from corner to corner, rising to the right for way 1.
func (s *sketch) pair(x, a, b, way float64) {
	const gap = 1.1 // mm of paper
	for _, off := range []float64{-gap / 2 * s.per, gap / 2 * s.per} {
		dx, dy := off*b/math.Hypot(a, b), -way*off*a/math.Hypot(a, b)
		s.line(layout.Mark, x-a-dx, -way*b-dy, x+a-dx, way*b-dy)
	}
}

// end draws the loose end of a cord, with an arrow.
func (s *sketch) end(p layout.Pen, x0, y0, x1, y1 float64) {
	s.line(p, x0, y0, x1, y1)
	tip, turn := s.at(x1, y1), math.Atan2(y1-y0, x1-x0)
	for _, off := range []float64{2.6, -2.6} {
		q := tip.Add(geometry.Polar(2, turn+off))
		s.Straight(layout.Mark, tip.X, tip.Y, q.X, q.Y)
	}
}

// levelOff is how far under the batten the cord goes level behind the rib, mm of paper.
const levelOff = 1.0

// crossing draws one step of a lashing from outside with its middle at x.
func (s *sketch) crossing(c joint.Crossing, step int, x float64) {
	a, b := c.Rib/2, c.Wide/2
	s.sticks(x, a, b, true)
	// A clove hitch round the rib below the batten, the tail to the left.
	for _, y := range []float64{-b - 3.5*s.per, -b - 5.5*s.per} {
		s.line(layout.Mark, x-a, y, x+a, y+0.8*s.per)
	}
	s.line(layout.Mark, x-a, -b-5.5*s.per, x+a, -b-2.7*s.per)
	s.line(layout.Mark, x-a, -b-5.5*s.per, x-a-6*s.per, -b-8*s.per)
	if step == 1 {
		s.end(layout.Mark, x-a, -b-3.5*s.per, x+a*0.6, b*0.6)
		return
	}
	s.pair(x, a, b, 1)
	if step == 2 { // level behind the rib from where its turns begin and end
		s.end(layout.Guide, x-a, -b-levelOff*s.per, x+a+3*s.per, -b-levelOff*s.per)
		return
	}
	s.pair(x, a, b, -1)
	if step == 3 {
		s.end(layout.Mark, x+a, -b, x+a+1.5*s.per, b*0.8)
		return
	}
	// The turn goes round all strands: over the rib's face above and below, under the batten beside it.
	for _, side := range []float64{1, -1} {
		s.line(layout.Mark, x-a-1.6*s.per, side*(b+1.2*s.per), x+a+1.6*s.per, side*(b+1.2*s.per))
		s.line(layout.Guide, x+side*(a+1.6*s.per), -b-1.2*s.per, x+side*(a+1.6*s.per), b+1.2*s.per)
	}
}

// inboard draws a finished lashing as it is seen from inside the boat: the rib over the batten.
func (s *sketch) inboard(c joint.Crossing, x float64) {
	a, b := c.Rib/2, c.Wide/2
	s.sticks(x, a, b, false)
	s.pair(x, a, b, 1)
	s.pair(x, a, b, -1)
	for _, y := range []float64{levelOff, 2.8, 4.2} { // from one diagonal to the other, and of the hitch
		s.line(layout.Mark, x-a, -b-y*s.per, x+a, -b-y*s.per)
	}
	knot := geometry.Pt(x+a*0.4, -b-6.2*s.per)
	s.path(layout.Cut, curve.Circle(knot, 1.3*s.per))
	s.note(knot.X, knot.Y, 2.4, -1, layout.Left, "knot")
}

// crossFigure draws the end of a cross piece under a gunwale, from above and along it.
func (w *writer) crossFigure(i int) report.Figure {
	c, g := w.Bend.Joints.Cross[i], &w.Frame.Gunwale
	t := c.Of
	b := t.Outline.Bounds()
	const shown = 110.0
	per := jointScale(shown+150, math.Max(b.H(), g.Height+t.Thickness)+30, report.Wide-8, 80)
	s := newSketch(fmt.Sprintf("cross-joint-%d", i+1), t.Name, per)
	mid := (t.ForeEnd + t.AftEnd) / 2
	place := geometry.Shift(-mid, 0)
	s.within(layout.Cut, t.Outline.Map(place), geometry.Rect(-shown, b.Min.Y-1, 20, b.Max.Y+1))
	for _, h := range t.Holes {
		hb := h.Bounds()
		if hb.Min.X > 0 {
			s.hole(geometry.Pt((hb.Min.X+hb.Max.X)/2-mid, (hb.Min.Y+hb.Max.Y)/2), t.Hole)
		}
	}
	for _, side := range []float64{-1, 1} { // the gunwale over it
		at := -c.In + side*g.Width/2
		tilt := (t.ForeEnd - t.AftEnd) / b.H()
		s.line(layout.Guide, at+tilt*(b.Min.Y-12), b.Min.Y-12, at+tilt*(b.Max.Y+12), b.Max.Y+12)
	}
	s.across(-c.In, 0, b.Max.Y/per+9, w.Fine(c.In))
	if c.Apart > 0 {
		s.up(-c.Apart/2, c.Apart/2, (-c.In-g.Width/2)/per-34, w.Fine(c.Apart))
	}
	s.up(b.Min.Y, -c.Apart/2, (-c.In-g.Width/2)/per-34, w.Fine(c.Side))
	s.note(-shown, b.Max.Y, 2, -5, layout.Left, "from above")
	w.bolt(s, c)
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("End of %s, %s, %s, from above with the gunwale dashed, and along the boat, outboard to the right: gunwale and bolt lean %s degrees, the bolt %s from either face, and the lower face is pared square under the washer.", frame.CrossMark(i), t.Name, times(per), report.Angle(c.Lean), w.Fine(c.Gunwale)),
		About:   "The end of a cross piece under the gunwale with its bolt holes and their distances from end and edge."}
}

// bolt draws the gunwale on the end of a cross piece along the boat, outboard to the
// right, as they stand, with a bolt through both.
func (w *writer) bolt(s *sketch, c joint.Cross) {
	g, t := &w.Frame.Gunwale, c.Of
	// The gunwale's own axes at the middle of its underside: out across it, up along it.
	const x0 = 95.0
	place := geometry.Turn(-c.Lean).Then(geometry.Shift(x0, 0))
	own := func(out, up float64) geometry.Point { return place.Apply(geometry.Pt(out, up)) }
	quad := func(p layout.Pen, out0, up0, out1, up1 float64) {
		s.path(p, curve.Polygon(own(out0, up0), own(out1, up0), own(out1, up1), own(out0, up1)))
	}
	half, r := g.Width/2, w.Bend.Joints.Usual.Bolt/2
	quad(layout.Cut, -half, 0, half, g.Height)
	// The piece's top meets the gunwale's lower inner edge and is eased to its underside.
	inner, top := own(-half, 0), own(-half, 0).Y
	end := own(c.In/math.Cos(c.Lean), 0)
	low := top - t.Thickness
	s.path(layout.Cut, curve.Polyline(geometry.Pt(x0-60, top), inner, end, geometry.Pt(x0+c.In-t.Under, low), geometry.Pt(x0-60, low)))
	below := -(0 - low) / math.Cos(c.Lean) // along the bolt, to the lower face
	quad(layout.Mark, -r, g.Height-1-c.Fastener.Length, r, g.Height-1)
	quad(layout.Mark, -c.Washer/2, g.Height-3, c.Washer/2, g.Height-1.5)
	seat := below + c.Washer/2*math.Tan(c.Lean)
	quad(layout.Mark, -c.Washer/2, seat-1.5, c.Washer/2, seat)
	s.line(layout.Center, own(0, g.Height+6).X, own(0, g.Height+6).Y, own(0, below-14).X, own(0, below-14).Y)
	s.up(low, top, (x0-64)/s.per, w.Fine(t.Thickness))
}
