package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

func (w *writer) cutList() {
	w.chapter(CutList)
	w.say("Finished sections; lengths and outlines with what is cut off after fitting. The larger side first. Pieces are what a scarfed stick is made of.")
	t := report.Titled("Sticks, "+w.Unit()).Names("Mark").Words("Part").Names("Wood").Numbers("Length", "Width", "Thick", "Pieces").Words("Grain")
	for i, s := range w.Plan.Sticks {
		if s.Family == cutlist.Block {
			continue
		}
		pieces := fmt.Sprint(len(w.Plan.Cuttings[i].Pieces))
		t.Row(s.Mark, s.Part, s.Species, w.sawn(s.Length), w.Gauge(s.Width), w.Gauge(s.Thickness), pieces, w.Plan.Grain(i))
	}
	w.blocksInList(&t)
	t.Note = fmt.Sprintf("In the finished boat these sticks are %s of wood, %s at the densities of the species table.", w.volume(w.InBoat.Volume), w.Mass(w.InBoat.Mass))
	if o := w.InOutfits; o.Volume > 0 {
		t.Note += fmt.Sprintf(" The outfits' are %s and %s, all beams and spars with them.", w.volume(o.Volume), w.Mass(o.Mass))
	}
	w.add(t)
	w.forms()
}

// volume letters mm3 of wood.
func (w *writer) volume(mm3 float64) string {
	return report.Either(w.Letters.Units, fmt.Sprintf("%.2f liters", mm3/1e6), fmt.Sprintf("%.1f board feet", mm3/1e9/boardFoot))
}

// sawn letters a length that is cut off in the rough: to the next whole millimeter, or in
// inches as the tables of the parts have it.
func (w *writer) sawn(mm float64) string {
	const speck = 1e-6
	return report.Either(w.Letters.Units, measure.MM(math.Ceil(mm-speck), 0), w.Cell(mm))
}

func (w *writer) boards() {
	w.chapter(RippingPlan)
	w.say("Rips run the whole length of a board, side by side, with %[1]s of saw and %[2]s of plane between them: saw each %[2]s wider than it says, those along a board's two edges %[4]s wider, and plane each sawn face to the width. Where your saw takes more than %[1]s, have stock.kerf changed in the design and this plan made anew. Thickness and width of a board are those with its faces planed and its edges straight and clean: where yours are not, true them first and measure what is left. Each rip is then crosscut from one end: first cut off its checked end, %[3]s or more until the wood is sound and the cut square; the plan leaves so much at both ends of every board. Where a rip stands for several layers, with | between them, it is resawn. Plane each piece, or each slice off the edge, to the section in the third column, larger side first; resaw those far thinner than their board before, where your saw reaches through. Marks are those of the cut list; S1p/2 is the second piece of S1p, from aft. Some rips leave a rest that is ripped once more (1.1, 1.2 and so on): crosscut it off as the line before says, then rip it.", w.Fine(w.Plan.Kerf), w.Fine(cutlist.Dressing), w.Length(cutlist.Checked), w.Fine(cutlist.Dressing/2))
	t := report.Titled("Boards").Words("Wood").Numbers("Boards", "Waste", "Least waste in whole boards").Words("Size, "+w.Unit(), "From")
	for _, v := range w.Plan.Woods {
		if len(v.Boards) == 0 {
			continue
		}
		from := "yours"
		if v.Boards[0].Board.Asked {
			from = "ask the yard"
		}
		t.Row(v.Species, fmt.Sprint(len(v.Boards)), report.Percent(v.Waste()), report.Percent(v.LeastWaste()), w.boardSizes(v, ""), from)
	}
	t.Note = "Waste is sawdust and offcuts of the boards bought. The bound counts the ground that the pieces cover with their saw cuts, in whole boards of the size; no plan can waste less."
	w.add(t)
	if missing := w.Plan.Missing(); len(missing) > 0 {
		var items []string
		for _, m := range missing {
			items = append(items, w.Plan.Sticks[m.Stick].Mark+", "+w.Plan.Sticks[m.Stick].Part+": "+m.Why)
		}
		w.warn("There is no wood for these sticks. No other wood, and no wood of another part, is taken for them.", "arithmetic of this design")
		w.add(report.List{Items: items})
		w.toBuy()
	}
	w.rings()
	w.say("%s", w.shortOf())
	for _, v := range w.Plan.Woods {
		w.ripping(v)
	}
}

// boardSizes counts the boards of each size and way to be sawn: of a course each boat's own.
func (w *writer) boardSizes(v cutlist.Wood, unit string) string {
	var sizes []string
	count := map[string]int{}
	for _, s := range v.Boards {
		b := s.Board
		size := fmt.Sprintf("%s x %s x %s%s%s", w.Whole(b.Length), w.Whole(b.Width), w.Cell(b.Thickness), unit, sawnWay(b))
		if count[size]++; count[size] == 1 {
			sizes = append(sizes, size)
		}
	}
	return wording.Joined(sizes, "; ", func(s string) string { return fmt.Sprintf("%d of %s", count[s], s) })
}

// sawnWay says how a board lies in its log, "" where that is not known or makes no odds.
func sawnWay(b cutlist.Board) string {
	if b.Sawn == "" {
		return ""
	}
	return ", " + string(b.Sawn) + "-sawn"
}

func (w *writer) ripping(v cutlist.Wood) {
	if len(v.Boards) == 0 {
		return
	}
	w.section(wording.Capital(v.Species))
	for i, s := range v.Boards {
		w.add(w.boardFigure(v, i))
		t := report.Titled(fmt.Sprintf("%s, board %d of %d%s, %s", wording.Capital(v.Species), i+1, len(v.Boards), sawnWay(s.Board), w.Unit())).Names("Rip").Numbers("Wide").Words("Plane to", "Crosscut, layer by layer: mark, length").Numbers("Spare")
		for k, r := range s.Rips {
			t.Row(fmt.Sprint(k+1), w.Gauge(r.Across), w.planedTo(r), w.crosscutFirst(r)+w.layers(r), w.spare(r, s.Board.Clear()))
			for m, more := range r.Rest {
				t.Row(fmt.Sprintf("%d.%d", k+1, m+1), w.Gauge(more.Across), w.planedTo(more), "of the rest: "+w.layers(more), w.spare(more, s.Board.Clear()-w.taken(r.Layers[0])))
			}
		}
		w.add(t)
	}
}

func (w *writer) layers(r cutlist.RipCut) string {
	piece := func(p cutlist.Piece) string {
		mark := w.Plan.Sticks[p.Stick].Mark
		if p.Of > 1 {
			mark += fmt.Sprintf("/%d", p.Number)
		}
		return mark + " " + w.sawn(p.Length)
	}
	return wording.Joined(r.Layers, " | ", func(l []cutlist.Piece) string { return wording.List(l, piece) })
}

// boardFigure draws a board with its rips and crosscuts, wider than it is long for
// its length: at one scale thin rips would run into each other.
func (w *writer) boardFigure(v cutlist.Wood, i int) report.Figure {
	s := v.Boards[i]
	along, across := scaleFor(s.Board.Length, 0, 160, 1), scaleFor(s.Board.Width, 0, 32, 1)
	d := boardSketch{layout.Drawing{Name: fmt.Sprintf("board-%d", i+1), Title: fmt.Sprintf("%s, board %d", wording.Capital(v.Species), i+1)},
		geometry.Stretch(1/along, 1/across), w.Plan.Kerf}
	d.box(layout.Cut, 0, s.Board.Width, s.Board.Length, s.Board.Width)
	for _, x := range []float64{cutlist.Checked, s.Board.Length - cutlist.Checked} {
		d.Straight(layout.Guide, x/along, 0, x/along, s.Board.Width/across)
	}
	d.rips(s.Rips, geometry.Point{X: cutlist.Checked, Y: s.Board.Width})
	return report.Figure{Drawing: d.Drawing, Caption: fmt.Sprintf("Board %d of %s, its face, %s along and %s across: rips from the upper edge down as in the table, the first layer's crosscuts from the left; dashed what is cut off its ends.", i+1, v.Species, ratio(along), ratio(across)),
		About: fmt.Sprintf("A board of %s with its rips and crosscuts.", v.Species)}
}

// boardSketch draws a board at one scale along and another across.
type boardSketch struct {
	layout.Drawing
	scale geometry.Affine
	kerf  float64
}

// box draws a piece by its upper left corner and its size, mm of the board.
func (d *boardSketch) box(p layout.Pen, x, y, long, wide float64) {
	d.Line(p, curve.Rectangle(geometry.Box{Min: geometry.Point{X: x, Y: y - wide}, Max: geometry.Point{X: x + long, Y: y}}).Map(d.scale))
}

// rips draws rips side by side, downward from the corner.
func (d *boardSketch) rips(rips []cutlist.RipCut, corner geometry.Point) {
	y := corner.Y
	for _, r := range rips {
		x := corner.X
		for _, p := range r.Layers[0] {
			d.box(layout.Tick, x, y, p.Length, r.Across)
			x += p.Length + d.kerf
		}
		d.rips(r.Rest, geometry.Point{X: x, Y: y})
		y -= r.Across + d.kerf + cutlist.Dressing
	}
}

// long letters a length as it is bought, in whole meters or feet.
func (w *writer) long(m float64) string {
	return report.Either(w.Letters.Units, wholeMeters(m)+" m", w.meters(1000*m))
}

// wholeMeters letters a length as it is bought: what is begun is taken whole.
func wholeMeters(m float64) string { return fmt.Sprintf("%.0f", math.Ceil(m-1e-9)) }

// priced is the table of what to buy.
func (w *writer) priced() {
	e := w.Cost
	w.say("Prices are those of the table %q (%s), all in the one currency of that table. The tables that come with the program are invented, to compare boats by, and are no money of any country: ask for prices where you buy. From a table of your own who made this book can make it anew.", w.Prices.Name, w.Prices.About)
	t := report.Titled("What to buy").Words("What").Numbers("Amount").Names("Unit").Words("How it is worked out").Numbers("Each", "Cost", "Off by")
	for _, l := range e.Lines {
		amount, unit, one := w.sold(l)
		each := "-"
		if one > 0 {
			each = fmt.Sprintf("%.2f", one)
		}
		cost, off := fmt.Sprintf("%.0f", l.Likely), report.Percent(l.Spread)
		if l.Lacks {
			each, cost, off = "", "", ""
		}
		t.Row(l.Name, amount, unit, w.workedOut(l)+w.asked(l.Key)+notByTable(l), each, cost, off)
	}
	t.Note = fmt.Sprintf("Together %.0f%s: likely between %.0f and %.0f when prices err one up and one down; between %.0f and %.0f when all err the same way.",
		e.Likely, e.Without(), e.Likely-e.Off, e.Likely+e.Off, e.Likely-e.OffAll, e.Likely+e.OffAll)
	w.add(t)
}

func (w *writer) shopping() {
	w.chapter(Shopping)
	w.priced()
	e := w.Cost
	if e.Likely > 0 {
		w.add(w.sums("What the materials come to", "Cost", e.Within, e.Off/e.Likely))
	}
	if n := len(w.Plan.Missing()); n > 0 {
		w.warn(fmt.Sprintf("The sum is without the wood of %s for which no board was found; see the ripping plan.", wording.Counted(n, "stick")), "arithmetic of this design")
	}
	w.add(w.helps())
	w.plates()
}

// notByTable says which boards of a line are not priced by the table, "" for none.
func notByTable(l cost.Line) (words string) {
	for _, from := range strings.Split(l.From, "; ") {
		if strings.Contains(from, "your own") || strings.Contains(from, "in the design") {
			words += "; " + from
		}
	}
	return words
}

func (w *writer) hours() {
	w.chapter(HoursChapter)
	total := hours.Hours(w.Work, "", w.Skill)
	w.say("Operations counted on this frame, times minutes for an experienced woodworker (common practice, no source), times %.2f for %s. Waiting for glue, wood and coats to dry is not in it.", w.Skill.Factor(), w.Skill.Who())
	if words := w.saved(); words != "" {
		w.say("%s", words)
	}
	t := report.Titled("").Names("Stage").Words("Operation").Numbers("Count").Names("Unit").Numbers("Minutes each", "Hours")
	for _, k := range w.Work {
		count, unit, minutes := w.worked(k)
		t.Row(string(k.Stage), k.Name, count, unit, minutes, fmt.Sprintf("%.1f", k.Hours(w.Skill)))
	}
	t.Note = fmt.Sprintf("Together %.0f hours, likely between %.0f and %.0f.", total, total*(1-hours.Off), total*(1+hours.Off))
	w.add(t, w.sums("What the work comes to", "Hours", func(s kit.Scope) float64 { return hours.Within(w.Work, s, w.Skill) }, hours.Off))
	w.say("The same boat by a builder who is: %s.", wording.Joined(hours.Skills(), "; ", func(s hours.Skill) string { return fmt.Sprintf("%s %.0f hours", s, hours.Hours(w.Work, "", s)) }))
}
