package report

import (
	"fmt"
	"math"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
)

// Findings are what was found, dangers first. What a writer sets is what Blocks returns.
type Findings struct {
	List   finding.List
	Judged bool   // as verdicts with figures beside their limits, else as texts
	Note   string // under the table
}

func (Findings) block() {}

// Blocks returns the findings as the blocks that every writer sets: of texts the dangers
// as cautions, then a table of the rest; of verdicts one table. No findings give no
// blocks.
func (f Findings) Blocks() []Block {
	if f.Judged {
		return shown(f.verdicts())
	}
	var out []Block
	for _, d := range f.List.Dangers() {
		out = append(out, Caution{Words: wording.Capital(d.About) + ": " + d.Words() + ".", Says: string(d.Standing)})
	}
	return append(out, shown(f.texts())...)
}

func shown(t Table) []Block {
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t}
}

func (f Findings) texts() Table {
	t := Table{Columns: []Column{Names("About"), Words("Finding"), Words("Standing of the rule")}, Note: f.Note}
	for _, v := range f.List.Others() {
		t.Rows = append(t.Rows, []string{v.About, v.Words(), string(v.Standing)})
	}
	return t
}

func (f Findings) verdicts() Table {
	t := Table{Columns: []Column{Words("Part"), Names("Verdict"), Numbers("Has"), Numbers("Limit"), Names("Unit"), Words("What would help")}, Note: f.Note}
	for _, v := range f.List.Sorted() {
		has, limit := "", ""
		if v.IsSet() {
			has, limit = Number(v.Value), Number(v.Limit)
		}
		t.Rows = append(t.Rows, []string{v.About, v.Verdict.String(), has, limit, v.Unit, v.Cure})
	}
	return t
}

// Number letters a figure that may be far off.
func Number(v float64) string {
	switch {
	case math.IsInf(v, 0) || math.IsNaN(v) || math.Abs(v) >= 1000:
		return "ample"
	case math.Abs(v) < 0.05:
		return "0.0"
	}
	return fmt.Sprintf("%.1f", v)
}
