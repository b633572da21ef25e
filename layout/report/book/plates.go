package book

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/report"
)

// plates shows the plates of the cutter's file, so that stock can be found for each.
func (w *writer) plates() {
	w.say("The cutter's file lays %s on %s, each of one material and thickness and trimmed to what it takes. Gauges want %.0f mm plywood or hardboard; the rest is in the cut list and may be sawn from plank. Neither gauges, paddles nor tools are in the cost.",
		and(w.machined()), wording.Counted(len(w.Plates.Boards), "plate"), pattern.GaugeStock)
	t := report.Titled("Plates for the cutter, "+w.Unit()).Names("Plate").Words("Of").Numbers("Thick", "Parts", "Wide", "Long")
	for i, b := range w.Plates.Boards {
		t.Row(fmt.Sprint(i+1), b.Material, w.Cell(b.Thickness), fmt.Sprint(b.Parts), w.Whole(b.Box.W()), w.Whole(b.Box.H()))
	}
	t.Note = "Wide and long are of the piece of stock that it takes at the most, the grain along its length: the file for the cutter is laid closer."
	w.add(w.platesFigure(), t)
}

// platesFigure draws the plates side by side at one scale.
func (w *writer) platesFigure() report.Figure {
	const apart, under = 5.0, 4.5 // mm of paper
	wide, high := 0.0, 0.0
	for _, b := range w.Plates.Boards {
		wide, high = wide+b.Box.W(), max(high, b.Box.H())
	}
	per := scaleFor(wide, high, report.Wide-apart*float64(len(w.Plates.Boards)), 110)
	d := newSketch("plates", "Plates for the cutter", per)
	x, first := 0.0, 0
	for i, b := range w.Plates.Boards {
		move := geometry.Shift(x-b.Box.Min.X, 0)
		d.line(layout.Guide, x, 0, x+b.Box.W(), 0)
		d.line(layout.Guide, x+b.Box.W(), 0, x+b.Box.W(), b.Box.H())
		d.line(layout.Guide, x+b.Box.W(), b.Box.H(), x, b.Box.H())
		d.line(layout.Guide, x, b.Box.H(), x, 0)
		for _, q := range w.Plates.Parts[first : first+b.Parts] {
			for _, c := range q.Part.Cut {
				d.path(layout.Mark, c.Map(q.Move).Map(move))
			}
		}
		d.note(x, 0, 0, -under, layout.Left, fmt.Sprint(i+1))
		x, first = x+b.Box.W()+apart*per, first+b.Parts
	}
	return report.Figure{Drawing: d.Drawing, Caption: fmt.Sprintf("The plates, %s, numbered as in the table; the grain runs up the sheet.", ratio(per)),
		About: "Every part that a cutter cuts, laid on plates of one material and thickness."}
}
