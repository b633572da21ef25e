package book

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/pattern"
	"ribwright/layout/report"
)

// plates shows the plates of the cutter's file, so that stock can be found for each.
func (w *writer) plates() {
	w.say("The cutter's file lays %s on %s, each of one material and thickness.%s Gauges want a sheet of %.0f mm plywood or hardboard. Neither gauges, paddles nor tools are in the cost.",
		wording.And(w.machined()), wording.Counted(len(w.Plates.Boards), "plate"), w.fromBlanks(), pattern.GaugeStock)
	t := report.Titled("Plates for the cutter, "+w.Unit()).Names("Plate").Words("Of").Numbers("Thick", "Parts").Words("Cut from, along the grain x across")
	for i, b := range w.Plates.Boards {
		from := "a sheet of " + w.Whole(b.Stock.Y) + " x " + w.Whole(b.Stock.X) + ", or what the file says is enough"
		if b.Blanks != nil {
			from = wording.List(b.Blanks, func(k layout.Blank) string {
				return wording.Counted(k.Count, "blank") + " of " + w.sawn(k.Long) + " x " + w.Gauge(k.Wide)
			})
		}
		t.Row(fmt.Sprint(i+1), b.Material, w.Gauge(b.Thickness), fmt.Sprint(b.Parts), from)
	}
	t.Note = "The figure shows one way to lay the parts. The cutter's file lays them closer and otherwise: it says on each plate how much of a sheet that takes, and so do the plates in small among the patterns. Look there before you cut a sheet down."
	w.add(w.platesFigure(), t)
}

// fromBlanks says from which wood a cutter and a saw cut the parts.
func (w *writer) fromBlanks() string {
	stems := ""
	if w.Frame.Design.MadeStems() == design.StemsPlywood {
		stems = ", and the stems in theirs of glued plywood"
	}
	return " Parts of wood lie in their blanks, as the ripping plan gives them and the cut list has them" + stems +
		": lay each blank on the cutter's table where the file draws it, in the layer SHEET. Without a cutter saw them from the same blanks, by their patterns."
}

// platesFigure draws the plates side by side at one scale.
func (w *writer) platesFigure() report.Figure {
	const apart, under = 5.0, 4.5 // mm of paper
	wide, high := 0.0, 0.0
	for _, b := range w.Plates.Boards {
		wide, high = wide+b.Box.W(), max(high, b.Box.H())
	}
	per := scaleFor(wide, high, report.Wide-apart*float64(len(w.Plates.Boards)), 80)
	d := newSketch("plates", "Plates for the cutter", per)
	x, first := 0.0, 0
	for i, b := range w.Plates.Boards {
		move := geometry.Shift(x-b.Box.Min.X, 0)
		if b.Blanks == nil {
			d.path(layout.Guide, curve.Rectangle(b.Box).Map(move))
		}
		for _, q := range w.Plates.Parts[first : first+b.Parts] {
			if q.Part.Blank != nil {
				d.path(layout.Guide, q.Part.Blank.Map(q.Move).Map(move))
			}
			for _, c := range q.Part.Cut {
				d.path(layout.Mark, c.Map(q.Move).Map(move))
			}
		}
		d.note(x, 0, 0, -under, layout.Left, fmt.Sprint(i+1))
		x, first = x+b.Box.W()+apart*per, first+b.Parts
	}
	return report.Figure{Drawing: d.Drawing, Caption: fmt.Sprintf("The plates, %s, numbered as in the table; dashed the wood that is cut, its grain upright.", ratio(per)),
		About: "Every part that a cutter cuts, laid on plates of one material and thickness."}
}
