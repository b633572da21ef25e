package edition

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// TestNearest: the place that is found is as near as the nearest of all stretches, each tried
// for itself by the projection that textbooks give.
func TestNearest(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 4))
	place := func(size float64) geometry.Point {
		return geometry.Pt(size*r.NormFloat64(), size*r.NormFloat64())
	}
	for _, n := range []int{2, 16, 17, 18, 33, 400} {
		line := []geometry.Point{{}}
		for len(line) < n {
			line = append(line, line[len(line)-1].Add(place(5)))
		}
		for range 200 {
			p := place(60)
			want := math.Inf(1)
			for i := 1; i < n; i++ {
				along := line[i].Sub(line[i-1])
				share := p.Sub(line[i-1]).Dot(along) / along.Dot(along)
				want = math.Min(want, line[i-1].Lerp(line[i], math.Max(0, math.Min(1, share))).Sub(p).Norm())
			}
			if got := newContour(line).nearest(p).Sub(p).Norm(); math.Abs(got-want) > 1e-9*(1+want) {
				t.Errorf("%d points: %.9f mm from %v, and %.9f is there", n, got, p, want)
			}
		}
	}
	if p := geometry.Pt(3, 4); newContour(nil).nearest(p) != p {
		t.Error("a line without points has a place")
	}
}
