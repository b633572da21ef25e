package book

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/swamped"
	"ribwright/geometry/water/awash"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// around is the outline of a piece of flotation from above.
func around(b flotation.Bag) curve.Path {
	var out, back []geometry.Point
	fromAft := slices.SortedFunc(slices.Values(b.Blocks), func(a, b awash.Block) int { return cmp.Compare(a.At.X, b.At.X) })
	for _, k := range fromAft {
		for _, x := range []float64{k.At.X - k.Long/2, k.At.X + k.Long/2} {
			out = append(out, geometry.Pt(x, k.At.Y+k.Wide/2))
			back = append([]geometry.Point{geometry.Pt(x, k.At.Y-k.Wide/2)}, back...)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return curve.Polyline(append(append(out, back...), out[0])...)
}

// mark letters a piece of flotation in the plan and in its table: side pieces by number
// from aft, bags by the end that they lie in.
func mark(b flotation.Bag) string {
	switch {
	case !b.Foam:
		return wording.Capital(b.Where)
	case b.Number == 0:
		return "1"
	}
	return fmt.Sprint(b.Number)
}

// lettered writes a side piece's mark outside the gunwale that it lies under, a bag's beside
// the end that it lies in.
func (w *writer) lettered(s *sketch, b flotation.Bag) {
	if b.Liters == 0 {
		return
	}
	h, half := w.Frame.Hull, w.Frame.Gunwale.At(b.At.X, 0, 0).Y
	switch {
	case !b.Foam && b.At.X < 0:
		s.note(-h.Stern.Tip(), 0, -2, -small/2, layout.Right, mark(b))
	case !b.Foam:
		s.note(h.Bow.Tip(), 0, 2, -small/2, layout.Left, mark(b))
	case b.At.Y > 0:
		s.note(b.At.X, half, 0, 1.2, layout.Middle, mark(b))
	default:
		s.note(b.At.X, -half, 0, -small-1.2, layout.Middle, mark(b))
	}
}

// flotation is what keeps the boat up when it is full of water.
func (w *writer) flotation() {
	fit := w.Afloat.Flotation
	sides, ends := w.portSide(), w.endBags()
	if len(sides)+len(ends) == 0 {
		return
	}
	w.section("Flotation")
	w.say("Full of water and with its wood soaked the boat lifts %.0f kg itself. People who sit in it to the navel want %.0f l more, for half their weight and a quarter of the gear's; %.0f l are fitted. Foam at the sides keeps the boat upright under people who sit on its floor; bags in the ends keep its trim and leave less water to empty.", fit.Need.Soaked, math.Ceil(fit.Need.Seat), fit.Liters())
	w.sidePieces(sides)
	w.bags(ends)
	if w.Trial != nil && w.Trial.Swamped != nil {
		w.add(swampedTable(w.Trial.Swamped, w.Letters))
	}
	w.add(report.List{First: 1, Items: []string{
		"Hold each piece in its place before you strap it. It touches nothing but ribs and gunwales, and no person.",
		"Pull at every strap as hard as its table says that it holds" + report.Either(w.Letters.Units, ", 10 N for each kilogram", "") + ": that much and no more.",
		"In shallow water, with a life jacket on, fill the boat to its gunwales. Sit on its floor, then hold on outside. Compare with the table above: the least of the sheer out of water, and whether it comes back when you rock it.",
		"Where it lies lower or rolls, look for a strap that gave and foam that lies low or inboard. People heavier than the design's want more foam."}})
	w.warn("Flotation that comes loose leaves the boat when it is needed. Look at every strap before each trip, and leave no loop that a foot or a hand goes into.", "common practice, no source")
}

// portSide are the side pieces of one side: the other side's are their mirror.
func (w *writer) portSide() (out []flotation.Bag) {
	for _, b := range w.Afloat.Flotation.Bags {
		if b.Foam && b.Liters > 0 && b.At.Y > 0 {
			out = append(out, b)
		}
	}
	return out
}

func (w *writer) endBags() (out []flotation.Bag) {
	for _, b := range w.Afloat.Flotation.Bags {
		if !b.Foam && b.Liters > 0 {
			out = append(out, b)
		}
	}
	return out
}

// strapHolds letters what a strap must hold, rounded up to what straps are sold by.
func strapHolds(b flotation.Bag) string { return fmt.Sprintf("%.0f", math.Ceil(b.Pull/10)*10) }

// volumes heads a column of what floats.
func (w *writer) volumes() string { return report.Either(w.Letters.Units, "Liters", "Gallons") }

// holdsVolume letters liters for such a column.
func (w *writer) holdsVolume(liters float64, decimals int) string {
	return report.Either(w.Letters.Units, measure.MM(liters, decimals), measure.MM(liters/quart/4, 1))
}

func (w *writer) sidePieces(sides []flotation.Bag) {
	if len(sides) == 0 {
		return
	}
	t := report.Titled("Side pieces of closed-cell foam, each twice, port and starboard, "+w.Unit()).Names("Piece").Numbers("Aft end at", "Fore end at", "Thick aft", "Thick amid", "Thick fore", "Tall", w.volumes(), "Each strap holds, N", "Each cut to").Words("Straps at ribs")
	for _, b := range sides {
		n := len(b.Blocks)
		t.Row(mark(b), w.Station(b.Aft), w.Station(b.Fore), w.Whole(b.Blocks[0].Wide), w.Whole(b.Blocks[n/2].Wide), w.Whole(b.Blocks[n-1].Wide), w.Whole(b.Tall), w.holdsVolume(b.Liters, 1), strapHolds(b), w.Whole(1000*b.StrapLong()), strings.Join(b.StrapRibs(w.Frame), ", "))
	}
	t.Note = "Thick is across the boat, at the lower edge. A strap and what it is tied to hold twice the lift of the whole piece, and there is never one strap alone. Pieces leave people the room that they want as the design has them: " + w.posed() + ". Who means to sit another way wants the book made anew for it."
	w.add(t, w.sideFigure(widest(sides)))
	w.add(report.List{First: 1, Items: []string{
		"When the frame is oiled and dry, before the skin goes on, tie two loops of webbing for each strap, to port and to starboard, round the rib that the table names: one close under the gunwale, one just under the piece, " + w.lowerEdge(sides) + " plumb below the gunwale's underside. Webbing may press the cloth out a little there. Where a stringer is lashed to the rib there, tie it close below the lashing. " + w.loop(),
		"Glue foam sheets of " + w.Length(flotation.FoamSheet) + " to a block of each size. Cut its thickness to the table; its outer face may follow the ribs' lean and be thicker above. Round every edge.",
		"Lay it under its gunwale, its lower outer edge against the ribs, as the figure shows.",
		"Lead each strap through both loops and round the piece, draw it tight and buckle it on the piece's face, where a hand reaches it from outside the boat. From a rib that stands at the very end of a piece lead it aslant onto the piece. The piece goes neither up nor in nor along."}})
}

// lowerEdge letters how far below the gunwale side pieces reach.
func (w *writer) lowerEdge(sides []flotation.Bag) string {
	most := 0.0
	for _, b := range sides {
		k := b.Blocks[len(b.Blocks)/2]
		most = math.Max(most, w.Frame.Gunwale.At(k.At.X, 0, 0).Z-(k.At.Z-k.Tall/2))
	}
	return w.whole(most)
}

// widest is the piece of the most lift, which the figure shows.
func widest(sides []flotation.Bag) flotation.Bag {
	best := sides[0]
	for _, b := range sides {
		if b.Liters > best.Liters {
			best = b
		}
	}
	return best
}

// posed says how each one sits whom flotation leaves room.
func (w *writer) posed() string {
	var out []string
	for _, p := range w.Frame.Design.Crew {
		if p.Role != design.Dog {
			out = append(out, p.Name+" "+posture(p.Posture))
		}
	}
	return wording.And(out)
}

// posture says how one sits.
func posture(p design.Posture) string {
	return map[design.Posture]string{design.Kneeling: "kneeling, the feet behind", design.Floor: "on the floor, the legs ahead", design.Bench: "sitting up, the legs ahead"}[p]
}

// loopTall is how tall a loop is drawn, mm: the breadth of its webbing.
const loopTall = 25.0

// sideFigure is a section through a side piece, port side, seen from ahead.
func (w *writer) sideFigure(b flotation.Bag) report.Figure {
	f := w.Frame
	k := b.Blocks[len(b.Blocks)/2]
	rail := &f.Gunwale
	edge := func(across, up float64) geometry.Point {
		p := rail.EdgeAt(k.At.X, across, up)
		return geometry.Pt(p.Y, p.Z)
	}
	high := edge(rail.Width/2, rail.Height)
	per := scaleFor(high.X+160, high.Y, 150, 100)
	d := newSketch("flotation", "Side piece", per)
	d.path(layout.Cut, curve.Polygon(edge(-rail.Width/2, 0), edge(rail.Width/2, 0), high, edge(-rail.Width/2, rail.Height)))
	rib := f.Nearest(k.At.X)
	d.path(layout.Mark, rib.Inner)
	d.path(layout.Mark, rib.Outer)
	in, out, low, top := k.At.Y-k.Wide/2, k.At.Y+k.Wide/2, k.At.Z-k.Tall/2, k.At.Z+k.Tall/2
	d.box(layout.Cut, in, low, out, top)
	strap := []geometry.Point{geometry.Pt(in-3, low-3)}
	for _, p := range dense(rib.Inner.Flatten(0.5)) { // before the rib, from loop to loop
		if p.Y > low-12 && p.Y < top+3 {
			strap = append(strap, geometry.Pt(p.X-2, p.Y))
		}
	}
	d.path(layout.Guide, curve.Polyline(append(strap, geometry.Pt(in-3, top+3), strap[0])...))
	for _, at := range []geometry.Point{strap[1], strap[len(strap)-1]} {
		d.box(layout.Mark, at.X-2, at.Y-loopTall/2, at.X+rib.Thickness+5, at.Y+loopTall/2)
	}
	floor := f.Hull.FloorZ(k.At.X)
	d.line(layout.Center, 0, floor-20, 0, high.Y)
	d.line(layout.Guide, 0, floor, in, floor)
	d.across(in, out, low/per-8, w.Length(k.Wide))
	d.across(0, in, top/per-4, w.Length(in))
	d.up(low, top, in/per-5, w.Length(k.Tall))
	d.up(floor, low, in/per-5, w.Length(low-floor))
	d.note(k.At.Y, k.At.Z, 0, -small/2, layout.Middle, "foam")
	d.note(high.X, high.Y, 3, -small, layout.Left, "gunwale")
	d.note(20, floor, 0, 1.5, layout.Left, "floor")
	return report.Figure{Drawing: d.settled(),
		Caption: fmt.Sprintf("Side piece %s, %s, section at its middle, port side, seen from ahead: gunwale, foam, the nearest rib; dashed a strap, through the two loops round the rib, and the floor. From the middle line to its face, and from the floor to its lower edge, is what people have. Its top lies %s under the gunwale's underside.", mark(b), ratio(per), w.Length(math.Max(0, edge(0, 0).Y-top))),
		About:   "A piece of foam under the gunwale against a rib, with its sizes and a strap round it."}
}

func (w *writer) bags(ends []flotation.Bag) {
	if len(ends) == 0 {
		return
	}
	t := report.Titled("Float bags, "+w.Unit()).Names("Place").Numbers(w.volumes(), "From", "To", "Across at most", "Tall", "Straps", "Each holds, N", "Each cut to")
	for _, b := range ends {
		t.Row(wording.Capital(b.Where), w.holdsVolume(b.Liters, 0), w.Station(b.Aft), w.Station(b.Fore), w.Whole(b.Across), w.Whole(b.Tall), fmt.Sprint(b.Straps), strapHolds(b), w.Whole(1000*b.StrapLong()))
	}
	w.add(t, report.List{First: 1, Items: []string{
		"When the frame is oiled and dry, before the skin goes on, tie two loops of webbing for each strap where it will cross the bag: a quarter of its length from each end, round the upper stringer to port and to starboard; under the cloth webbing shows no more than a lashing. Tie one more at each end, round rib " + strings.Join(lacedTo(w.Frame, ends), " and rib ") + ", close beside the keel: the cloth stands clear of the rib there.",
		"Push each bag into its end and blow it up. Buckle its straps across its top, from loop to loop, and lace crossed cord over its open face from the straps to the loop beside the keel.",
		"Let out some air when the boat lies in the sun."}})
}

// lacedTo names the ribs that bags are laced to.
func lacedTo(f *frame.Frame, ends []flotation.Bag) (out []string) {
	for _, b := range ends {
		out = append(out, b.LaceRib(f))
	}
	return out
}

// swampedTable tells how the boat lies full of water, as it is to be tried.
func swampedTable(s *swamped.Report, w report.Letters) report.Block {
	t := report.Titled("Full of water, "+w.Unit()).Words("People").Numbers("Sheer out of water: stern", "Midship", "Bow", "GM").Words("So")
	for _, l := range s.Fitted {
		if l.Fault != "" {
			t.Row(wording.Capital(string(l.Posture)), "", "", "", "", l.Fault)
			continue
		}
		t.Row(wording.Capital(string(l.Posture)), w.Whole(l.Stern), w.Whole(l.Midship), w.Whole(l.Bow), w.Whole(l.GM), lies(l))
	}
	t.Note = "Estimates, with soaked wood in still water and people as heavy as water below it. Less than 0 is under water."
	return t
}

// lies says in a word how a swamped boat lies.
func lies(l swamped.Lying) string {
	switch {
	case l.GM <= 0:
		return "rolls over"
	case l.Least() < 0:
		return "cannot be bailed"
	case l.GM < swamped.Steady:
		return "hardly upright"
	}
	return "upright"
}
