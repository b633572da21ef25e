package sizing

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/sizing/family"
)

// TestRailMarks holds the marks of a sketch's gunwale, at the ribs and between them, to the
// length of a line of chords so short that they are the curve to 0.0001 mm, and stations of
// marks to those they were made from.
func TestRailMarks(t *testing.T) {
	for _, name := range family.Names() {
		s, err := newSketch(designed(t, benchCase(t, name)))
		if err != nil {
			t.Fatal(err)
		}
		const step = 0.25
		aft, fore := s.hull.Gunwale.Ends()
		x, long := aft, s.rail.OnStock(aft)
		last := s.hull.Gunwale.Point(x)
		off, astray := 0.0, 0.0
		for n := 0; x < fore; n++ {
			x = math.Min(fore, x+step)
			p := s.hull.Gunwale.Point(x)
			long += chord(p, last)
			last = p
			if n%97 == 0 || x == fore {
				off = math.Max(off, math.Abs(s.rail.OnStock(x)-long))
				astray = math.Max(astray, math.Abs(s.rail.StationOf(long)-x))
			}
		}
		if mid := s.rail.OnStock(0); !(off < 5e-4) || math.Abs(mid) > 5e-4 {
			t.Errorf("%s: marks are off by %.2g mm at most, and at midship by %.2g mm", name, off, mid)
		}
		if !(astray < 0.15) {
			t.Errorf("%s: stations of marks are off by %.2g mm", name, astray)
		}
	}
}

func chord(a, b geometry.Point3) float64 { return a.Sub(b).Norm() }
