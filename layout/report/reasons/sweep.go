package reasons

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout"
	"ribwright/layout/figure/plot"
	"ribwright/layout/report"
)

// Sweep tells of the boats of a sweep in a table and a figure. A sweep none of whose
// steps makes a boat has no figure.
func Sweep(f *family.Family, s sizing.Sweep, rows []sizing.Row) []report.Block {
	columns := slices.DeleteFunc(sizing.Columns(), func(n string) bool { return n == s.Name })
	t := report.Table{}
	for _, n := range append([]string{s.Name}, columns...) {
		unit, _ := dimOf(f, n).Unit()
		t.Columns = append(t.Columns, report.Column{Head: strings.TrimSpace(n + " " + unit), Align: layout.Right})
	}
	t.Columns = append(t.Columns, report.Column{Head: "checks that fail", Text: true})
	for _, r := range rows {
		row := []string{bare(r.At, s.Dim)}
		for _, n := range columns {
			cell := "-"
			if r.Fault == "" {
				cell = bare(r.Values[n], dimOf(f, n))
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, append(row, trouble(r)))
	}
	out := []report.Block{t}
	if curves := sweepCurves(s, rows); len(curves) > 0 {
		out = append(out, sweepFigure(s, rows[0].At, curves))
	}
	return out
}

// dimOf is what a value that every family has measures.
func dimOf(f *family.Family, name string) formula.Dim {
	k, _ := f.Program.Kind(name)
	return k.Dim
}

// bare is a number without its unit, which the column's head has.
func bare(v float64, d formula.Dim) string {
	unit, _ := d.Unit()
	return strings.TrimSuffix(formula.ShowNumber(v, d), " "+unit)
}

// trouble says what is wrong with a boat of a sweep.
func trouble(r sizing.Row) string {
	if r.Fault != "" {
		return "no boat: " + r.Fault
	}
	return strings.Join(r.Failed, ", ")
}

// sweepCurves are what changes against how far the value swept is beyond its first
// step: an axis from zero would leave them a corner.
func sweepCurves(s sizing.Sweep, rows []sizing.Row) []plot.Curve {
	_, worth := s.Dim.Unit()
	var out []plot.Curve
	for i, n := range []string{"draft", "freeboard", "gm"} {
		c := plot.Curve{Name: n, Pen: []layout.Pen{layout.Cut, layout.Mark, layout.Center}[i]}
		for _, r := range rows {
			if r.Fault == "" {
				c.Points = append(c.Points, geometry.Point{X: (r.At - rows[0].At) / worth, Y: r.Values[n]})
			}
		}
		if len(c.Points) > 0 {
			out = append(out, c)
		}
	}
	return out
}

func sweepFigure(s sizing.Sweep, from float64, curves []plot.Curve) report.Figure {
	unit, _ := s.Dim.Unit()
	title := "Boats for steps of " + s.Name
	d := layout.Drawing{Name: "sweep", Title: title}
	p := plot.Plot{Title: title, XLabel: fmt.Sprintf("%s beyond %s (%s)", s.Name, formula.ShowNumber(from, s.Dim), unit), YLabel: "mm", Curves: curves, W: 150, H: 90}
	p.Draw(&d, geometry.Point{})
	return report.Figure{Drawing: d, Caption: title + ".", About: "Draft, freeboard and GM of the boats of a sweep of " + s.Name}
}
