package sizing

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestLinearTextbook: greatest 3x + 5y with x <= 4, 2y <= 12, 3x + 2y <= 18 is 36
// at (2, 6). Source: the Wyndor glass problem of Hillier and Lieberman,
// Introduction to Operations Research, ch. 3, from memory; the corner is easily
// worked by hand.
func TestLinearTextbook(t *testing.T) {
	in := []half{{[]float64{1, 0}, 4}, {[]float64{0, 2}, 12}, {[]float64{3, 2}, 18}}
	x, ok := linear([]float64{-3, -5}, in, []float64{0, 0}, []float64{100, 100})
	if !ok || math.Abs(x[0]-2) > 1e-9 || math.Abs(x[1]-6) > 1e-9 {
		t.Errorf("%v %v, want 2, 6", x, ok)
	}
	in = append(in, half{[]float64{-1, -1}, -20})
	if x, ok := linear([]float64{-3, -5}, in, []float64{0, 0}, []float64{100, 100}); ok {
		t.Errorf("%v is found where nothing fits", x)
	}
}

// TestLinearAgainstCorners compares with every corner of random problems in two
// unknowns, found by crossing all borders.
func TestLinearAgainstCorners(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	for range 3000 {
		var in []half
		for range 2 + r.IntN(8) {
			in = append(in, half{[]float64{r.NormFloat64(), r.NormFloat64()}, r.NormFloat64()})
		}
		c := []float64{r.NormFloat64(), r.NormFloat64()}
		lo, hi := []float64{-1, -1}, []float64{1, 1}
		x, ok := linear(c, in, lo, hi)
		best := bestCorner(c, in)
		if ok != !math.IsInf(best, 1) {
			t.Fatalf("found %v, corners say %v: %v", ok, best, in)
		}
		if ok && math.Abs(dot(c, x)-best) > 1e-6 {
			t.Fatalf("%v costs %v, the best corner %v", x, dot(c, x), best)
		}
	}
}

func bestCorner(c []float64, in []half) float64 {
	all := append([]half{{[]float64{1, 0}, 1}, {[]float64{-1, 0}, 1}, {[]float64{0, 1}, 1}, {[]float64{0, -1}, 1}}, in...)
	best := math.Inf(1)
	for i, g := range all {
		for _, h := range all[i+1:] {
			det := g.a[0]*h.a[1] - g.a[1]*h.a[0]
			if math.Abs(det) < 1e-12 {
				continue
			}
			x := []float64{(g.b*h.a[1] - h.b*g.a[1]) / det, (g.a[0]*h.b - h.a[0]*g.b) / det}
			inside := true
			for _, k := range all {
				inside = inside && dot(k.a, x) <= k.b+1e-7
			}
			if inside {
				best = math.Min(best, dot(c, x))
			}
		}
	}
	return best
}
