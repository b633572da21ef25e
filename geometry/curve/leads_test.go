package curve

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry"
)

// TestUntil walks chains in steps of 0.01 mm until they have led so far; chains that never
// do are gone along whole.
func TestUntil(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 300 {
		heading := (r.Float64() - 0.5) * math.Pi
		c := Chain{Straight(20 * r.Float64()), Turned(10+20*r.Float64(), 1.2*r.Float64()), Straight(20 * r.Float64()), Turned(30*r.Float64(), 1.2*r.Float64())}
		led := func(s float64) float64 {
			p, _ := c.At(s)
			return geometry.Turn(heading).Apply(p).X
		}
		far, whole := 40*r.Float64(), c.Length()
		want := 0.0
		for want < whole && led(want) < far {
			want = math.Min(want+0.01, whole)
		}
		if got := c.Until(far, heading); !(math.Abs(got-want) <= 0.0101) {
			t.Fatalf("%v from %.3f has led %.3f mm after %.3f mm, want %.3f mm", c, heading, far, got, want)
		}
	}
	if got := (Chain{Straight(5)}).Until(0, 0); got != 0 {
		t.Errorf("%g mm until it has led nowhere", got)
	}
}
