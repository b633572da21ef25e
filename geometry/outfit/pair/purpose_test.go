package pair

import (
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/water"
)

// TestPurpose: moving water wants hulls some 1.4 m apart, or as near as wide ones come;
// open water and a sail want half the length of the boat; a spacing that is given is
// kept whatever it is for.
func TestPurpose(t *testing.T) {
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		boat    string
		purpose design.Purpose
		given   float64
		want    float64
	}{
		{"brook", design.MovingWater, 0, 1400}, {"river", design.MovingWater, 0, 1400},
		{"river", design.OpenWater, 0, 2450}, {"river", design.Sailing, 0, 2450}, {"river", design.MovingWater, 1700, 1700},
	} {
		f := frametest.Shipped(t, c.boat, nil)
		b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
		if err != nil {
			t.Fatal(err)
		}
		p := f.Design.Pair()
		p.Purpose, p.Spacing = c.purpose, 0
		if c.given > 0 {
			p.Spacing = 1700
		}
		k, err := New(b, b, p, w)
		if err != nil {
			t.Fatal(err)
		}
		if k.Spacing != c.want {
			t.Errorf("%s, %v: %.0f mm apart, want %.0f", c.boat, c.purpose, k.Spacing, c.want)
		}
	}
	wide := Craft{Pair: design.Pair{Purpose: design.MovingWater}, Over: 1520}
	if got := wide.asked(5000); got != 1600 { // 50 mm of water between, in steps of 50
		t.Errorf("hulls of 1520 mm together stand %.0f mm apart, want 1600", got)
	}
}
