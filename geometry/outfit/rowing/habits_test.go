package rowing

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/design"
)

func fitted(t *testing.T, name string) *Fit {
	t.Helper()
	b := boat(t, name)
	f, err := New(b, b.Frame.Design.Row(), fresh(t))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestInHabit: the seat, rowlocks and oars that the program chooses by itself lie in
// the ranges that its sources name; what the rower's body or the boat's width
// decides may lie outside.
func TestInHabit(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, r := range fitted(t, name).Ranges {
			switch r.Name {
			case "rowlock behind the seat's after edge", "rowlock over the seat", "seat along the boat", "inboard to outboard", "handles pass over each other", "span", "oar to span":
				if !r.Inside() {
					t.Errorf("%s: %s: %.1f %s, practice is %.1f to %.1f", name, r.Name, r.Value, r.Unit, r.Low, r.High)
				}
			}
		}
	}
}

// TestRangesAsTold: a range in mm is the inches of its source, to half a centimetre.
func TestRangesAsTold(t *testing.T) {
	read := 0
	for _, r := range fitted(t, "lake").Ranges {
		var low, high float64
		if _, err := fmt.Sscanf(r.Source, "%f to %f in", &low, &high); err != nil || r.Unit != "mm" {
			continue
		}
		read++
		if r.Name == "handles pass over each other" {
			high = 110 / 25.4 // 4 in and the button's play
		}
		if math.Abs(r.Low-low*25.4) > 5 || math.Abs(r.High-high*25.4) > 5 {
			t.Errorf("%s: %.0f to %.0f mm, its source has %.0f to %.0f", r.Name, r.Low, r.High, low*25.4, high*25.4)
		}
	}
	if read < 4 {
		t.Errorf("only %d sources have inches", read)
	}
}

// TestUsualSpan: with nothing said the rowlocks of a boat narrow enough stand 48 in
// apart, as the design file says; the oar maker's page gives 92.86 in for that.
func TestUsualSpan(t *testing.T) {
	f := fitted(t, "brook")
	near(t, "span, in", f.Span/25.4, 48, 1e-9)
	near(t, "oar, in", f.Oar.Length/25.4, 92.86, 0.01)
}

// TestFourClips: one oar alone turns the frame: what all clips hold along the boat is
// the pull at the rowlock and its couple over the boat's width, half of the clips on
// each side. Statics.
func TestFourClips(t *testing.T) {
	f := fitted(t, "lake")
	clips, bolts, bars := 0, 0.0, 0
	for _, p := range f.Kit().Pieces {
		if p.Name == "Clip" {
			clips += p.Count
		}
		if strings.HasSuffix(p.Name, " bar") {
			bars += p.Count
		}
	}
	for _, v := range f.Kit().Things {
		if v.Key == "bolt" {
			bolts += v.Amount
		}
	}
	side := f.Strength.AtLock * (0.5 + f.Span/2/f.Width)
	near(t, "held on one side, N", f.Strength.Clip*float64(clips)/2, side, 1e-6)
	near(t, "bolts through clips and both ends of each bar", bolts, float64(clips+2*bars), 0)
	told := false
	for _, n := range f.Findings {
		told = told || n.Verdict.Danger() && strings.Contains(n.Text, "each of the four clips") && strings.Contains(n.Text, "nobody sits, stands or climbs in over it")
	}
	if !told || clips != 4 {
		t.Errorf("%d clips, told of four: %v", clips, told)
	}
}

// TestDangersOfRowing: a rower who sits high is told so as a danger, upright or not;
// hands that pass too near the legs are a danger below the 25 mm that the words ask.
func TestDangersOfRowing(t *testing.T) {
	f := fitted(t, "lake")
	danger := func(about, words string) bool {
		for _, n := range f.Findings {
			if n.About == about && strings.Contains(n.Text, words) {
				return n.Verdict.Danger()
			}
		}
		return false
	}
	if !danger("stability", "never stand") {
		t.Error("standing up is no danger")
	}
	for closer, tight := range map[float64]bool{f.OverLegs() - 25.5: false, f.OverLegs() - 24.5: true} {
		g := *f
		g.Findings = nil
		// A rower with thicker legs by so much.
		g.Legs.KneeTop = math.Max(f.Body.Thigh, f.Legs.KneeTop) + closer
		g.Body.Thigh = 0
		g.judgeReach()
		told := false
		for _, n := range g.Findings {
			told = told || n.Verdict.Danger() && strings.Contains(n.Text, "25 mm and more is wanted")
		}
		if told != tight {
			t.Errorf("hands %.1f mm over the legs: told %v", g.OverLegs(), told)
		}
	}
}

// TestOarsWeigh: two oars of 8 ft weigh 4 to 5 kg, as wooden ones do (oars of spruce,
// from memory); longer ones more in proportion.
func TestOarsWeigh(t *testing.T) {
	f := fitted(t, "lake")
	oars := func(long float64) float64 {
		g := *f
		g.Oar.Length = long
		for _, v := range g.Kit().Things {
			if v.Key == "oar" {
				return v.Mass
			}
		}
		return 0
	}
	if m := oars(2438); m < 4 || m > 5 {
		t.Errorf("a pair of 8 ft weighs %.1f kg", m)
	}
	near(t, "half as long again", oars(3000)/oars(2000), 1.5, 1e-9)
}

// TestKitIsOutrigger: the boards that lie across are as long as the span and what
// stands beyond both rowlocks; a round figure of the wood by hand.
func TestKitIsOutrigger(t *testing.T) {
	f := fitted(t, "lake")
	for _, p := range f.Kit().Pieces {
		if strings.HasSuffix(p.Name, " bar") {
			near(t, p.Name, p.Long, f.Span+2*BarSpare, 1e-9)
			near(t, p.Name+", mm3", p.Volume(), p.Long*BarWide*f.BarThick, 1e-6)
		}
		if p.Form != kit.Board {
			t.Errorf("%s is worked as %v", p.Name, p.Form)
		}
	}
}
