package sail

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/design"
)

// TestOver: force 8 of the scale ends at 20.7 m/s, and past that no figure is given.
func TestOver(t *testing.T) {
	for v, want := range map[float64]string{7.25: "7.2", 20.7: "20.7", 20.8: "over 20", 236: "over 20"} {
		if got := Over(v); got != want {
			t.Errorf("%g m/s is lettered %s, want %s", v, got, want)
		}
	}
}

// TestNeeded counts the sizes of use by hand: none after the first that stands until
// 7.9 m/s, where all sail comes down.
func TestNeeded(t *testing.T) {
	of := func(reefs ...float64) *Fit {
		f := &Fit{}
		for i, v := range reefs {
			f.States = append(f.States, State{Name: stateName(i), Area: 1, Arm: 1, Limits: []Limit{{Reef: v / 2}, {Reef: v}, {Reef: v * 2}}})
		}
		f.tabulate()
		return f
	}
	for _, c := range []struct {
		reefs                  []float64
		inside, middle, useful int
		spared                 string
	}{
		{[]float64{4, 5, 6}, 3, 3, 3, ""},
		{[]float64{6, 8, 11}, 2, 3, 3, "no further reef is needed, for with one reef "},
		{[]float64{20, 30, 40}, 1, 1, 1, "no reef is needed, "},
		{[]float64{10, 16}, 1, 2, 2, "no reef is needed, "},
		{[]float64{9}, 1, 1, 1, ""},
	} {
		f := of(c.reefs...)
		if a, b, d := f.Needed(Inside), f.Needed(Middle), f.Useful(); a != c.inside || b != c.middle || d != c.useful {
			t.Errorf("%v: %d, %d and %d sizes, want %d, %d and %d", c.reefs, a, b, d, c.inside, c.middle, c.useful)
		}
		if got := f.Spared(); !strings.HasPrefix(got, c.spared) || (got == "") != (c.spared == "") {
			t.Errorf("%v: %q, want %q", c.reefs, got, c.spared)
		}
	}
}

// TestWindsTold: no finding has a wind past force 8, or a reef that is taken in when
// all sail is down.
func TestWindsTold(t *testing.T) {
	wind := regexp.MustCompile(`([0-9.]+) m/s`)
	b, w := boat(t, "lake"), fresh(t)
	for _, r := range design.Rigs() {
		for _, area := range []float64{0.5, 1.2, 3.5} {
			s := b.Frame.Design.Sail()
			s.Rig, s.Area, s.Reefs = r, area, 3
			f, err := New(b, s, w)
			if err != nil {
				t.Fatal(err)
			}
			for _, n := range f.Findings {
				for _, m := range wind.FindAllStringSubmatch(n.Text, -1) {
					v, err := strconv.ParseFloat(m[1], 64)
					if err != nil || v > 20.7 {
						t.Errorf("%v of %g m2: %s m/s in %q", r, area, m[1], n.Text)
					}
				}
				if n.About == "wind" && (strings.Contains(n.Text, "reef at 7.9") || strings.Contains(n.Text, "reefs at 7.9")) {
					t.Errorf("%v of %g m2: %q", r, area, n.Text)
				}
			}
		}
	}
}

// TestHeelThen: of a sail that is carried past 7.9 m/s the heel is told in 7.9 m/s.
func TestHeelThen(t *testing.T) {
	s := Stand{Flooded: 1, Moments: []Moment{{0, 0, 300}, {0.1, 100, 200}, {0.2, 200, 100}}, Most: Moment{0.2, 200, 100}}
	l := s.limit(1, 1)
	// The stand is straight, 1000 N m to the radian: heel = q C A h / 1000, q = 1.225 v2 / 2.
	near(t, "heel in 7.9 m/s", l.Heel, 1.225*7.9*7.9/2*1.2/1000, 1e-9)
	if l.Reef < 7.9 {
		t.Errorf("taken in at %.1f m/s: this shows nothing", l.Reef)
	}
}
