package job

import (
	"bytes"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/shop/hours"
)

// TestPracticed: a book takes the skill that is asked for, else the design's, else average,
// and a boat that is sized for a beginner with short sticks says both in its design.
func TestPracticed(t *testing.T) {
	asked := hours.Experienced
	for _, c := range []struct {
		asked *hours.Skill
		says  string
		want  hours.Skill
	}{{nil, "", hours.Average}, {nil, "beginner", hours.Beginner}, {&asked, "beginner", hours.Experienced}, {&asked, "", hours.Experienced}} {
		if got, err := practiced(c.asked, &design.Design{Skill: c.says}); got != c.want || err != nil {
			t.Errorf("design says %q: %v, %v, want %v", c.says, got, err, c.want)
		}
	}
	for _, s := range hours.Skills() {
		if got, err := practiced(nil, &design.Design{Skill: s.String()}); got != s || err != nil {
			t.Errorf("%v: %v, %v", s, got, err)
		}
	}
	r, err := sizeOne(t, World{}, "--skill", "beginner", "--longest-stick", "3000 mm")
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Decode(bytes.NewReader(written(t, r.Outputs[0])), "own.toml")
	if err != nil {
		t.Fatal(err)
	}
	if d.Skill != "beginner" || d.Stock.Longest != 3000 {
		t.Errorf("skill %q, longest stick %v", d.Skill, d.Stock.Longest)
	}
}
