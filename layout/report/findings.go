package report

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Findings are what was found, dangers first. What a writer sets is what Blocks returns.
type Findings struct {
	List   finding.List
	Judged bool   // as verdicts with figures beside their limits, else as texts
	Note   string // under the table
	Units  measure.System
}

func (Findings) block() {}

// Blocks returns the findings as the blocks that every writer sets: of texts the dangers
// as cautions, then a table of the rest; of verdicts one table. No findings give no
// blocks.
func (f Findings) Blocks() []Block {
	if f.Judged {
		return f.verdicts().IfAny()
	}
	var out []Block
	for _, d := range f.List.Dangers() {
		out = append(out, Caution{Words: wording.Capital(d.About) + ": " + d.Words() + ".", Says: string(d.Standing)})
	}
	return append(out, f.texts().IfAny()...)
}

func (f Findings) texts() Table {
	t := Titled("").Words("About", "Finding", "Standing of the rule").Noted(f.Note)
	for _, v := range f.List.Others() {
		t.Row(v.About, v.Words(), string(v.Standing))
	}
	return t
}

func (f Findings) verdicts() Table {
	t := Titled("").Words("Part").Names("Verdict").Numbers("Has", "Limit").Names("Unit").Words("What would help").Noted(f.Note)
	for _, v := range f.List.Sorted() {
		has, limit := "", ""
		if v.IsSet() {
			has, limit = f.Units.Cell(Number(v.Value), v.Unit), f.Units.Cell(Number(v.Limit), v.Unit)
		}
		t.Row(v.About, v.Verdict.String(), has, limit, f.Units.UnitOf(v.Unit), v.Cure)
	}
	return t
}

// Number letters a figure that may be far off.
func Number(v float64) string {
	switch {
	case math.IsNaN(v) || math.Abs(v) >= 1e5:
		return "ample"
	case math.Abs(v) >= 99.95:
		return fmt.Sprintf("%.0f", v)
	case math.Abs(v) < 0.05:
		return "0.0"
	}
	return fmt.Sprintf("%.1f", v)
}

// Told sets the lines that say whether a boat stands and its wood bends: cautions where it
// does not, else a list.
func Told(told finding.List) []Block {
	var out []Block
	var well List
	for _, f := range told {
		words := wording.Capital(f.String()) + "."
		if f.Verdict.Passes() {
			well.Items = append(well.Items, words)
		} else {
			out = append(out, Caution{Words: words, Says: string(f.Standing)})
		}
	}
	if len(well.Items) > 0 {
		out = append(out, well)
	}
	return out
}
