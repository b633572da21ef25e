package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/curve"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// jointScale is the scale of a joint: as large as its room, never over twice full size.
func jointScale(long, high, room, tall float64) float64 {
	for _, s := range []float64{0.5, 1} {
		if long/s <= room && high/s <= tall {
			return s
		}
	}
	return scaleFor(long, high, room, tall)
}

// times letters a scale that may be larger than life.
func times(per float64) string {
	if per < 1 {
		return fmt.Sprintf("%g:1", 1/per)
	}
	return ratio(per)
}

// within draws what of a closed outline lies in a box, with the cut edges left open.
func (s *sketch) within(p layout.Pen, outline curve.Path, box geometry.Box) {
	var run []geometry.Point
	flush := func() {
		if len(run) > 1 {
			s.path(p, curve.Polyline(run...))
		}
		run = nil
	}
	for _, q := range dense(outline.Flatten(0.05)) {
		if q.X < box.Min.X || q.X > box.Max.X || q.Y < box.Min.Y || q.Y > box.Max.Y {
			flush()
			continue
		}
		run = append(run, q)
	}
	flush()
}

// dense puts points every millimeter on a closed line of points.
func dense(pts []geometry.Point) []geometry.Point {
	var out []geometry.Point
	for i := 1; i < len(pts); i++ {
		n := max(1, int(math.Ceil(pts[i].Sub(pts[i-1]).Norm())))
		for k := range n {
			out = append(out, pts[i-1].Lerp(pts[i], float64(k)/float64(n)))
		}
	}
	return append(out, pts[len(pts)-1])
}

// hole draws a hole seen along itself, with its cross.
func (s *sketch) hole(at geometry.Point, drill float64) {
	s.path(layout.Cut, curve.Circle(at, drill/2))
	arm := drill/2 + 1.2*s.per
	s.line(layout.Tick, at.X-arm, at.Y, at.X+arm, at.Y)
	s.line(layout.Tick, at.X, at.Y-arm, at.X, at.Y+arm)
}

// box draws a rectangle.
func (s *sketch) box(p layout.Pen, x0, y0, x1, y1 float64) {
	s.path(p, curve.Rectangle(geometry.Rect(x0, y0, x1, y1)))
}

func (w *writer) stemOf(end string) *frame.Stem {
	if end == w.Frame.Stern.End {
		return &w.Frame.Stern
	}
	return &w.Frame.Bow
}

// keelEnd is half the keel's width where it butts against a stem, mm.
func (w *writer) keelEnd(end string) float64 {
	aft, fore := w.Frame.Keel.Line.Ends()
	if end == w.Frame.Stern.End {
		return w.Frame.KeelHalf(aft)
	}
	return w.Frame.KeelHalf(fore)
}

// footFigure draws the foot from the side, straightened: x runs from the keel's end aft.
func (w *writer) footFigure(f joint.Foot) report.Figure {
	st, d := w.stemOf(f.End), w.Frame.Design
	keel, half := float64(d.Keel.Depth), float64(d.Keel.Width)/2
	land := f.Stem[0].Sub(f.Stem[1]).Norm()
	per := jointScale(land+140, 100, report.Wide-10, 85)
	s := newSketch(f.End+"-foot", "Keel to stem", per)
	// The stem turned so that the keel's upper face lies level at its end.
	turn := math.Atan2(f.Stem[0].Y-f.Stem[1].Y, f.Stem[0].X-f.Stem[1].X)
	level := st.Outline.Map(geometry.Shift(-f.Stem[0].X, -f.Stem[0].Y)).Map(geometry.Turn(-turn))
	s.within(layout.Cut, level, geometry.Rect(-land-5, -keel-8, 45, 62))
	s.box(layout.Cut, -land-35, -keel, 0, 0)
	for _, from := range f.FromEnd {
		s.line(layout.Center, -from, -keel-4*per, -from, f.Fastener.Length-keel+3*per)
		r := f.Fastener.Diameter / 2
		s.path(layout.Mark, curve.Polygon(geometry.Pt(-from-2*r, -keel), geometry.Pt(-from-r, -keel+r), geometry.Pt(-from-r, 0), geometry.Pt(-from, f.Fastener.Length-keel), geometry.Pt(-from+r, 0), geometry.Pt(-from+r, -keel+r), geometry.Pt(-from+2*r, -keel)))
	}
	for _, dx := range []float64{-4, -1.5, 1, 3.5} {
		x := -(f.FromEnd[0]+f.FromEnd[len(f.FromEnd)-1])/2 + dx
		s.line(layout.Guide, x, -keel, x, math.Max(10, f.Fastener.Length-keel))
	}
	y := -keel/per - 8
	last := 0.0
	for i, from := range f.FromEnd {
		s.across(-from, last, y-6*float64(i), w.Fine(from+last))
		last = 0
	}
	s.across(-land, -f.FromEnd[len(f.FromEnd)-1], y-6*float64(len(f.FromEnd)), w.Fine(f.FootEnd))
	s.up(-keel, 0, (-land-40)/per, w.Fine(keel))
	s.note(-land-30, -keel, 0, keel/per+1.2, layout.Left, "keel")
	s.note(4, 18, 0, 0, layout.Left, "stem")
	// Across: the keel from its end, the foot over it.
	x0 := 45 + half + report.Either(w.Letters.Units, 22.0, 10) // inches are longer words
	s.box(layout.Cut, x0-half, -keel, x0+half, 0)
	tapered := ""
	if end := w.keelEnd(f.End); end < half {
		s.line(layout.Cut, x0-end, -keel, x0-end, 0)
		s.line(layout.Cut, x0+end, -keel, x0+end, 0)
		tapered = ", inside its full breadth the end that it is tapered to"
	}
	s.line(layout.Cut, x0-st.Thickness/2, 0, x0-st.Thickness/2, 30)
	s.line(layout.Cut, x0+st.Thickness/2, 0, x0+st.Thickness/2, 30)
	s.line(layout.Center, x0, -keel-4*per, x0, 34)
	s.across(x0-half, x0, y, w.Fine(half))
	s.across(x0-st.Thickness/2, x0, 30/per+3, w.Fine(f.Side))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Foot of the %s stem on the keel, %s, from the side and from its end%s. Screws from below, dashed the lashing between them.", f.End, times(per), tapered),
		About:   "The keel under the stem's foot with two screws from below and a lashing, with the distances of the screws from the keel's end."}
}

// landingFigure draws a stem with its stringers and holes.
func (w *writer) landingFigure(i int) report.Figure {
	l := w.Bend.Joints.Landings[i]
	st, e := w.stemOf(l.End), w.Bend.Joints.Ends[i]
	b := st.Outline.Bounds()
	per := jointScale(b.W()+70, b.H(), 150, 95)
	s := newSketch(l.End+"-landings", "Stringers to stem", per)
	s.path(layout.Cut, st.Outline)
	wide := float64(w.Frame.Design.Stringers.Width)
	for k, end := range l.Ends {
		a, c := w.holesOf(l, end.Number)
		way := a.Lerp(c, 0.5).Sub(end.At)
		if way.Norm() > 0 {
			way = way.Unit()
		}
		side := geometry.Polar(wide/2, math.Atan2(way.Y, way.X)+math.Pi/2)
		far := end.At.Add(way.Scale(75))
		s.path(layout.Mark, curve.Polyline(far.Add(side), end.At.Add(side), end.At.Sub(side), far.Sub(side)))
		s.note(far.X, far.Y, -1.5, -1, layout.Right, fmt.Sprintf("S%d", k+1))
	}
	for _, h := range l.Holes {
		s.hole(h.At, l.Drill)
	}
	s.hole(e.At, e.Drill)
	s.note(e.At.X, e.At.Y, -4.5, -1, layout.Right, "gunwales' lashing")
	for _, p := range w.Bend.Joints.Feet[i].At {
		up := geometry.Polar(22, math.Pi/2)
		s.line(layout.Center, p.X, p.Y, p.X+up.X, p.Y+up.Y)
	}
	s.note(b.Min.X, b.Min.Y, 0, -4.5, layout.Left, "upright lines: screws of the keel")
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Holes of the %s stem, %s, drawn as the bow; all go straight through. The full-size pattern has them; the table below has them from the edges.", l.End, times(per)),
		About:   "The stem from the side with the ends of the stringers on it and two holes for each."}
}

// holesOf returns the holes below and above a stringer; the lower may be its neighbor's.
func (w *writer) holesOf(l joint.Landing, number int) (below, above geometry.Point) {
	for k, h := range l.Holes {
		if h.Stringer == number {
			above = h.At
			if below == (geometry.Point{}) {
				below = h.At
				if k > 0 && l.Holes[k-1].Shared && l.Holes[k-1].Stringer == number-1 {
					below = l.Holes[k-1].At
				}
			}
		}
	}
	return below, above
}

// taperFigure draws a pair of stringers feathered on the stem, from above.
func (w *writer) taperFigure(l joint.Landing) report.Figure {
	d, st := float64(w.Frame.Design.Stringers.Depth), w.stemOf(l.End)
	e := l.Ends[len(l.Ends)-1]
	for _, o := range l.Ends {
		if o.Taper > e.Taper {
			e = o
		}
	}
	turn := math.Atan(d / e.Taper)
	long := e.Taper + 45
	per := jointScale(long+20, 2*(long*math.Tan(turn)+d)+st.Thickness, 140, 70)
	s := newSketch(l.End+"-taper", "Feathered stringers", per)
	half := st.Thickness / 2
	before := w.aheadOf(l, e)
	s.box(layout.Cut, before-st.Moulded, -half, before, half)
	for _, side := range []float64{1, -1} {
		out := func(x, off float64) geometry.Point { return geometry.Pt(-x, side*(half+off)) }
		slope := math.Tan(turn)
		// Outer face from the end, inner face from where the feather begins.
		s.path(layout.Mark, curve.Polyline(out(long, long*slope), out(0, 0), out(e.Taper, 0), out(long, (long-e.Taper)*slope)))
		s.path(layout.Guide, curve.Polyline(out(e.Back-1, -half), out(e.Back-1, e.Back*slope)))
	}
	s.hole(geometry.Pt(-e.Back, 0), 0.01)
	s.across(-e.Taper, 0, (half+long*math.Tan(turn)+4)/per, w.whole(e.Taper)+" feathered")
	s.across(-e.Back, 0, (-half-long*math.Tan(turn)-9)/per, w.whole(e.Back)+" to the holes")
	s.up(-half, half, (before+6)/per+2, w.Fine(st.Thickness))
	s.note(before-st.Moulded, 0, 1.5, -1, layout.Left, "stem")
	s.note(-long, half+long*math.Tan(turn)-d*0.6, -1, -1, layout.Right, fmt.Sprintf("S%d", e.Number))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("S%d of both sides on the stem, from above, %s; their ends to the right, and past them the stem's outer edge. Inner faces are planed away to nothing.", e.Number, times(per)),
		About:   "Two stringers that taper to a feather on both sides of the stem, with the length of the taper."}
}

// aheadOf is how much of the stem lies past a stringer's end, mm, as the middle of its
// holes has it.
func (w *writer) aheadOf(l joint.Landing, e joint.StringerEnd) float64 {
	sum, n := 0.0, 0.0
	for _, h := range l.Holes {
		if h.Stringer == e.Number {
			sum, n = sum+h.FromOut, n+1
		}
	}
	return math.Max(0, sum/math.Max(1, n)-e.Back)
}

// innerEdge is how far a gunwale's inner lower edge stands off the middle line at an end, mm;
// less than 0 where the two would run into one another.
func (w *writer) innerEdge(end string) float64 {
	g := &w.Frame.Gunwale
	x := g.StationOf(g.Fore)
	if end == w.Frame.Stern.End {
		x = g.StationOf(g.Aft)
	}
	return g.EdgeAt(x, -g.Width/2, 0).Y
}

// edgesMeet says what is between the gunwales on a stem.
func (w *writer) edgesMeet(end string) string {
	switch between := 2 * w.innerEdge(end); {
	case between < -0.5:
		return fmt.Sprintf("Cut aslant, the gunwales are wider than the stem: pare %s off the inner lower edge of each, there only, until both lie on their marks.", w.Fine(-between/2))
	case between < 1:
		return "Cut aslant, the gunwales are as wide as the stem: their inner lower edges touch."
	default:
		return fmt.Sprintf("Between their inner lower edges %s stays open.", w.whole(between))
	}
}

// endFigure draws the gunwales' ends from the side and from ahead.
func (w *writer) endFigure(e joint.End) report.Figure {
	st, g := w.stemOf(e.End), &w.Frame.Gunwale
	inner, horn := st.Shelf[0], st.Shelf[1]
	turn := math.Atan2(horn.Y-inner.Y, horn.X-inner.X)
	level := func(p geometry.Point) geometry.Point { return geometry.Turn(-turn).Apply(p.Sub(horn)) }
	per := jointScale(230, g.Height+60, report.Wide-8, 100)
	s := newSketch(e.End+"-end", "Gunwales to stem", per)
	box := geometry.Rect(-100, -45, 40, g.Height+10)
	s.within(layout.Cut, st.Outline.Map(geometry.Shift(-horn.X, -horn.Y)).Map(geometry.Turn(-turn)), box)
	// The end stands plumb in the boat; here the shelf lies level, so it leans as the horn does.
	end := func(up float64) float64 { return up * math.Tan(turn) }
	s.path(layout.Mark, curve.Polyline(geometry.Pt(-110, 0), geometry.Pt(0, 0), geometry.Pt(end(g.Height), g.Height), geometry.Pt(-110, g.Height)))
	hook := float64(w.Frame.Design.Breasthook.Thickness)
	s.line(layout.Guide, -110, g.Height-hook, end(g.Height-hook), g.Height-hook)
	s.note(-108, g.Height-hook/2, 0, -1, layout.Left, "breasthook")
	s.note(-108, 0, 0, 1.5, layout.Left, "gunwale")
	in := geometry.Pt(end(e.Up)-e.FromEnd, e.Up)
	s.hole(in, e.Drill)
	at := level(e.At)
	s.hole(at, e.Drill)
	s.across(in.X, end(e.Up), g.Height/per+4, w.whole(e.FromEnd))
	s.up(0, e.Up, in.X/per-5, w.whole(e.Up))
	s.up(at.Y, 0, at.X/per-5, w.whole(e.Under))
	s.across(at.X, 0, at.Y/per-6, w.whole(e.FromHorn))
	// From ahead: both gunwales on the stem, the cord round them.
	x0, half := 95.0, st.Thickness/2
	s.line(layout.Cut, x0-half, 0, x0-half, -45)
	s.line(layout.Cut, x0+half, 0, x0+half, -45)
	wide := half - w.innerEdge(e.End)
	for _, side := range []float64{-1, 1} {
		mid := x0 + side*half
		s.box(layout.Mark, mid-wide, 0, mid+wide, g.Height)
		out := mid + side*(wide+2)
		s.path(layout.Guide, curve.Polyline(geometry.Pt(x0, e.Up), geometry.Pt(out, e.Up), geometry.Pt(out, -3), geometry.Pt(x0+side*half, at.Y), geometry.Pt(x0, at.Y)))
	}
	s.across(x0-half, x0+half, -45/per-4, w.Fine(st.Thickness))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Gunwales on the %s stem, %s, from the side with the horn to the right, and from ahead, drawn upright; dashed the way of the cord. %s", e.End, times(per), w.edgesMeet(e.End)),
		About:   "A gunwale's end on the stem's shelf with its lashing hole and the one in the stem, with their distances."}
}

// hookFigure draws a breasthook between the gunwales with its pegs.
func (w *writer) hookFigure(i int) report.Figure {
	h := w.Bend.Joints.Hooks[i]
	part := [2]frame.Breasthook{w.Frame.SternHook, w.Frame.BowHook}[i]
	g := &w.Frame.Gunwale
	b := part.Outline.Bounds()
	per := jointScale(b.W()+20, b.H()+2*g.Width+20, 120, 75)
	s := newSketch(h.End+"-pegs", "Breasthook to gunwales", per)
	s.path(layout.Cut, part.Outline)
	for _, flip := range []geometry.Affine{geometry.Stretch(1, 1), geometry.Stretch(1, -1)} {
		for k, p := range h.At {
			way := h.Out[k]
			s.path(layout.Mark, curve.Polyline(p.Add(way.Scale(g.Width)), p.Sub(way.Scale(h.Reach()))).Map(flip))
		}
		var outer []geometry.Point
		for k := 1; k < len(h.Line); k++ {
			outer = append(outer, h.Line[k].Add(joint.Outward(h.Line[k-1], h.Line[k]).Scale(g.Width)))
		}
		s.path(layout.Mark, curve.Polyline(outer...).Map(flip))
	}
	s.grain(part)
	outside := w.outerFace(i, h.FromEnd)
	for k, p := range h.At {
		q := p.Add(h.Out[k].Scale(g.Width))
		s.note(q.X, q.Y, 0.8, -3.4, layout.Left, w.whole(outside[k]))
	}
	if part.Painter > 0 {
		s.hole(geometry.Pt(-part.Painter, 0), frame.PainterHole)
		s.note(5, b.Max.Y+g.Width, 0, -4, layout.Left, "painter's hole, "+w.Length(frame.PainterHole)+" wide,")
		s.note(5, b.Max.Y+g.Width, 0, -8, layout.Left, w.whole(part.Painter)+" from the nose")
	}
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("%s breasthook between the gunwales, %s, from above. Pegs %s from the gunwales' ends along their inner faces. On the outer face, where you mark and bore, that is %s from the end, for the end is cut aslant; %s deep from there, with a long drill that is drawn out often to clear it.", wording.Capital(h.End), times(per), w.places(h.FromEnd), w.places(outside), w.whole(h.Fastener.Length)),
		About:   "The breasthook with its pegs on each side through the gunwales, the painter's hole and the way of the grain."}
}

// grain draws an arrow along a breasthook's grain, between its hollow and the painter's
// hole, with its name.
func (s *sketch) grain(part frame.Breasthook) {
	hollow := part.Outline.Bounds().Min.X
	for _, p := range part.Outline.Flatten(0.1) { // the deepest of the hollow, on the middle line
		if math.Abs(p.Y) < 3 && p.X < -part.Painter-frame.PainterHole {
			hollow = math.Max(hollow, p.X)
		}
	}
	to := math.Min(-part.Painter-frame.PainterHole-2*s.per, hollow+30*s.per)
	a, b := s.at(hollow+3*s.per, 0), s.at(to, 0)
	s.Straight(layout.Tick, a.X, a.Y, b.X, b.Y)
	for _, turn := range []float64{2.8, -2.8} {
		p, q := b.Add(geometry.Polar(2, turn)), a.Sub(geometry.Polar(2, turn))
		s.Straight(layout.Tick, b.X, b.Y, p.X, p.Y)
		s.Straight(layout.Tick, a.X, a.Y, q.X, q.Y)
	}
	s.Write((a.X+b.X)/2, a.Y+0.8, small, layout.Middle, "grain")
}
