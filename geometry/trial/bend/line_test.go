package bend

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// TestInALine: the shipped boats' wood bends. One that does not bend names its worst part and counts the others.
func TestInALine(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := report(t, name, nil)
		f := r.InALine()
		if f.Verdict != finding.Holds || !f.Verdict.Passes() {
			t.Errorf("%s: %v", name, f)
		}
	}
	r := &Report{Findings: finding.List{
		{About: "keel", Verdict: finding.Dry, Measure: finding.Measure{Value: 2, Limit: 1}},
		{About: "gunwale", Verdict: finding.TooTight, Text: "bends to 3", Cure: "thinner plies"},
		{About: "rib M", Verdict: finding.Weak, Text: "bears 60", Cure: "thicker ribs"},
		{About: "seat", Verdict: finding.Caution},
		{About: "rib A1", Verdict: finding.TooTight, Measure: finding.Measure{Value: 8, Limit: 13}},
	}}
	f := r.InALine()
	if want := "it does not bend as drawn: rib M: bears 60; thicker ribs (and 2 more)"; f.Text != want || f.Verdict != finding.Weak || f.Cure != "thicker ribs" {
		t.Errorf("%+v, want %q", f, want)
	}
	r.Findings = finding.List{r.Findings[0], r.Findings[1], r.Findings[4]}
	if f := r.InALine(); !strings.Contains(f.Text, "rib A1: too tight") {
		t.Error(f)
	}
	r.Findings = r.Findings[:1]
	r.Findings = append(r.Findings, finding.Finding{About: "rib M", Verdict: finding.Steam, Measure: finding.Measure{Value: 14, Limit: 13}})
	if f := r.InALine(); !strings.HasSuffix(f.Text, "nearest to its limit: rib M (steam, 8 % to spare)") {
		t.Error(f)
	}
	if f := (&Report{}).InALine(); f.Verdict != finding.Holds {
		t.Error(f)
	}
}
