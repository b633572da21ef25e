package book

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/layout/report"
)

// depths says from what depths are measured, before a rib stands and after, and what to
// do where the boat as built is not as drawn.
func (w *writer) depths() {
	w.section("Depths and corrections")
	step, name := report.Either(w.Letters.Units, 10, 12.7), report.Either(w.Letters.Units, "10 mm", "1/2 in")
	w.say("Stand the gunwales on two trestles that are level with each other and across. Lay a straightedge over both gunwales, square to the boat, and measure down in the middle: to the keel, or the string in its place, before a rib is in; to the inside of the rib afterwards.")
	w.say("Somewhere the gunwales always stand wider or deeper than drawn. Make the rib longer there when you mark its shoulder lines, half of it at each end: by so much for each %s more between the gunwales, and by so much for each %s more depth. Add the two. Shorten it alike where the boat is narrower or shallower. A blank has %s to spare at each end: where that is too little, set the gunwales and the keel nearer to the drawing. Its bend marks move too, all of a half alike: outward by the last two columns, or inward where those are negative. A stringer's mark inside the first bend mark moves in proportion to its place, one farther out as far as the bend marks.", name, name, w.Letters.Units.Whole(float64(w.Frame.Design.Ribs.Trim)))
	t := report.Titled("Depths from a straightedge across the gunwales, and corrections of length, "+w.Unit()).Names("Rib").
		Numbers("To the keel's upper face", "To the inside of the rib", "Between the gunwales", "For "+name+" more beam", "For "+name+" more depth", "For that beam, bend marks", "For that depth, bend marks").
		Noted("Between the gunwales: between their inner lower edges, as a tape reads it. The corrections keep the turns and the bilge radius as drawn: bottom and topside take up the change.")
	for i, r := range w.Frame.Ribs {
		top, c := w.overKeel(r), w.Corrections[i]
		t.Row(r.Name, w.Whole(top+r.Thickness/2), w.Whole(top-r.Thickness/2), w.Whole(w.between(r)), w.longer(step*c.Beam), w.longer(step*c.Depth), w.longer(step*c.MarkBeam), w.longer(step*c.MarkDepth))
	}
	w.add(t.Outward(w.Frame.Stations()), report.Paragraph{Words: w.corrected(step / 2)}, w.card())
}

// corrected works one correction out: of the rib nearest to midship, where the boat is too wide
// and too deep by so much.
func (w *writer) corrected(mm float64) string {
	i := 0
	for k, r := range w.Frame.Ribs {
		if math.Abs(r.Station) < math.Abs(w.Frame.Ribs[i].Station) {
			i = k
		}
	}
	c, whole := w.Corrections[i], w.Letters.Units.Whole
	marks := mm * (c.MarkBeam + c.MarkDepth)
	way := "outward"
	if marks < 0 {
		way = "inward"
	}
	return fmt.Sprintf("For example, the gunwales stand %s too wide at rib %s and the keel %s too deep: the rib is made %s longer, half of it at each end, and its bend marks move %s by %s.",
		whole(mm), w.Frame.Ribs[i].Name, whole(mm), whole(mm*(c.Beam+c.Depth)), way, whole(math.Abs(marks)))
}

// card is what is written down of each rib while the frame is set up, from aft forward.
func (w *writer) card() report.Table {
	const blank = "............"
	t := report.Titled("Card of the ribs, to write on, "+w.Unit()).Names("Rib").Numbers("Shoulder to shoulder", "Between the gunwales", "Measured", "To the keel", "Measured", "Corrected length")
	for _, r := range w.Frame.Ribs {
		t.Row(r.Name, w.Mark(r.Length), w.Whole(w.between(r)), blank, w.Whole(w.overKeel(r)+r.Thickness/2), blank, blank)
	}
	return t.Noted("Drawn lengths are those of the table Lengths and widths.")
}

// between is the width between the gunwales' inner lower edges at a rib, mm.
func (w *writer) between(r frame.Rib) float64 {
	return 2 * w.Frame.Gunwale.EdgeAt(r.Station, -w.Frame.Gunwale.Width/2, 0).Y
}

// overKeel is how high a straightedge across the gunwales lies over the middle of a rib's
// thickness at the keel, mm.
func (w *writer) overKeel(r frame.Rib) float64 {
	g := &w.Frame.Gunwale
	return math.Max(g.At(r.Station, g.Width/2, g.Height).Z, g.At(r.Station, -g.Width/2, g.Height).Z) - r.Section.KeelZ
}

func (w *writer) longer(mm float64) string { return signed(w.Cell(mm)) }

// signed puts a plus before a number that is more than nothing.
func signed(s string) string {
	if s == "0" || s == "0.0" || s[0] == '-' {
		return s
	}
	return "+" + s
}
