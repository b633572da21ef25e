package reasons

import (
	"slices"
	"strings"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// Sweep tells of the boats of a sweep in a table and a figure. A sweep none of whose
// steps makes a boat has no figure.
func Sweep(f *family.Family, s sizing.Sweep, rows []sizing.Row) []report.Block {
	columns := slices.DeleteFunc(sizing.Columns(), func(n string) bool { return n == s.Name })
	t := report.Table{}
	for _, n := range append([]string{s.Name}, columns...) {
		unit, _ := dimOf(f, n).Unit()
		t.Columns = append(t.Columns, report.Numbers(strings.TrimSpace(n+" "+unit)))
	}
	t.Columns = append(t.Columns, report.Words("checks that fail"))
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
	if d, drawn := figure.Sweep(s, rows); drawn {
		out = append(out, report.Figure{Drawing: d, Caption: d.Title + ".", About: "Draft, freeboard and GM of the boats of a sweep of " + s.Name})
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
