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
	t := report.Table{Columns: []report.Column{{Head: s.Name, Align: layout.Right}}}
	for _, n := range columns {
		t.Columns = append(t.Columns, report.Column{Head: n, Align: layout.Right})
	}
	t.Columns = append(t.Columns, report.Column{Head: "checks that fail", Text: true})
	for _, r := range rows {
		row := []string{formula.ShowNumber(r.At, s.Dim)}
		for _, n := range columns {
			row = append(row, shownOf(f, r, n))
		}
		t.Rows = append(t.Rows, append(row, trouble(r)))
	}
	out := []report.Block{t}
	if curves := sweepCurves(s, rows); len(curves) > 0 {
		out = append(out, sweepFigure(s, rows[0].At, curves))
	}
	return out
}

func shownOf(f *family.Family, r sizing.Row, name string) string {
	k, err := f.Program.Kind(name)
	if err != nil || r.Fault != "" {
		return "-"
	}
	return formula.ShowNumber(r.Values[name], k.Dim)
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
