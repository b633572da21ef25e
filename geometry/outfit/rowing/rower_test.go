package rowing

import (
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// TestOwnRower: the heaviest of the boat's people rows, with their own stature, unless
// somebody is described.
func TestOwnRower(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	people := slices.Clone(f.Design.Crew)
	people[0].Name, people[0].Mass, people[0].Stature = "Ann", 91, 1800
	people[1].Name, people[1].Mass = "Bo", 60
	b, err := aboard.New(f, people, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, who     string
		row           func(*design.Row)
		mass, stature float64
	}{
		{"own", "Ann", func(*design.Row) {}, 91, 1800},
		{"described", "the rower described", func(r *design.Row) { r.Mass = 70 }, 70, 1626},
	} {
		r := b.Frame.Design.Row()
		c.row(&r)
		got, err := New(b, r, fresh(t))
		if err != nil {
			t.Fatal(err)
		}
		if got.Who != c.who || got.Body.Mass != c.mass || got.Body.Stature != c.stature {
			t.Errorf("%s: %s of %.0f kg and %.0f mm rows, want %s of %.0f and %.0f", c.name, got.Who, got.Body.Mass, got.Body.Stature, c.who, c.mass, c.stature)
		}
	}
}

// TestStandingJudged: what is said to be held aside is held, and a little more is not;
// a boat that falls short of what is asked is a danger, one that does not is none.
func TestStandingJudged(t *testing.T) {
	dangers := 0
	for _, name := range design.ShippedNames() {
		b := boat(t, name)
		f, err := New(b, b.Frame.Design.Row(), fresh(t))
		if err != nil {
			t.Fatal(err)
		}
		s := f.Standing
		for share, rests := range map[float64]bool{0.95: true, 1.05: false} {
			l := f.Load.Shifted(f.Body.Mass, geometry.Point3{Y: share * s.Held})
			p, _, err := f.Boat.Hull.Settle(l, f.Water.Density)
			dry := err == nil && f.Boat.Hull.Freeboard(p).Least > 0
			if dry != rests {
				t.Errorf("%s: %.0f %% of %.1f mm aside: %v", name, 100*share, s.Held, err)
			}
		}
		short := f.Rest.GM < 40 || s.Most < 28 || s.Held < 36
		told := slices.ContainsFunc(f.Findings, func(n finding.Finding) bool {
			return strings.HasPrefix(n.Text, "do not row it as it is") && n.Verdict.Danger()
		})
		if short && !told || told && !short && s.Over() > 0.7 {
			t.Errorf("%s: GM %.0f, lever %.1f, held %.1f: told %v", name, f.Rest.GM, s.Most, s.Held, told)
		}
		if told {
			dangers++
		}
	}
	if dangers == 0 || dangers == len(design.ShippedNames()) {
		t.Errorf("%d of the shipped boats are dangerous to row: this shows nothing", dangers)
	}
}
