package hours

import (
	"math"
	"strings"
	"testing"
)

// TestLabor: a labor file multiplies the stages and the skill that it names, and leaves the
// others alone.
func TestLabor(t *testing.T) {
	l, err := ReadLabor([]byte("what,of,times\n# seen in twelve builds\nstage,ribs,1.5\nskill,beginner,2\n"), "labor.csv")
	if err != nil {
		t.Fatal(err)
	}
	all := []Work{{Stage: Bend, Count: 30, Minutes: 2}, {Stage: Skin, Count: 1, Minutes: 60}}
	for _, c := range []struct {
		stage Stage
		skill Skill
		want  float64
	}{{Bend, Experienced, 1.5}, {Skin, Experienced, 1}, {Bend, Beginner, 3}, {Skin, Beginner, 2}, {Skin, Average, 1.45}} {
		if got := Hours(l.Of(all, c.skill), c.stage, c.skill); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s, %v: %g h, want %g", c.stage, c.skill, got, c.want)
		}
	}
	if all[0].Minutes != 2 {
		t.Error("the work that was given is changed")
	}
	if got := (*Labor)(nil).Of(all, Beginner); &got[0] != &all[0] {
		t.Error("without a file the work changes")
	}
	for text, says := range map[string]string{
		"rib,beam\n": "no labor file", "what,of,times\nstage,ribs,20\n": "0.1 to 10", "what,of,times\nstage,rib,1\n": "is no stage",
		"what,of,times\nskill,master,1\n": "no skill", "what,of,times\nstage,ribs,1\nstage,ribs,2\n": "stands twice", "what,of,times\nhand,left,1\n": "stage or skill",
	} {
		if _, err := ReadLabor([]byte(text), "x.csv"); err == nil || !strings.Contains(err.Error(), says) || !strings.HasPrefix(err.Error(), "x.csv") {
			t.Errorf("%q: %v, want %q", text, err, says)
		}
	}
}
