package lines

import (
	"math"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// TestSizes: from abeam the boat is as long as it is designed, from above as wide as it
// is over its gunwales, at the drawings' scale.
func TestSizes(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, func(*design.Design) {})
		b, err := aboard.New(f, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		all := Boat{Boat: b}.Draw(Eye{Turn: math.Pi / 2})
		long := f.Hull.Length * Scale
		for i, d := range all[:3] {
			if w := d.Bounds().W(); math.Abs(w-long) > 0.02*long {
				t.Errorf("%s, %s: %.1f mm long, want about %.1f", name, d.Name, w, long)
			}
			if i == 2 {
				wide, low := (f.Hull.Beam+f.Gunwale.Width)*Scale, -d.Bounds().Min.Y
				if h := d.Bounds().H(); h < wide*0.98 || h > wide*1.1 || math.Abs(h/2-low) > 0.01 {
					t.Errorf("%s from above: %.1f mm wide, %.1f to starboard, want about %.1f", name, h, low, wide)
				}
			}
		}
	}
}
