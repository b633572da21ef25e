package job

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/learn/feedback"
	"ribwright/geometry/shop/cost"
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

// TestNotesAsBooked: the notes of a card have the hours of each stage as the book of the same
// design has them, for the skill that both name, and say which steps one stage is.
func TestNotesAsBooked(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	d.Skill = hours.Beginner.String()
	k, err := newFacts(d, "brook")
	if err != nil {
		t.Fatal(err)
	}
	notes, says, err := k.drawnBuild()
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewBook().sawn(k, World{}, &cost.Table{})
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := feedback.Blank(&text, notes, says); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(text.String(), "skill,,beginner,beginner\n") || !strings.Contains(says, "of the build book for a beginner") || !strings.Contains(says, "outside, inside, seats, flotation and first water") {
		t.Errorf("%s", text.String())
	}
	for _, s := range hours.Stages() {
		h := hours.Hours(p.Work, s, hours.Beginner)
		_, after, found := strings.Cut(text.String(), fmt.Sprintf("hours,%s,", s))
		got := 0.0
		if fmt.Sscanf(after, "%f h,", &got); found != (h > 0) || math.Abs(got-h) > 0.051 {
			t.Errorf("%s: %.1f h, the book has %.1f", s, got, h)
		}
	}
}
