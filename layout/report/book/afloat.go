package book

import (
	"fmt"
	"math"

	"ribwright/geometry/shop/hours"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// afloat tells what the trial on paper found, with its curves.
func (w *writer) afloat() {
	w.chapter("On the water")
	r := w.Trial
	if r == nil {
		w.warn("With the people and gear of the design the boat finds no rest: "+w.NoTrial, "arithmetic of this design")
		return
	}
	water := r.Options.Water
	w.say(fmt.Sprintf("Worked out for %s water of %.0f degrees Celsius, with the cloth flat between stringers. Estimates from an ideal shape: weigh the finished boat and measure its freeboard.", water.Kind, water.Temperature))
	t := report.Table{Title: "Weights", Columns: []report.Column{text("What"), figures("Mass"), figures("From midship, " + w.Unit()), figures("Over the baseline, " + w.Unit())}}
	for _, i := range r.Entries() {
		l := i.Load()
		t.Rows = append(t.Rows, []string{i.Name, w.Mass(l.Mass), w.Cell(l.At.X), w.Cell(l.At.Z)})
	}
	w.add(t, w.atRest())
	if r.Fault != nil {
		w.warn("With the people and gear of the design it does not stay upright: "+r.Fault.Text+". The figures are those of the boat held upright.", "arithmetic of this design")
	}
	w.section("What to make of it")
	w.add(report.Findings{List: r.Findings})
	w.section("Curves")
	for _, p := range figure.AfloatPlots(r) {
		w.add(p.Block())
	}
	w.warn("Wear a life jacket. Try the boat swamped in shallow water, near help, with flotation fitted, before you take it out.", "common practice; in the United States 33 CFR 175.15 asks for a wearable life jacket for each person; local law comes first")
}

func (w *writer) atRest() report.Table {
	o := w.Trial.Rest
	row := func(a, b string) []string { return []string{a, b} }
	rows := [][]string{
		row("displacement", w.Mass(o.Displacement)), row("draught", w.Length(o.Draft)),
		row("trim over the waterline, bow up", w.Length(math.Tan(o.Trim)*o.LWL)), row("least freeboard", w.Length(o.Freeboard.Least)),
		row("waterline, length and beam", w.Length(o.LWL)+", "+w.Length(o.BWL)), row("wetted surface", fmt.Sprintf("%.2f m2", o.Wetted/1e6)),
		row("waterplane", fmt.Sprintf("%.2f m2", o.Waterplane/1e6)), row("KB, BM, KM", fmt.Sprintf("%.0f, %.0f, %.0f mm", o.KB, o.BM, o.KM)),
		row("KG, GM", fmt.Sprintf("%.0f, %.0f mm", o.KG, o.GM)),
		row("buoyancy and waterplane, from midship", fmt.Sprintf("%.0f, %.0f mm", o.LCB, o.LCF)),
		row("block, prismatic, midship, waterplane coefficient", fmt.Sprintf("%.3f, %.3f, %.3f, %.3f", o.CB, o.CP, o.CM, o.CWP)),
	}
	if !math.IsNaN(w.Trial.Curve.Flooding) && w.Trial.Fault == nil {
		rows = append(rows, row("water comes in at a heel of", fmt.Sprintf("%.0f degrees", w.Trial.Curve.Flooding*180/math.Pi)))
	}
	return report.Table{Title: "At rest", Columns: []report.Column{text("Figure"), figures("")}, Rows: rows}
}

// balance tells what holds the frame's shape.
func (w *writer) balance() {
	w.chapter("Frame balance")
	b := w.Bend
	w.say("Without a mould the shape is a balance: bent gunwales want to straighten, bent ribs want to open, cross pieces carry what is left over. In the neutral set, ribs relaxed to the widths of the rib table, the cross pieces carry nothing and can come out.")
	if b.Boat.Why != nil {
		w.warn("There is no neutral set: "+b.Boat.Why.Text, "beam theory")
	}
	w.add(report.Table{Title: "Gunwales at rest", Columns: []report.Column{text("Figure"), figures("")}, Rows: [][]string{
		{"tightest radius in plan", w.Length(b.Gunwale.Radius)},
		{"at station", w.Station(b.Gunwale.At)},
		{"share of a form's curvature that plies glued on it lose", fmt.Sprintf("%.0f %%", 100*b.Gunwale.Back)},
		{"greatest stress at rest", fmt.Sprintf("%.1f N/mm2, at %s", b.Gunwale.Rest.Sum(), w.Station(b.Gunwale.Rest.X))},
	}})
	if len(w.Frame.Thwarts) > 0 {
		w.add(w.strutForces())
	}
	w.section("Taking them out")
	for _, t := range w.Trials {
		d, factor := figure.BalanceTrial(b.Boat, w.Without, t, w.Miss, 165)
		w.add(report.Figure{Drawing: d, Caption: fmt.Sprintf("Gunwales from above, bow to the right: dashed with all members in, solid without %s. Changes of shape are exaggerated %.0f times; forces in newtons, + a strut, - a tie; ticks outside the gunwales are the ribs' push.", w.Without, factor),
			About: "Both gunwales from above before and after the cross pieces are taken out, with the force in each."})
	}
	w.section("What the wood is asked for")
	w.add(report.Findings{List: b.Findings, Judged: true,
		Note: "Radius/thickness: more is easier. N/mm2 is a stress: less is easier. Limits of steamed bends are from memory: bend one rib first."})
}

func (w *writer) strutForces() report.Table {
	t := report.Table{Title: "Push of the cross pieces on each gunwale, N; + a strut, - a tie", Columns: []report.Column{text("Cross piece")}}
	for _, r := range w.Trials {
		t.Columns = append(t.Columns, figures("ribs "+setName(r.Set, w.Length(math.Abs(w.Miss)))))
	}
	for i, p := range w.Frame.Thwarts {
		row := []string{p.Name}
		for _, r := range w.Trials {
			row = append(row, report.Number(r.In.Struts[i]))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func setName(set, miss string) string {
	switch set {
	case "off":
		return miss + " wider than neutral"
	case "neutral":
		return "in the neutral set"
	}
	return "unset, as wide as their places"
}

// stageHours letters the time of a stage.
func (w *writer) stageHours(s hours.Stage) string {
	return fmt.Sprintf("%.1f h", hours.Hours(w.Work, s, w.Skill))
}
