package book

import (
	"fmt"
	"math"

	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// gaps tells of mortises that are left open between blocks of the middle ply.
func (w *writer) gaps() {
	g := &w.Frame.Gunwale
	m := g.Mortises[0]
	w.say("The mortises are gaps. The middle ply of each gunwale is not one stick: it is a row of %s, %s tall, and above them a strip, %s tall, that runs the whole length and closes the gaps. Blocks and strip are glued edge to edge first, flat and straight, on the pattern of the middle ply; what comes off the bench is a ply with its slots made. So the gunwale is as strong and bends as one whose mortises are cut.",
		wording.Counted(len(g.Blocks), "block"), w.Fine(m.Depth), w.Fine(g.Height-m.Depth))
	w.say("Every gap is %s long, %s wide, which is the thickness of the ply, and %s deep; a wall of %s stands on either side. Set each gauge to its own place from midship and fit the block between two of them: blocks laid one against the other would add up what each is off. A block may be %s off.",
		w.Fine(m.Length), w.Fine(m.Width), w.Fine(m.Depth), w.Fine(m.Wall), report.Either(w.Letters.Units, "0.5 mm", "1/64 in"))
	t := report.Titled("Gaps, "+w.Marks()).Names("Rib").Numbers("From midship, along the stock", "Station, along the boat", "Rib leans, degrees", "Taper at the tip of its head", "Along, degrees", "Twist, degrees", "Ease", "To a scarf drawn")
	for _, m := range g.Mortises {
		t.Row(m.Rib, w.Mark(m.FromMidship), w.Cell(m.Station), signed(report.Angle(m.Bevel)), w.cellIf(m.Taper > 0, m.Taper), signed(report.Angle(m.Along)), turned(m.Twist), w.cellIf(w.eased(m), m.Ease), w.cellIf(!math.IsInf(m.ToScarf, 1), m.ToScarf))
	}
	t.Note = "A gap stands square to its gunwale and cannot lean as a cut mortise does. Where a rib leans more than the gap leaves room for, plane its head to a taper: nothing at the shoulder, so much at the tip, off the outboard face where it leans outboard (+), off the inboard face where it leans inboard (-). " + headNote
	w.add(t)
	w.blocks()
}

// blocks lists their lengths.
func (w *writer) blocks() {
	t := report.Titled("Blocks of one middle ply, from aft, "+w.Marks()).Names("Block").Numbers("From", "To", "Length")
	for i, z := range w.Frame.Gunwale.Blocks {
		t.Row(fmt.Sprint(i+1), w.Mark(z.From), w.Mark(z.To), w.Mark(z.To-z.From))
	}
	t.Note = "Places are along the " + w.gunwaleStock() + " from midship, forward positive. The end blocks are cut with the gunwale's ends; leave them long. The cut list adds what is trimmed off. Short offcuts serve."
	w.add(t)
}

// gapSteps is the work on gunwales whose mortises are gaps, up to plies that are ready
// to be glued to each other.
func (w *writer) gapSteps() []string {
	g := &w.Frame.Gunwale
	m := g.Mortises[0]
	return []string{
		fmt.Sprintf("Saw %s for the gaps from hardwood: %s long, %s thick or a shaving less, some %s taller than a gap is deep. Wax them; wax them again for each gunwale.",
			wording.Counted(len(g.Mortises), "gauge"), w.Fine(m.Length), w.Fine(m.Width), report.Either(w.Letters.Units, "20 mm", "3/4 in")),
		"Trim the blocks to their lengths. Write on each its number, and P or S.",
		"Clamp a straight board beside the pattern of the middle ply. Cover both with film.",
		"Lay the strip along the board and spread glue on its lower edge.",
		"Set gauges and blocks against it from midship outward, each gauge on its own place. No glue goes on the ends of the blocks.",
		"Press all up with wedges and tap the blocks flat. Draw the gauges when the glue has gelled.",
		"Plane both faces of the middle ply flush, no thinner than its mark says.",
	}
}

// gapsGlued is the gluing of the plies where one of them has gaps.
func gapsGlued() string {
	return " Stand a waxed gauge in every gap while you clamp, spread the glue thin beside the gaps, and draw the gauges when it has gelled."
}

// clearGaps is what is left to do at the gaps when the plies are glued.
func (w *writer) clearGaps() string {
	return "Clear the gaps of glue with a narrow chisel. Try an offcut of rib stock in each; the heads of ribs that lean are tapered when their blanks are readied, by the table under Gunwales."
}

// saved says what mortises by gap spare of the hours, "" where they are cut.
func (w *writer) saved() string {
	if w.Frame.Gunwale.Blocks == nil {
		return ""
	}
	h := w.Saved * w.Skill.Factor()
	words := fmt.Sprintf("Mortises by gap spare %.1f hours here", h)
	if h < 0.05 {
		words = fmt.Sprintf("Mortises by gap spare no time here: they take %.1f hours more", math.Max(0, -h))
	}
	return words + fmt.Sprintf(" against cutting them, crosscuts, planing and two more settings of the saw counted; for %s. What they spare besides is the router, and slots that have to be squared.", hours.Skill(w.Skill).Who())
}
