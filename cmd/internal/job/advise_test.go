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
		first, why := r.Report.Blocks[1].(report.Paragraph).Words, r.Report.Blocks[2].(report.List).Items
		if skill == "beginner" && (!strings.HasPrefix(first, "1. Pack, for 64 kg, 168 cm tall, with 0 kg of gear") || !strings.HasPrefix(why[0], "to begin with")) {
			t.Error(first, why)
		}
	}
	if _, err := asked(t, "size", append(two, "--paddler", "70 kg, 170 cm")...).Do(World{}); err == nil || !strings.Contains(err.Error(), "seats 3") {
		t.Error(err)
	}
}

// TestAdviseWeighsUseWoodAndCar: one who paddles quiet water with little is advised the pack
// canoe first; with a month's gear, or on open water, or with a car that carries it alone or
// sticks that want scarfs, each is weighed and told.
func TestAdviseWeighsUseWoodAndCar(t *testing.T) {
	for _, c := range []struct{ field, value, first, says string }{
		{"gear", "10 kg", "Pack", "wood: sticks of 6000 mm are long enough"},
		{"gear", "35 kg", "Solo", "use: a pack canoe is for up to 15 kg of gear, not 35 kg"},
		{"waters", "open", "Solo", "use: a pack canoe is for sheltered water, and open water wants a longer boat"},
		{"car", "4 m", "Pack", "too long for the car, 4270 mm where 4000 mm go"},
		{"longest-stick", "3 m", "Pack", "and with sticks of 3000 mm each gunwale wants 1 scarf"},
	} {
		r, err := asked(t, "size", "--advise", "true", "--paddler", "80 kg, 178 cm", "--"+c.field, c.value).Do(World{})
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, b := range r.Report.Blocks {
			if l, ok := b.(report.List); ok {
				all = append(all, l.Items...)
			}
		}
		if got := r.Report.Blocks[0].(report.Table).Rows[0][1]; got != c.first || !strings.Contains(strings.Join(all, "\n"), c.says) {
			t.Errorf("%s %s: %s first, %q", c.field, c.value, got, all)
		}
	}
}
