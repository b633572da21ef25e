package curve

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// TestRounded: the corners take (4 - pi) r^2 from the area and (8 - 2 pi) r from the
// way round, and no side is left of a box that is all corner. Plane geometry.
func TestRounded(t *testing.T) {
	for _, c := range []struct {
		w, h, r float64
		pieces  int
	}{{100, 40, 10, 8}, {100, 40, 20, 6}, {100, 40, 50, 6}, {40, 40, 20, 4}} {
		r := math.Min(c.r, math.Min(c.w, c.h)/2)
		p := Rounded(geometry.Rect(-30, 5, c.w-30, 5+c.h), c.r)
		if len(p) != c.pieces {
			t.Errorf("%v: %d pieces", c, len(p))
		}
		if got, want := p.Length(), 2*(c.w+c.h)-(8-2*math.Pi)*r; math.Abs(got-want) > 1e-9 {
			t.Errorf("%v: %.6f mm round, want %.6f", c, got, want)
		}
		if got, want := Area(p.Flatten(0.001)), c.w*c.h-(4-math.Pi)*r*r; math.Abs(got/want-1) > 1e-4 {
			t.Errorf("%v: %.3f mm2, want %.3f", c, got, want)
		}
		for i, s := range p {
			if gap := s.End().Sub(p[(i+1)%len(p)].Start()).Norm(); gap > 1e-9 {
				t.Errorf("%v: piece %d ends %g mm from the next", c, i, gap)
			}
		}
	}
}
