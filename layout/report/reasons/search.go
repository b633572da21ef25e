package reasons

import (
	"fmt"
	"strings"

	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/formula"
	"ribwright/layout/report"
)

// Search says what a search was asked for, which limits stand in the way of a better
// boat, and what moving them would buy.
func Search(a *sizing.Answer, aim sizing.Aim, targets []string) []report.Block {
	out := []report.Block{report.Paragraph{Words: fmt.Sprintf("This is the %s boat that meets %s; %d boats were tried.", aim, strings.Join(targets, ", "), a.Tried)}}
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
	t := report.Table{Columns: []report.Column{report.Names("Value"), report.Words("How it came about")}}
	for _, s := range steps {
		t.Rows = append(t.Rows, []string{strings.Repeat("·", min(s.Depth, deepest)) + s.Name, derived(s)})
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
