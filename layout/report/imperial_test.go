package report

import (
	"fmt"
	"testing"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestIn letters one block of each kind; cells go by the unit in the head of their column,
// of their row, or beside them. The report that was given stays as it was.
func TestIn(t *testing.T) {
	table := Table{Title: "At 254 mm", Note: "N/mm2 is a stress",
		Columns: []Column{{Head: "Part"}, {Head: "Lever, mm"}, {Head: "Has"}, {Head: "Unit"}, {Head: "in (mm)"}},
		Rows:    [][]string{{"rib at 254 mm", "508", "100", "N/mm2", "1 (25.4)"}, {"GZ, mm", "25.4", "ample", "deg", "-"}, {"draft", "10 deg", "13", "radius/thickness", "75 kg"}}}
	r := Report{Title: "10 kg", For: "75 kg", Blocks: []Block{
		Heading{2, "Past 254 mm"}, Say("75 kg"), Caution{Words: "100 N", Says: "10 mm"}, List{Items: []string{"254 mm"}}, table,
		Findings{List: finding.List{{About: "at 254 mm", Text: "508 mm", Cure: "25.4 mm"}}, Note: "1 m"}, Figure{Caption: "3 m", About: "6 m"}, Contents{},
	}}
	before := fmt.Sprint(r)
	got := fmt.Sprint(r.In(measure.Imperial).Blocks)
	want := fmt.Sprint([]Block{
		Heading{2, "Past 10 in"}, Say("165 lb"), Caution{Words: "22 lb", Says: "10 mm"}, List{Items: []string{"10 in"}},
		Table{Title: "At 10 in", Note: "N/mm2 is a stress",
			Columns: []Column{{Head: "Part"}, {Head: "Lever, in"}, {Head: "Has"}, {Head: "Unit"}, {Head: "in (mm)"}},
			Rows:    [][]string{{"rib at 10 in", "20", "14500", "psi", "1 (25.4)"}, {"GZ, in", "1", "ample", "deg", "-"}, {"draft", "10 deg", "13", "radius/thickness", "165 lb"}}},
		Findings{List: finding.List{{About: "at 10 in", Text: `1'-8"`, Cure: "1 in (25.4 mm)"}}, Note: "3 ft", Units: measure.Imperial}, Figure{Caption: "10 ft", About: "20 ft"}, Contents{},
	})
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if fmt.Sprint(r) != before || fmt.Sprint(r.In(measure.Metric)) != before {
		t.Error("the report itself was changed")
	}
}

// TestDrawnWordsAndVerdictsImperial: words in a drawing and figures beside their limits are
// lettered too; a drawing that is shared stays as it was.
func TestDrawnWordsAndVerdictsImperial(t *testing.T) {
	d := layout.Drawing{}
	d.Write(0, 0, 3, layout.Left, "14 mm narrower")
	r := Report{Blocks: []Block{Figure{Drawing: d}, Findings{Judged: true, List: finding.List{{About: "keel", Verdict: finding.Holds, Measure: finding.Measure{Value: 12.7, Limit: 25.4, Unit: "mm"}}}}}}
	in := r.In(measure.Imperial)
	if got := in.Blocks[0].(Figure).Drawing.Texts[0].Words; got != "9/16 in narrower" || d.Texts[0].Words != "14 mm narrower" {
		t.Errorf("drawn %q, before %q", got, d.Texts[0].Words)
	}
	row := in.Blocks[1].(Findings).Blocks()[0].(Table).Rows[0]
	if row[2] != "1/2" || row[3] != "1" || row[4] != "in" {
		t.Errorf("%q", row)
	}
}
