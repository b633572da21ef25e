package curve

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// TestStretch: a piece from a to b runs through the points of the whole between them,
// for each kind of segment, and is as long as its share of a line or an arc.
func TestStretch(t *testing.T) {
	for _, s := range AllKinds() {
		for _, ends := range [][2]float64{{0, 1}, {0, 0.3}, {0.2, 0.9}, {0.7, 1}} {
			a, b := ends[0], ends[1]
			got := Stretch(s, a, b)
			for u := 0.0; u <= 1; u += 0.125 {
				if off := got.At(u).Sub(s.At(a + u*(b-a))).Norm(); off > 1e-9 {
					t.Errorf("%T from %g to %g: off by %g mm at %g", s, a, b, off, u)
				}
			}
			if _, bent := s.(Cubic); !bent && math.Abs(got.Length()-(b-a)*s.Length()) > 1e-9 {
				t.Errorf("%T from %g to %g: %g mm long, want %g", s, a, b, got.Length(), (b-a)*s.Length())
			}
		}
	}
	// By hand: the first half of (0,0) (0,2) (2,2) (2,0) is (0,0) (0,1) (0.5,1.5) (1,1.5).
	c := Cubic{geometry.Point{}, geometry.Point{Y: 2}, geometry.Point{X: 2, Y: 2}, geometry.Point{X: 2}}
	want := Cubic{geometry.Point{}, geometry.Point{Y: 1}, geometry.Point{X: 0.5, Y: 1.5}, geometry.Point{X: 1, Y: 1.5}}
	if got := Stretch(c, 0, 0.5); got != Segment(want) {
		t.Errorf("half of %+v is %+v, want %+v", c, got, want)
	}
}
