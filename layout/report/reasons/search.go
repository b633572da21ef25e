package reasons

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout/figure"
	"ribwright/layout/report"
)

// Search says what a search was asked for, which limits stand in the way of a better
// boat, and what moving them would buy.
func Search(a *sizing.Answer, aim sizing.Aim, targets []string) []report.Block {
	out := []report.Block{report.Say("This is the %s boat that meets %s; %d boats were tried.", aim, strings.Join(targets, ", "), a.Tried)}
	l := report.List{Items: a.AtEdge}
	for _, o := range a.Obstacles {
		l.Items = append(l.Items, fmt.Sprintf("%s stands in the way: %s would make it %s", o.Limit, o.Step, o.Gain))
	}
	if len(l.Items) == 0 {
		return append(out, report.Paragraph{Words: "No target stands in the way of a better one."})
	}
	return append(out, l)
}

// Derivation tells how one value came about: each value under the one that needs it,
// a dot further in.
func Derivation(steps []formula.Step) []report.Block {
	const deepest = 12
	t := report.Titled("").Names("Value").Words("How it came about")
	for _, s := range steps {
		t.Row(strings.Repeat("·", min(s.Depth, deepest))+s.Name, derived(s))
	}
	return []report.Block{t}
}

// derived is one step in a line: "707 mm = clamp(...) [pack.family:18] the reason".
func derived(s formula.Step) string {
	if s.Again {
		return s.Value + ", as above"
	}
	out := s.Value
	if s.Formula != "" {
		out += " = " + s.Formula
	}
	out += " [" + s.Where + "]"
	if s.Reason != "" {
		out += " " + s.Reason
	}
	return out
}

// Sweep tells of the boats of a sweep in a table and a figure. A sweep none of whose
// steps makes a boat has no figure.
func Sweep(f *family.Family, s sizing.Sweep, rows []sizing.Row) []report.Block {
	columns := slices.DeleteFunc(sizing.Columns(), func(n string) bool { return n == s.Name })
	t := report.Titled("")
	for _, n := range append([]string{s.Name}, columns...) {
		unit, _ := dimOf(f, n).Unit()
		t = t.Numbers(strings.TrimSpace(n + " " + unit))
	}
	t = t.Words("checks that fail")
	for _, r := range rows {
		row := []string{bare(r.At, s.Dim)}
		for _, n := range columns {
			cell := "-"
			if r.Fault == "" {
				cell = bare(r.Values[n], dimOf(f, n))
			}
			row = append(row, cell)
		}
		t.Row(append(row, trouble(r))...)
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

func trouble(r sizing.Row) string {
	if r.Fault != "" {
		return "no boat: " + r.Fault
	}
	return strings.Join(r.Failed, ", ")
}
