package sizing

import (
	"math"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing/family"
)

// TestMovingWater: a boat for moving water has more rocker, a shorter straight keel, no
// less depth, freeboard and width at the quarters than the same people's boat for sheltered
// water, and turns more easily; one for open water has more sheer and depth at one beam.
func TestMovingWater(t *testing.T) {
	for _, name := range family.Names() {
		b := briefFor(shipped(t, name), body.Person{Sex: body.Woman, Weight: 67, Stature: 1680}, 12)
		calm := settledCase(t, shipped(t, name), b)
		if calm.Beside(calm) != nil {
			t.Errorf("%s: sheltered water changes something", name)
		}
		b.Waters = family.Moving
		wild := settledCase(t, shipped(t, name), b)
		same, err := wild.Sheltered()
		if err != nil || same.run.Number("hull.rocker_bow") != calm.run.Number("hull.rocker_bow") {
			t.Errorf("%s: %v", name, err)
		}
		is := func(c *Case, n string) float64 { return c.run.Number(n) }
		if is(wild, "hull.rocker_bow") < 1.4*is(calm, "hull.rocker_bow") || is(wild, "hull.keel_straight") > 0.85*is(calm, "hull.keel_straight") {
			t.Errorf("%s: rocker %.0f after %.0f mm, straight keel %.0f after %.0f mm", name, is(wild, "hull.rocker_bow"), is(calm, "hull.rocker_bow"), is(wild, "hull.keel_straight"), is(calm, "hull.keel_straight"))
		}
		if is(wild, "depth") < is(calm, "depth") || is(wild, "freeboard") < is(calm, "freeboard") || is(wild, "fullness") < is(calm, "fullness") {
			t.Errorf("%s: depth %.1f after %.1f, freeboard %.1f after %.1f mm", name, is(wild, "depth"), is(calm, "depth"), is(wild, "freeboard"), is(calm, "freeboard"))
		}
		if share := wild.turning() / calm.turning(); share > 0.9 {
			t.Errorf("%s: resists being turned %.2f as much", name, share)
		}
		if told := wild.Beside(calm); len(told) < 5 {
			t.Errorf("%s: %+v", name, told)
		}
		b.Waters = family.Open
		wide := settledCase(t, shipped(t, name), b)
		if is(wide, "end_rise") <= is(calm, "end_rise") || is(wide, "depth") < is(calm, "depth") {
			t.Errorf("%s: open water, depth %.1f after %.1f", name, is(wide, "depth"), is(calm, "depth"))
		}
	}
}

// TestTurning: of a boat that is all of one draft, from its waterline and ends alone: the
// sum lies under that of a plate as long and as deep, 2 (L/2)^4 / 4 times its draft, and
// over half of it, for the ends rise.
func TestTurning(t *testing.T) {
	c := settledCase(t, shipped(t, "solo"), briefFor(shipped(t, "solo"), body.Person{Weight: 75, Stature: 1750}, 10))
	half := c.found["waterline_length"] / 2
	plate := c.found["draft"] * 2 * math.Pow(half, 4) / 4
	if got := c.turning() / plate; got > 1.02 || got < 0.5 {
		t.Errorf("%.3f of a plate's", got)
	}
}
