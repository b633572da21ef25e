// Package trial tells what the trials of a boat found: afloat, of its bends and
// balance, nested with others. A build book and a page of its own tell the same parts.
package trial

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/layout/report"
)

// Afloat tells how a boat lies on the water: what to make of it first, then the figures.
func Afloat(r *afloat.Report, units measure.System) []report.Block {
	l := report.Letters{Units: units}
	out := []report.Block{report.Chapter("On the water"), report.Paragraph{Words: r.Boat.For}, Conditions(r)}
	for _, n := range r.Boat.Notes {
		out = append(out, report.Paragraph{Words: "Note: " + n + "."})
	}
	out = append(out, report.Section("What to make of it"))
	if r.Boat.Frame != nil {
		out = append(out, report.Told(finding.List{r.InALine()})...)
	}
	out = append(out, report.Findings{List: r.Findings}, Swamping())
	tables := []report.Table{Standing(r.Standing, len(r.Boat.Crew)), atRestInFull(r, l), Weights(r, l, l.Whole)}
	if r.Fault == nil {
		tables = append(tables, levers(r))
	}
	for _, t := range append(tables, effort(r)) {
		out = append(out, under(t)...)
	}
	for _, b := range Cargo(r.Cargo, l) {
		out = append(out, under(b.(report.Table))...)
	}
	return append(out, report.Paragraph{Words: report.Promise})
}

// Conditions says for what water the figures are, and what they are worth.
func Conditions(r *afloat.Report) report.Paragraph {
	water, cloth := r.Options.Water, ", with the cloth flat between stringers"
	if r.Boat.Frame == nil {
		cloth = ""
	}
	return report.Say("Worked out for %s water of %.0f degrees Celsius%s. Estimates from an ideal shape: weigh the finished boat and measure its freeboard.", water.Kind, water.Temperature, cloth)
}

// Weights lists the boat and what is aboard, lengths lettered by cell.
func Weights(r *afloat.Report, l report.Letters, cell func(mm float64) string) report.Table {
	t := report.Titled("Weights").Words("What").Numbers("Mass", "From midship, "+l.Unit(), "Over the baseline, "+l.Unit())
	for _, i := range r.Entries() {
		load := i.Load()
		t.Row(i.Name, l.Mass(load.Mass), cell(load.At.X), cell(load.At.Z))
	}
	return t
}

// AtRest lists how the boat lies upright.
func AtRest(r *afloat.Report, l report.Letters) report.Table {
	o := r.Rest
	t := report.Facts("At rest", "displacement", l.Mass(o.Displacement), "draft", l.Length(o.Draft),
		"trim over the waterline, bow up", l.Length(o.TrimRise()), "least freeboard", l.Length(o.Freeboard.Least),
		"waterline, length and beam", l.Length(o.LWL)+", "+l.Length(o.BWL), "wetted surface", squareMeters(o.Wetted),
		"waterplane", squareMeters(o.Waterplane), "KB, BM, KM", fmt.Sprintf("%.0f, %.0f, %.0f mm", o.KB, o.BM, o.KM),
		"KG, GM", fmt.Sprintf("%.0f, %.0f mm", o.KG, o.GM),
		"buoyancy and waterplane, from midship", measure.MM(o.LCB, 0)+", "+measure.MM(o.LCF, 0)+" mm",
		"block, prismatic, midship, waterplane coefficient", fmt.Sprintf("%.3f, %.3f, %.3f, %.3f", o.CB, o.CP, o.CM, o.CWP))
	if !math.IsNaN(r.Curve.Flooding) && r.Fault == nil {
		t.Row("water comes in at a heel of", fmt.Sprintf("%.0f degrees", r.Curve.Flooding*180/math.Pi))
	}
	return t
}

func squareMeters(mm2 float64) string { return fmt.Sprintf("%.2f m2", mm2/1e6) }

// atRestInFull adds what compares designs, and the shape without the flat cloth.
func atRestInFull(r *afloat.Report, l report.Letters) report.Table {
	t := AtRest(r, l)
	if r.Fault != nil {
		t.Title = "At rest, held upright"
	}
	t.Row("volume under water", fmt.Sprintf("%.1f l of %.1f kg/m3", r.Rest.Volume/1e6, r.Options.Water.Density))
	t.Row("moment that trims it by 1 mm", fmt.Sprintf("%.1f N m", r.Rest.MomentToTrim/1000))
	if s := r.Smooth; s != nil {
		t.Row("on the ribs' smooth arcs: draft, GM", fmt.Sprintf("%s, %.0f mm", l.Length(s.Draft), s.GM))
		t.Row("on smooth arcs: waterplane, wetted surface", squareMeters(s.Waterplane)+", "+squareMeters(s.Wetted))
	}
	return t
}

func levers(r *afloat.Report) report.Table {
	t := report.Titled("Righting lever GZ, to where water comes in").Names("Heel, degrees").Filled("GZ, mm")
	for _, v := range r.Curve.Levers {
		t = t.Numbers(report.Angle(v.Heel))
		t.Rows[0] = append(t.Rows[0], measure.MM(v.GZ, 0))
	}
	return t
}

// effort lists every second speed.
func effort(r *afloat.Report) report.Table {
	t := report.Titled("Effort on flat, deep water, for comparing designs").
		Numbers("km/h", "Knots", "Minutes a km", "Froude number", "Friction, N", "Form, N", "Waves, N", "Total, N", "Paddle, W")
	for i := 1; i < len(r.Effort); i += 2 {
		v := r.Effort[i]
		t.Row(measure.MM(v.Speed*3.6, 1), measure.MM(v.Speed/measure.Knot, 1), measure.MM(1000/60/v.Speed, 1), measure.MM(v.Froude, 2),
			measure.MM(v.Friction, 1), measure.MM(v.Form, 1), measure.MM(v.Wave, 1), measure.MM(v.Total, 1), measure.MM(v.Power, 0))
	}
	return t
}

// Swamping asks for the last trial, on the water.
func Swamping() report.Caution {
	return report.Caution{Words: "Wear a life jacket. Try the boat swamped in shallow water, near help, with flotation fitted, before you take it out.", Says: "common practice; in the United States 33 CFR 175.15 asks for a wearable life jacket for each person; local law comes first"}
}

// practice is who says what nobody wrote down.
const practice = "common practice, no source"

// under makes a section of a table: its title heads the section.
func under(t report.Table) []report.Block {
	title := t.Title
	t.Title = ""
	if len(t.Columns) == 2 && t.Columns[1].Head == "" {
		t.Columns = report.Titled("").Words("").Numbers("").Columns
	}
	return []report.Block{report.Section(title), t}
}
