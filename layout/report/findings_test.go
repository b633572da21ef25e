package report

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry/finding"
)

// TestFindingBlocks: dangers become cautions with who says so, the rest one table in
// its order, under the heads that the book has.
func TestFindingBlocks(t *testing.T) {
	var l finding.List
	l.Say("trim", finding.Memory, "floats level")
	l.Warn("water between", finding.Practice, "keep clear")
	l.Say("deck", finding.Arithmetic, "180 mm")
	b := Findings{List: l, Note: "n"}.Blocks()
	if len(b) != 2 || b[0] != Block(Caution{Words: "Water between: keep clear.", Says: "practice"}) {
		t.Fatalf("%+v", b)
	}
	table := b[1].(Table)
	if table.Columns[0].Head != "About" || table.Columns[1].Head != "Finding" || !table.Columns[1].Text || table.Columns[2].Head != "Standing of the rule" || table.Note != "n" {
		t.Errorf("%+v", table)
	}
	if len(table.Rows) != 2 || !slices.Equal(table.Rows[0], []string{"trim", "floats level", "from memory"}) || table.Rows[1][0] != "deck" {
		t.Errorf("%q", table.Rows)
	}
	if b := (Findings{}).Blocks(); len(b) != 0 {
		t.Errorf("nothing gives %+v", b)
	}
	if b := (Findings{List: l[1:2]}).Blocks(); len(b) != 1 {
		t.Errorf("a danger alone gives %+v", b)
	}
}

// TestVerdictTable: verdicts stand beside their figures, dangers first; what was not
// measured has no figures, and what is far off says so.
func TestVerdictTable(t *testing.T) {
	l := finding.List{
		{About: "keel", Verdict: finding.Dry, Measure: finding.Measure{Value: 4.26, Limit: 30, Unit: "N/mm2", AtMost: true}},
		{About: "topside", Verdict: finding.Steam, Measure: finding.Measure{Value: math.Inf(1), Limit: 13, Unit: "radius/thickness"}},
		{About: "neutral set", Verdict: finding.Weak, Text: "none", Cure: "thicker ribs"},
	}
	b := Findings{List: l, Judged: true}.Blocks()
	if len(b) != 1 {
		t.Fatalf("%+v", b)
	}
	want := [][]string{
		{"neutral set", "too weak", "", "", "", "thicker ribs"},
		{"keel", "bends dry", "4.3", "30.0", "N/mm2", ""},
		{"topside", "steam", "ample", "13.0", "radius/thickness", ""},
	}
	rows := b[0].(Table).Rows
	if !slices.EqualFunc(rows, want, slices.Equal[[]string]) {
		t.Errorf("%q", rows)
	}
	for _, r := range rows {
		if len(r) != len(b[0].(Table).Columns) {
			t.Errorf("%q has not every column", r)
		}
	}
}

// TestNumber letters a tenth, no minus zero, and what is too far off to matter.
func TestNumber(t *testing.T) {
	for v, want := range map[float64]string{0: "0.0", -0.04: "0.0", 0.06: "0.1", -3.25: "-3.2", 99.94: "99.9", 105.8: "106", 1000: "1000", -5124.4: "-5124", 2e5: "ample", math.Inf(-1): "ample"} {
		if got := Number(v); got != want {
			t.Errorf("%v: %q, want %q", v, got, want)
		}
	}
}
