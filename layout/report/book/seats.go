package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/pattern"
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
	t := report.Titled("Seats, "+w.Marks()).Words("Seat", "Kind", "Who", "Middle at").Numbers("Top over the floor", "Along", "Across", "Front edge lower than the back")
	for _, s := range all {
		who := wording.List(w.on(s), func(p design.Person) string { return p.Name })
		if who == "" {
			who = "nobody"
		}
		t.Row(s.Name, s.Kind.String(), who, w.Station(s.At), w.Mark(s.Height), w.Gauge(s.Long), w.Gauge(s.Wide), w.Gauge(s.Drop))
	}
	w.add(t)
	var found finding.List
	for _, s := range all {
		found = append(found, s.Feet()...)
	}
	for _, f := range found {
		w.warn(wording.Capital(f.About)+": "+f.Text+".", "heel depth from girths of ANSUR II (US Army 2012); the rest common practice")
	}
	if slices.ContainsFunc(all, func(s seat.Seat) bool { return s.Hung != nil }) {
		w.warn(sitAfloat, "estimate of our own, not tried")
	}
	for _, s := range all {
		w.section(s.Name)
		switch {
		case s.Hung != nil:
			w.hungSeat(s)
		case s.Saddle != nil:
			w.saddle(s)
		default:
			w.say("Cut the pad from closed-cell foam, %s by %s and %s thick, in one or glued from layers; round its corners. It gives a little under a person, which only lowers them. Tie it to ribs %s and %s with cord through the foam so that it stays in a swamped boat.", w.Length(s.Long), w.Length(s.Wide), w.Length(s.Height), w.Frame.Nearest(s.At-s.Long/3).Name, w.Frame.Nearest(s.At+s.Long/3).Name)
		}
	}
}

// sitAfloat says what a hung seat asks of the frame.
const sitAfloat = "Sit down on a hung seat, and get up from it, only where the boat floats: there the water carries it along its whole length, on the ground the few ribs beside the hangers bear it. What the wood is asked for tells what ribs and gunwales bear. They bear more the looser heads sit in their mortises: keep heads and lashings tight, and look at ribs and gunwales beside the hangers after each trip."

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
	w.add(w.hungFigure(s), w.frameFigure(s))
	t := report.Titled("Rails and hangers of "+s.Name+", "+w.Marks()).Words("Rail", "Rail at").Numbers("Rail's length", "Hanger's length", "Down to the slot", "Slot forward of the hanger's middle", "Bolts down", report.Either(w.Letters.Units, "Bolts, M6, long", "Bolts"), "Lean, degrees")
	b := report.Titled("Bolts of the hangers, on the straight gunwale from midship, and their blocks, "+w.Marks()).Words("Rail").Numbers("After bolt", "Fore bolt", "Block long", "Block high", "Block thick")
	for _, r := range []struct {
		name string
		rail seat.Rail
	}{{"front", h.Front}, {"after", h.After}} {
		g, slot := r.rail.Hanger, r.rail.SlotInboard()
		t.Row(r.name, w.Station(r.rail.Station), w.Mark(r.rail.Length), w.Mark(g.Length), w.Mark(slot.Y), w.Gauge(slot.X), w.Gauge(g.Down), report.Either(w.Letters.Units, w.Whole(g.BoltLong()), bolt(6, g.BoltLong())), report.Angle(g.Lean()))
		b.Row(r.name, w.Mark(g.Bolts[0]), w.Mark(g.Bolts[1]), w.Gauge(g.BlockLong()), w.Gauge(g.BlockHigh()), w.Gauge(g.Block))
	}
	t.Note = fmt.Sprintf("Rails %s wide and %s deep, of %s. Hangers are %s thick. The slot's figures are those of its mouth on the inboard face, at the middle of its upper edge. Lengths follow from the height of the seat: the step Seats suits them to gunwale and floor as they stand.", w.Fine(h.Width), w.Fine(h.Depth), s.Wood, w.Fine(seat.Thick))
	w.add(t, b)
	w.add(report.List{Items: w.hangSteps(s)})
}

// hangSteps are how a hung seat is made, in short.
func (w *writer) hangSteps(s seat.Seat) []string {
	h := s.Hung
	out := []string{
		fmt.Sprintf("Before the skin goes on, in the step Smoothing and oiling, gunwales, blocks and hangers are bored in one, and the nuts of the bolts are bedded in the gunwales' outer faces; blocks of %s are glued behind. The bolts come from inboard: when they are out, nothing stands in a hanger's way. The circles on the patterns only show where their holes come.", s.Wood),
		fmt.Sprintf("The slots are closed holes, wood all round them. The rail lies level and athwart, and the board leans and stands at an angle in plan, so that a slot slants through it. Its pattern has the mouth on the inboard face as a full line and the mouth on the outboard face as a broken one: in front %s, behind %s. Draw each on its own face, the starboard hangers as mirrors. Bore and saw out what both share, square to the board, and pare from either face to its lines until the rail slides by hand.", pattern.OutboardMouth(h.Front, w.Letters.Units), pattern.OutboardMouth(h.After, w.Letters.Units)),
		w.railEnds(h),
		fmt.Sprintf("Pin each end of both rails: bore from the after edge of the hanger, in the middle of its thickness and level, through its wood into the middle of the rail, %s wide, %s deep, while the hangers are bolted dry to their blocks.%s The pegs, %s long, have no glue and stand out, to be pulled by; they go in last of all.", w.whole(seat.Peg), inEach(w.whole(h.Front.IntoRail()), w.whole(h.After.IntoRail())), w.drillRoom(h), inEach(w.whole(h.Front.PegLong()), w.whole(h.After.PegLong()))),
		fmt.Sprintf("The frame: two rails, and two spreaders of %s between them, measured level, %s tall as the rails are and %s wide, %s apart between their inner sides, so that the bottom cannot pull the rails together. %s Glue them against the rails. When that is hard, bore through each rail into the end of each spreader, in the middle of its depth, %s wide and %s deep, drive a peg of hardwood %s long with glue, and cut it flush.", w.Fine(h.Spreader), w.Fine(h.Depth), w.Fine(seat.SpreadWide), w.Length(s.Wide), w.spreaderEnds(h), w.whole(seat.Peg), w.whole(h.IntoSpreader()), w.whole(h.SpreaderPegLong())),
	}
	if h.Bottom == design.Webbing {
		along, across := fittings.Straps(s)
		out = append(out, fmt.Sprintf("Straps: %d run once from rail to rail and %d, woven through them, once from spreader to spreader, %s and %s apart from middle to middle; cut them %s and %s long. Lay one end of a strap once round its rail or spreader, over the top, down and back under it, and sew %s of that end to the strap, a square with a cross in it, 4 seams or more. Pull the other end round its own in the same way, until the strap sinks about %s under a person, pin it, sew it and cut off the %s or so that you pulled it by. Tighter straps pull the rails together with more than the person's weight.", h.Along, h.Across, w.whole(s.Wide/float64(h.Along)), w.whole(h.Spreader/float64(h.Across)), w.Length(along), w.Length(across), w.Handy(fittings.Sewn), w.Length(seat.Sag), w.Handy(fittings.Held)))
	} else {
		out = append(out, fmt.Sprintf("Screw %d slats of %s by %s on the rails, two screws at each end.", h.Along, w.Fine(seat.SlatWide), w.Fine(seat.SlatThick)))
	}
	return append(out, fmt.Sprintf("Hang it: lower it between the blocks until the hangers' upper ends are flush with the gunwales' edges, and push each hanger out against its block. Then the bolts, from inboard, with %s under each head, and the pegs last.", washersOf(h)),
		takeOut(h))
}

// drillLong is how long a drill is with its bit, mm: common practice, no source.
const drillLong = 250.0

// drillRoom says in which order hangers are bored where a drill does not go between them.
func (w *writer) drillRoom(h *seat.Hung) string {
	if h.Room() >= drillLong {
		return ""
	}
	return " Bore the front ones before the after ones are bolted on: between them only " + w.Letters.Units.Whole(math.Floor(h.Room())) + " are left, too little for a drill."
}

// takeOut is how a hung seat comes out.
func takeOut(h *seat.Hung) string {
	if min(h.Front.Hanger.Lean(), h.After.Hanger.Lean()) > 0 {
		return "To take it out, draw the eight bolts and lift it straight up. The hangers lean outward as the gunwales do, so that it comes free with its pegs in."
	}
	return "To take it out, pull the four pegs, draw the eight bolts, push the hangers inboard, and lift it."
}

// railEnds says how long rails are and how their ends are sawn.
func (w *writer) railEnds(h *seat.Hung) string {
	plan := func(r seat.Rail) string {
		toward := "bow" // where the gunwales stand nearer together
		if r.Shift().X > 0 {
			toward = "stern"
		}
		return fmt.Sprintf("%s degrees, the edge toward the %s shorter,", report.Angle(r.Hanger.Skew), toward)
	}
	return fmt.Sprintf("A rail's length is that along its middle. Its ends lie flush with the hangers' outer faces: saw them %s degrees off square in height, the lower edge shorter, and off square in plan by %s.",
		report.Angle(h.Front.Hanger.Lean()), strings.TrimSuffix(inEach(plan(h.Front), plan(h.After)), ","))
}

// spreaderEnds says how a spreader's ends are sawn between rails that do not lie level
// with each other.
func (w *writer) spreaderEnds(h *seat.Hung) string {
	rise := h.After.TopZ - h.Front.TopZ
	if math.Abs(rise) < 1 {
		return "Saw the spreaders' ends square; their tops lie flush with the rails'."
	}
	high := "after"
	if rise < 0 {
		high = "front"
	}
	return fmt.Sprintf("The %s rail lies %s higher: saw the spreaders' ends %s degrees off square, so that they stand plumb against both rails with their tops flush.", high, w.Fine(math.Abs(rise)), report.Angle(math.Atan2(math.Abs(rise), h.Spreader)))
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
	per := scaleFor(high.X+140, high.Y, 150, 72)
	d := newSketch(fmt.Sprintf("seat-%d", s.Number+1), s.Name, per)
	d.path(layout.Cut, curve.Polygon(edge(-rail.Width/2, 0), edge(rail.Width/2, 0), high, edge(-rail.Width/2, rail.Height)))
	d.path(layout.Mark, curve.Polygon(g.Point(2, 0), g.Point(2, g.Block), g.Point(2+g.BlockHigh(), g.Block), g.Point(2+g.BlockHigh(), 0)))
	d.path(layout.Cut, curve.Polygon(g.Point(0, g.Block), g.Point(0, g.Block+seat.Thick), g.Point(g.Length, g.Block+seat.Thick), g.Point(g.Length, g.Block)))
	nut := func(down, in float64) geometry.Point { return g.Point(g.Down+down*seat.NutSeat/2, in-rail.Width) }
	d.path(layout.Mark, curve.Polygon(nut(-1, 0), nut(1, 0), nut(1, seat.LetIn), nut(-1, seat.LetIn)))
	a, b := g.Point(g.Down, -rail.Width), g.Point(g.Down, g.Block+seat.Thick+8)
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
	d.up(f.Hull.FloorZ(r.Station), r.TopZ-h.Depth, 60/per, w.whole(h.Clear))
	mid := g.Point(g.Down, g.Block+seat.Thick+14)
	d.note(mid.X, mid.Y, -1, -1, layout.Right, "bolts")
	d.note(r.Length/3, r.TopZ, 0, 1.5, layout.Middle, "front rail")
	d.note(-70, s.TopZ(), -1.5, -small/2, layout.Right, "top")
	d.note(-70, floor, -1.5, -small/2, layout.Right, "floor")
	return report.Figure{Drawing: d.settled(),
		Caption: fmt.Sprintf("%s, %s, section at the front rail, port side, seen from ahead: gunwale with the seat of a nut, block, hanger with its rail, the nearest rib. The top of the seat at its middle is %s over the floor; %s are clear under the front rail.", s.Name, ratio(per), w.Fine(s.Height), w.whole(h.Clear)),
		About:   "The front rail in its hanger under the gunwale, with the height of the seat over the floor and the room for the feet."}
}

// frameFigure is a hung seat from above, the bow up: rails, hangers, spreaders, the
// straps or slats, and where the pegs go.
func (w *writer) frameFigure(s seat.Seat) report.Figure {
	h := s.Hung
	wide := math.Max(h.Front.Length, h.After.Length)
	per := scaleFor(wide+60, s.Long+80, 150, 75)
	d := newSketch(fmt.Sprintf("seat-%d-above", s.Number+1), s.Name+", from above", per)
	rect := func(p layout.Pen, x0, y0, x1, y1 float64) { d.box(p, x0, y0-s.At, x1, y1-s.At) }
	inner, outer := s.Wide/2, s.Wide/2+seat.SpreadWide
	for _, r := range []seat.Rail{h.Front, h.After} {
		rect(layout.Cut, -r.Length/2, r.Station-h.Width/2, r.Length/2, r.Station+h.Width/2)
		g := r.Hanger
		for _, side := range []float64{-1, 1} {
			at := func(fore, in float64) geometry.Point {
				p := g.At(fore, g.Slot+h.Depth/2, g.Block+in)
				return geometry.Pt(side*p.Y, p.X-s.At)
			}
			d.path(layout.Mark, curve.Polygon(at(-g.Wide/2, 0), at(g.Wide/2, 0), at(g.Wide/2, seat.Thick), at(-g.Wide/2, seat.Thick)))
			from, to := at(-g.Wide/2-2*per, seat.Thick/2), at(g.Off, seat.Thick/2)
			d.line(layout.Center, from.X, from.Y, to.X, to.Y)
			x := side * (s.Wide + seat.SpreadWide) / 2
			d.line(layout.Center, x, r.Station-s.At+h.Width/2*way(r.Station-s.At), x, r.Station-s.At+(h.Width/2-h.IntoSpreader())*way(r.Station-s.At))
		}
	}
	aft, fore := h.After.Station+h.Width/2, h.Front.Station-h.Width/2
	for _, side := range []float64{-1, 1} {
		rect(layout.Cut, side*inner, aft, side*outer, fore)
	}
	across := seat.StrapWide
	if h.Bottom != design.Webbing {
		across = seat.SlatWide
	}
	for i := range h.Along {
		x := -s.Wide/2 + s.Wide*(float64(i)+0.5)/float64(h.Along)
		rect(layout.Guide, x-across/2, aft-h.Width, x+across/2, fore+h.Width)
	}
	for i := range h.Across {
		y := aft + (fore-aft)*(float64(i)+0.5)/float64(h.Across)
		rect(layout.Guide, -outer, y-across/2, outer, y+across/2)
	}
	low := (h.After.Station-s.At-math.Max(h.Width, h.After.Hanger.Wide)/2)/per - 9
	d.across(-inner, inner, low, w.Length(s.Wide))
	d.across(-h.After.Length/2, h.After.Length/2, low-7, w.Length(h.After.Length)+", after rail")
	high := (h.Front.Station-s.At+math.Max(h.Width, h.Front.Hanger.Wide)/2)/per + 5
	d.across(-h.Front.Length/2, h.Front.Length/2, high, w.Length(h.Front.Length)+", front rail")
	d.up(aft-s.At, fore-s.At, (-wide/2-seat.Thick)/per-5, w.Fine(h.Spreader))
	return report.Figure{Drawing: d.settled(),
		Caption: fmt.Sprintf("%s, %s, from above, forward up: two rails through the closed slots of their hangers, two spreaders glued between them; dashed the %s. The short dash-dot lines are pegs: through a hanger's after edge into its rail, and through a rail into a spreader's end.", s.Name, ratio(per), map[bool]string{true: "straps", false: "slats"}[h.Bottom == design.Webbing]),
		About:   "The rails, spreaders and hangers of a hung seat from above, with their lengths and the places of the pegs."}
}

// way is 1 forward and -1 aft.
func way(forward float64) float64 { return math.Copysign(1, forward) }

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
	w.add(report.Figure{Drawing: d.settled(), Caption: fmt.Sprintf("%s, %s, from the side, forward to the right; dashed the floor over the keel.", s.Name, ratio(per)), About: "A saddle from the side with its height over the floor."})
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
