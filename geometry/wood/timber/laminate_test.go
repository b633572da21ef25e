package timber

import (
	"math"
	"strings"
	"testing"
)

// equal returns n plies of t mm.
func equal(n int, t float64) []float64 {
	plies := make([]float64, n)
	for i := range plies {
		plies[i] = t
	}
	return plies
}

// Arithmetic on beam theory: for n equal plies S = 1/n^2, the common shop rule.
func TestSpringback(t *testing.T) {
	for _, row := range []struct {
		name                   string
		plies                  []float64
		share, final, mould, d float64 // of 1000 mm
	}{
		{"two", equal(2, 3), 0.25, 1333.3333, 750, 0.0005},
		{"three", equal(3, 3), 1.0 / 9, 1125, 888.8889, 0.0005},
		{"four", equal(4, 3), 0.0625, 1066.6667, 937.5, 0.0005},
		{"five", equal(5, 3), 0.04, 1041.6667, 960, 0.0005},
		{"six", equal(6, 3), 1.0 / 36, 1028.5714, 972.2222, 0.0005},
		{"unequal", []float64{1, 2, 3}, 1.0 / 6, 1200, 833.3333, 0.0005},                        // 36/216
		{"unequal, in tenths", []float64{1.5, 4, 2.5}, 83.0 / 512, 1193.4732, 837.8906, 0.0005}, // (3.375 + 64 + 15.625)/8^3
	} {
		t.Run(row.name, func(t *testing.T) {
			s, err := Springback(row.plies)
			if err != nil {
				t.Fatal(err)
			}
			near(t, s, row.share, 1e-15, "of the curvature")
			final, _ := FinalRadius(1000, row.plies)
			near(t, final, row.final, row.d, "mm final")
			mould, _ := MouldRadius(1000, row.plies)
			near(t, mould, row.mould, row.d, "mm mould")
			back, err := MouldRadius(final, row.plies)
			if err != nil {
				t.Fatal(err)
			}
			near(t, back, 1000, 1e-9, "mm, there and back")
		})
	}
}

// Thickness drops out and so does the order of the plies. Beam theory.
func TestSpringbackInvariance(t *testing.T) {
	a, _ := Springback([]float64{1, 2, 3})
	b, _ := Springback([]float64{300, 100, 200})
	near(t, b, a, 1e-15, "of the curvature")
}

func TestSpringbackStraight(t *testing.T) {
	inf := math.Inf(1)
	for _, f := range []func(float64, []float64) (float64, error){FinalRadius, MouldRadius} {
		if r, err := f(inf, equal(3, 4)); err != nil || r != inf {
			t.Errorf("a straight lamination goes to radius %g, %v", r, err)
		}
	}
}

// What lies just inside the limits is accepted. Arithmetic: two equal plies
// lose a quarter of their curvature.
func TestLaminateLimits(t *testing.T) {
	for _, row := range []struct {
		name      string
		mould     float64
		plies     []float64
		want, tol float64
	}{
		{"plies of a metre", 1e6, equal(2, 1000), 4e6 / 3, 1e-9},
		{"radius below a millimetre", 0.75, equal(2, 0.01), 1, 1e-15},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, err := FinalRadius(row.mould, row.plies)
			if err != nil {
				t.Fatal(err)
			}
			near(t, got, row.want, row.tol, "mm")
		})
	}
}

func TestLaminateRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		name   string
		radius float64
		plies  []float64
		want   string
	}{
		{"none", 1000, nil, "0 plies: at least 2"},
		{"one", 1000, equal(1, 6), "1 plies: at least 2"},
		{"no thickness", 1000, []float64{3, 0}, "ply 2 is 0 mm thick"},
		{"below zero", 1000, []float64{-3, 3}, "ply 1 is -3 mm thick"},
		{"not a number", 1000, []float64{3, nan}, "ply 2 is NaN mm thick"},
		{"infinite", 1000, []float64{3, inf}, "ply 2 is +Inf mm thick"},
		{"thicker than a metre", 1000, []float64{1000.5, 900}, "ply 1 is 1000.5 mm thick"},
		{"a veneer on a beam", 1000, []float64{1e-9, 100}, "springs back straight"},
		{"radius 0", 0, equal(3, 3), "radius is 0 mm"},
		{"radius below zero", -5, equal(3, 3), "radius is -5 mm"},
		{"radius not a number", nan, equal(3, 3), "radius is NaN mm"},
	} {
		t.Run(row.name, func(t *testing.T) {
			for _, f := range []func(float64, []float64) (float64, error){FinalRadius, MouldRadius} {
				if s, err := Springback(row.plies); err != nil && s != 0 {
					t.Errorf("Springback(%v) = %g beside the error %v", row.plies, s, err)
				}
				r, err := f(row.radius, row.plies)
				if err == nil || !strings.Contains(err.Error(), row.want) || r != 0 {
					t.Errorf("got %g, %v, want 0 and %q", r, err, row.want)
				}
			}
		})
	}
}
