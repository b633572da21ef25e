package float

import (
	"math"
	"testing"
)

// sums integrates y, x y, x2 y and y3 over the places x.
func sums(x []float64, breaks []bool, y []float64) (area, first, second, cube float64) {
	for i, w := range Weights(x, breaks) {
		area += w * y[i]
		first += w * y[i] * x[i]
		second += w * y[i] * x[i] * x[i]
		cube += w * y[i] * y[i] * y[i]
	}
	return
}

func spaced(n int, step float64) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = float64(i) * step
	}
	return x
}

// TestWaterplaneExamples has the waterplanes worked in Barrass and Derrett, Ship
// Stability for Masters and Mates, pp. 74 and 262: half-ordinates in m from
// forward. Where the book rounds on the way the exact value is tested and the
// printed one to the book's rounding.
func TestWaterplaneExamples(t *testing.T) {
	x := spaced(7, 20)
	area, first, _, cube := sums(x, make([]bool, 7), []float64{0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1})
	near64(t, "area, p. 74", 2*area, 1206.667, 1e-6)
	near64(t, "area as printed", 2*area, 1207, 5e-4)
	near64(t, "tonnes per cm as printed", 2*area/97.56, 12.37, 5e-4)
	near64(t, "LCF from forward", first/area, 62.3646, 1e-6)
	near64(t, "IT", 2*cube/3, 16010.5, 1e-5)

	x = spaced(7, 3)
	area, first, second, cube := sums(x, make([]bool, 7), []float64{0, 1.2, 1.5, 1.8, 1.8, 1.5, 1.2})
	near64(t, "area, p. 262", 2*area, 51.6, 1e-9)
	near64(t, "center aft of midship", first/area-9, 0.76744, 1e-5)
	about := 2 * (second - 18*first + 81*area)
	near64(t, "IL about midship", about, 1090.8, 1e-6)
	lcf := first / area
	near64(t, "IL about the center", 2*(second-lcf*first), 1060.41, 1e-5)
	near64(t, "IL as printed", 2*(second-lcf*first), 1058, 3e-3)
	near64(t, "IT", 2*cube/3, 42.588, 1e-6)
}

// TestVolumeExample adds waterplanes upward. Source: a Simpson exercise
// published by B. Dubey: TPC at five drafts, area = 100 TPC / 1.025.
func TestVolumeExample(t *testing.T) {
	tpc := []float64{19.68, 20.91, 21.53, 22.04, 22.45}
	area, first, _, _ := sums(spaced(5, 1), make([]bool, 5), tpc)
	near64(t, "volume over 2 m", area*100/1.025, 8357.398, 1e-5)
	near64(t, "center over 2 m", first/area, 2.03915, 1e-5)
	near64(t, "sum of products", 3*area, 256.99, 1e-6)
	near64(t, "sum of moments", 3*first, 524.04, 1e-6)
}

// TestSimpsonExercise has the box of eleven breadths 12 m apart from the same
// exercise page.
func TestSimpsonExercise(t *testing.T) {
	area, _, _, _ := sums(spaced(11, 12), make([]bool, 11),
		[]float64{1.2, 9.6, 13.2, 15, 15.3, 15.6, 15.6, 14.7, 12.9, 9, 0})
	near64(t, "area", area, 1483.2, 1e-6)
	near64(t, "sum of products", area*3/12, 370.8, 1e-6)
}

// TestTwoHullExample has two hulls 6 m apart: half-ordinates in cm at 5 intervals
// of 3.6 m, the last halved, 5.3 m3 each. Source: an examination question with
// its answer, 3.12 m, on a public naval-architecture forum (2016).
func TestTwoHullExample(t *testing.T) {
	x := []float64{0, 3.6, 7.2, 10.8, 14.4, 16.2, 18}
	y := []float64{0, .04, .062, .072, .064, .049, 0}
	area, _, _, cube := sums(x, make([]bool, 7), y)
	near64(t, "area of a hull", 2*area, 1.8384, 1e-9)
	near64(t, "its own inertia", 2*cube/3, 0.00228333, 1e-5)
	bm := (2*cube/3 + 2*area*9) / 5.3
	near64(t, "BM of the pair", bm, 3.12224, 1e-5)
	near64(t, "BM as printed", bm, 3.12, 1e-3)
}

// TestBargeLadders checks KM of boxes against Barrass and Derrett p. 111 (least
// KM = B / sqrt 6 at that draft) and the ladder of Reed's Naval Architecture,
// exercise 5.5, as worked on a public page. At T 2.5 that page prints 2.998 for
// what is 1.25 + 1.728 = 2.978 by its own formula; the sum is tested. m read as
// mm x 1000.
func TestBargeLadders(t *testing.T) {
	km := func(b, d float64) float64 {
		h := form{20000, b * 1000, 8000, barge, nil}.hull(t, 5, 2, 0, even)
		return h.Upright(Level(d*1000), Load{}, 1000).KM / 1000
	}
	near64(t, "least KM, B 10", km(10, 10/math.Sqrt(6)), 10/math.Sqrt(6), 1e-9)
	for _, c := range []struct{ d, km float64 }{{1, 4.82}, {2, 3.16}, {2.5, 2.978}, {3, 2.94}, {4, 3.08}} {
		if got := km(7.2, c.d); math.Abs(got-c.km) > 0.005 {
			t.Errorf("B 7.2, T %g: KM is %.4f m, want %.3f", c.d, got, c.km)
		}
	}
	h := form{20000, 10000, 8000, barge, nil}.hull(t, 5, 2, 0, even)
	near64(t, "BM, B 10, T 3.5", h.Upright(Level(3500), Load{}, 1000).BM/1000, 2.3810, 1e-4)
}

// TestWeights checks the rule itself: cubics are exact on even, uneven and
// broken spacing, and no weight is ever negative.
func TestWeights(t *testing.T) {
	for _, c := range []struct {
		name   string
		x      []float64
		breaks []int
	}{
		{"three", []float64{-1, 0, 1}, nil},
		{"even count", []float64{0, 1, 2, 3, 4, 5}, nil},
		{"uneven", []float64{0, 1, 2.2, 3.1, 4.5, 5.5, 6.1}, nil},
		{"ends at half spacing", []float64{0, .5, 1, 2, 3, 4, 4.5, 5}, nil},
		{"broken", []float64{0, 1, 2, 3, 3.5, 4, 4.5, 5, 6.5, 8, 9.5}, []int{3}},
	} {
		t.Run(c.name, func(t *testing.T) {
			breaks := make([]bool, len(c.x))
			for _, i := range c.breaks {
				breaks[i] = true
			}
			w := Weights(c.x, breaks)
			a, b := c.x[0], c.x[len(c.x)-1]
			for power := range 4 {
				got := 0.0
				for i := range w {
					if w[i] <= 0 {
						t.Errorf("weight %d is %g", i, w[i])
					}
					got += w[i] * math.Pow(c.x[i], float64(power))
				}
				n := float64(power + 1)
				want := (math.Pow(b, n) - math.Pow(a, n)) / n
				if math.Abs(got-want) > 1e-12*math.Max(1, math.Abs(want)) {
					t.Errorf("power %d: %.15g, want %.15g", power, got, want)
				}
			}
		})
	}
	// Spacing so uneven that the cubic would weigh a station below nothing.
	x := []float64{0, 1, 1.01, 2, 2.01, 3}
	sum := 0.0
	for i, w := range Weights(x, make([]bool, len(x))) {
		if w <= 0 {
			t.Errorf("weight %d is %g", i, w)
		}
		sum += w
	}
	near64(t, "length", sum, 3, 1e-12)
}
