package book

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// seats tells of everything that somebody sits on.
func (w *writer) seats() {
	all := w.Frame.Seats
	if len(all) == 0 {
		return
	}
	w.chapter("Seats")
	w.say("How high people sit decides how stiff the boat is: every figure of On the water counts these heights. Measure them from %s to the top of the seat, at its middle. Seats carry nothing of the frame's shape; they come out with all their parts.", w.floorIs())
	t := report.Titled("Seats, "+w.Marks()).Words("Seat", "Kind", "Who", "Middle at").Numbers("Top over the floor", "Along", "Across", "Front edge lower")
	for _, s := range all {
		who := wording.List(w.on(s), func(p design.Person) string { return p.Name })
		if who == "" {
			who = "nobody"
		}
		t.Row(s.Name, s.Kind.String(), who, w.Station(s.At), w.Mark(s.Height), w.Cell(s.Long), w.Cell(s.Wide), w.Cell(s.Drop))
	}
	w.add(t)
	var found finding.List
	for _, s := range all {
		found = append(found, s.Feet()...)
	}
	for _, f := range found {
		w.warn(wording.Capital(f.About)+": "+f.Text+".", "heel depth from girths of ANSUR II (US Army 2012); the rest common practice")
	}
	for _, s := range all {
		w.section(s.Name)
		switch {
		case s.Hung != nil:
			w.hungSeat(s)
		case s.Saddle != nil:
			w.saddle(s)
		default:
			w.say("Cut the pad from closed-cell foam, %s by %s and %s thick in all, glued from layers; round its corners. It gives a little under a person, which only lowers them. Tie it to two ribs through the foam so that it stays in a swamped boat.", w.Length(s.Long), w.Length(s.Wide), w.Length(s.Height))
		}
	}
}

// on lists who sits on a seat.
func (w *writer) on(s seat.Seat) (out []design.Person) {
	d := w.Frame.Design
	for _, p := range d.Crew {
		if d.FindSeat(p.Seat) == s.Number {
			out = append(out, p)
		}
	}
	return out
}

func (w *writer) hungSeat(s seat.Seat) {
	h := s.Hung
	w.add(w.hungFigure(s))
	t := report.Titled("Rails and hangers of "+s.Name+", "+w.Marks()).Words("Rail", "Rail at").Numbers("Rail's length", "Hanger's length", "Down to the slot, inboard face", "Bolts down", "Block", "Lean, degrees")
	b := report.Titled("Bolts of the hangers, on the straight gunwale from midship, "+w.Marks()).Words("Rail").Numbers("After bolt", "Fore bolt", "Slot forward of the hanger's middle")
	for _, r := range []struct {
		name string
		rail seat.Rail
	}{{"front", h.Front}, {"after", h.After}} {
		g := r.rail.Hanger
		t.Row(r.name, w.Station(r.rail.Station), w.Mark(r.rail.Length), w.Mark(g.Length), w.Mark(g.SlotInboard()), w.Cell(g.Down), w.Cell(g.Block), report.Angle(g.Lean()))
		b.Row(r.name, w.Mark(g.Bolts[0]), w.Mark(g.Bolts[1]), w.Cell(g.Off))
	}
	t.Note = fmt.Sprintf("Rails %s wide and %s deep, of %s. Hangers are %s thick. Lengths follow from the height of the seat: measure gunwale and floor as they stand before you cut, and cut to them.", w.Fine(h.Width), w.Fine(h.Depth), s.Wood, w.Fine(seat.Thick))
	w.add(t, b)
	w.add(report.List{Items: w.hangSteps(s)})
}

// hangSteps are how a hung seat is made, in short.
func (w *writer) hangSteps(s seat.Seat) []string {
	h := s.Hung
	out := []string{
		fmt.Sprintf("Before the skin goes on: bore the gunwales for the bolts, %.1f mm, square to the wood and never within 25 mm of a mortise. Let heads and washers in flush with the outer face and glue a block of %s behind each pair.", seat.Hole, s.Wood),
		"Clamp the hangers in place, lay the rails in their slots, and measure from the floor to the rails before you bore the hangers through the blocks.",
		fmt.Sprintf("Glue two spreaders of %s between the rails, %s apart, so that the bottom cannot pull the rails together. Pin each rail in its slots with a 6 mm peg from the edge of the hanger.", w.Fine(h.Spreader), w.Length(s.Wide)),
	}
	if h.Bottom == design.Webbing {
		out = append(out, fmt.Sprintf("Wrap %d straps from rail to rail and weave %d from spreader to spreader; sew each round its rail. Pull them so that they sink about %s under a person: tighter ones pull the rails together with more than the person's weight.", h.Along, h.Across, w.Length(seat.Sag)))
	} else {
		out = append(out, fmt.Sprintf("Screw %d slats of %s by %s on the rails, two screws at each end.", h.Along, w.Fine(seat.SlatWide), w.Fine(seat.SlatThick)))
	}
	return append(out, "Wing nuts inboard: eight of them and the seat is out.")
}

// hungFigure is the section at the front rail, seen from ahead: gunwale, block, hanger,
// bolt, rail, floor, with the height of the seat and the room for the feet.
func (w *writer) hungFigure(s seat.Seat) report.Figure {
	h := s.Hung
	r, g := h.Front, h.Front.Hanger
	f := w.Frame
	x := g.Station
	rail := &f.Gunwale
	edge := func(across, up float64) geometry.Point {
		p := rail.EdgeAt(x, across, up)
		return geometry.Pt(p.Y, p.Z)
	}
	high := edge(rail.Width/2, rail.Height)
	per := scaleFor(high.X+140, high.Y, 150, 110)
	d := newSketch(fmt.Sprintf("seat-%d", s.Number+1), s.Name, per)
	d.path(layout.Cut, curve.Polygon(edge(-rail.Width/2, 0), edge(rail.Width/2, 0), high, edge(-rail.Width/2, rail.Height)))
	d.path(layout.Mark, curve.Polygon(g.Point(2, 0), g.Point(2, g.Block), g.Point(2+g.BlockHigh(), g.Block), g.Point(2+g.BlockHigh(), 0)))
	d.path(layout.Cut, curve.Polygon(g.Point(0, g.Block), g.Point(0, g.Block+seat.Thick), g.Point(g.Length, g.Block+seat.Thick), g.Point(g.Length, g.Block)))
	a, b := g.Point(g.Down, -rail.Width), g.Point(g.Down, g.Block+seat.Thick+12)
	d.line(layout.Center, a.X, a.Y, b.X, b.Y)
	d.path(layout.Cut, curve.Polygon(geometry.Pt(0, r.TopZ-h.Depth), geometry.Pt(r.Length/2, r.TopZ-h.Depth), geometry.Pt(r.Length/2, r.TopZ), geometry.Pt(0, r.TopZ)))
	rib := f.Nearest(x)
	d.path(layout.Mark, rib.Inner)
	d.path(layout.Guide, rib.Outer)
	floor := f.Hull.FloorZ(s.At)
	d.line(layout.Center, 0, floor-20, 0, high.Y)
	d.line(layout.Guide, -70, floor, r.Length/4, floor)
	d.line(layout.Guide, -70, s.TopZ(), 0, s.TopZ())
	d.up(floor, s.TopZ(), -55/per, w.Fine(s.Height))
	d.up(f.Hull.FloorZ(r.Station), r.TopZ-h.Depth, 60/per, w.Fine(h.Clear)+" clear")
	mid := g.Point(g.Down, g.Block+seat.Thick+14)
	d.note(mid.X, mid.Y, -1, -1, layout.Right, "bolts")
	d.note(r.Length/4, r.TopZ, 0, 1.5, layout.Middle, "front rail")
	d.note(-70, s.TopZ(), 0, 1, layout.Left, "top")
	d.note(-70, floor, 0, -3.6, layout.Left, "floor")
	return report.Figure{Drawing: d.Drawing,
		Caption: fmt.Sprintf("%s, %s, section at the front rail, port side, seen from ahead: gunwale, block, hanger with its rail, the nearest rib. The top of the seat at its middle is %s over the floor; %s are clear under the front rail.", s.Name, ratio(per), w.Fine(s.Height), w.Fine(h.Clear)),
		About:   "The front rail in its hanger under the gunwale, with the height of the seat over the floor and the room for the feet."}
}

func (w *writer) saddle(s seat.Seat) {
	a := s.Saddle
	box := geometry.Around(a.Cheek...)
	per := scaleFor(box.W(), box.Max.Y+30, 120, 80)
	d := newSketch(fmt.Sprintf("seat-%d", s.Number+1), s.Name, per)
	d.path(layout.Cut, curve.Polygon(a.Cheek...))
	front, back := s.EdgeZ(s.Long/2)-s.Floor, s.EdgeZ(-s.Long/2)-s.Floor
	d.path(layout.Cut, curve.Polygon(geometry.Pt(-s.Long/2, back-seat.BoardThick), geometry.Pt(s.Long/2, front-seat.BoardThick), geometry.Pt(s.Long/2, front), geometry.Pt(-s.Long/2, back)))
	d.line(layout.Guide, -s.Long/2-20, 0, s.Long/2+20, 0)
	d.up(0, s.Height, -s.Long/2/per-6, w.Fine(s.Height))
	d.across(-s.Long/2, s.Long/2, -8, w.Fine(s.Long))
	w.add(report.Figure{Drawing: d.Drawing, Caption: fmt.Sprintf("%s, %s, from the side, forward to the right; dashed the floor over the keel.", s.Name, ratio(per)), About: "A saddle from the side with its height over the floor."})
	w.add(report.List{Items: []string{
		fmt.Sprintf("Saw two cheeks to their pattern, a top of %s by %s with its grain across the boat, and a stretcher of %s by %s, all %s thick, of %s.", w.Length(s.Long), w.Length(s.Wide), w.Fine(a.Stretcher), w.Fine(a.High), w.Fine(seat.BoardThick), s.Wood),
		fmt.Sprintf("Glue and screw the stretcher between the cheeks, %s apart middle to middle, and the top on both. Round the front edge well.", w.Fine(a.Apart)),
		"Stand it on the floor, plane the cheeks until it does not rock, and lash it to two ribs through holes in the cheeks.",
	}})
}

// floorIs says what heights over the floor are measured from.
func (w *writer) floorIs() string {
	if w.Frame.Design.Inside.Slats == 0 {
		return "the ribs' upper face over the keel, for the boat has no floor slats,"
	}
	return "the upper face of the floor slats beside the keel"
}
