package job

import (
	"strings"
	"testing"

	"ribwright/layout/report"
)

// TestAdvise: two who have built none are told to begin with a pack canoe for the lighter of
// them, then their tandem; who has built before gets the tandem alone. A third paddler has
// no family.
func TestAdvise(t *testing.T) {
	two := []string{"--advise", "true", "--paddler", "86 kg, 180 cm", "--paddler", "64 kg, 168 cm"}
	for skill, want := range map[string][]string{"beginner": {"Pack", "Tandem"}, "average": {"Tandem"}} {
		r, err := asked(t, "size", append([]string{"--skill", skill}, two...)...).Do(World{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, row := range r.Report.Blocks[0].(report.Table).Rows {
			got = append(got, row[1])
		}
		if strings.Join(got, " ") != strings.Join(want, " ") || len(r.Outputs) != 0 {
			t.Errorf("%s: %v, want %v; %d files", skill, got, want, len(r.Outputs))
		}
		first := r.Report.Blocks[1].(report.List).Items[0]
		if skill == "beginner" && (!strings.HasPrefix(first, "Pack, for 64 kg, 1680 mm, with 0 kg of gear") || !strings.Contains(first, "to begin with")) {
			t.Error(first)
		}
	}
	if _, err := asked(t, "size", append(two, "--paddler", "70 kg, 170 cm")...).Do(World{}); err == nil || !strings.Contains(err.Error(), "seats 3") {
		t.Error(err)
	}
}
