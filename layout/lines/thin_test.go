package lines

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// thinned is a line through few of some places.
func thinned(pts []geometry.Point) curve.Path {
	t := thinner{pts: slices.Clone(pts)}
	return t.line()
}

// TestThinned: of a straight row both ends are left; of a circle about so many places as
// have chords that rise by what is allowed, r (1 - cos a/2) by the circle's own formula, and
// none of the places left out lies farther off than that; a closed line stays closed.
func TestThinned(t *testing.T) {
	var row, circle []geometry.Point
	for i := range 21 {
		row = append(row, geometry.Pt(float64(i)*3, float64(i)*-1.5))
	}
	if got := thinned(row); len(got) != 1 || got.Length() != row[20].Sub(row[0]).Norm() {
		t.Errorf("a straight row becomes %d lines", len(got))
	}
	const r = 10.0
	for i := range 721 {
		sin, cos := math.Sincos(float64(i%720) * math.Pi / 360)
		circle = append(circle, geometry.Pt(r*cos, r*sin))
	}
	got := thinned(circle)
	fewest := math.Pi / math.Acos(1-fine/r)
	if n := float64(len(got)); n < fewest || n > 2*fewest+1 || !got.Closed() {
		t.Errorf("a circle becomes %.0f lines, want %.0f to twice as many, closed", n, fewest)
	}
	for _, s := range got { // the middle of each chord lies in by its rise
		if in := r - s.At(0.5).Norm(); in > fine {
			t.Errorf("a line lies %.4f mm inside the circle", in)
		}
	}
	if thinned(nil) != nil || thinned(row[:1]) != nil {
		t.Error("no line becomes one")
	}
}
