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
		name  string
		plies []float64
		share float64
	}{
		{"two", equal(2, 3), 0.25},
		{"three", equal(3, 3), 1.0 / 9},
		{"four", equal(4, 3), 0.0625},
		{"five", equal(5, 3), 0.04},
		{"six", equal(6, 3), 1.0 / 36},
		{"unequal", []float64{1, 2, 3}, 1.0 / 6},                   // 36/216
		{"unequal, in tenths", []float64{1.5, 4, 2.5}, 83.0 / 512}, // (3.375 + 64 + 15.625)/8^3
	} {
		t.Run(row.name, func(t *testing.T) {
			s, err := Springback(row.plies)
			if err != nil {
				t.Fatal(err)
			}
			near(t, s, row.share, 1e-15, "of the curvature")
		})
	}
}

// Thickness drops out and so does the order of the plies. Beam theory.
func TestSpringbackInvariance(t *testing.T) {
	a, _ := Springback([]float64{1, 2, 3})
	b, _ := Springback([]float64{300, 100, 200})
	near(t, b, a, 1e-15, "of the curvature")
}

// What lies just inside the limits is accepted. Arithmetic: two equal plies lose a
// quarter of their curvature.
func TestLaminateLimits(t *testing.T) {
	for _, thick := range []float64{1000, 0.01} {
		s, err := Springback(equal(2, thick))
		if err != nil {
			t.Fatal(err)
		}
		near(t, s, 0.25, 1e-15, "of the curvature")
	}
}

func TestLaminateRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		name  string
		plies []float64
		want  string
	}{
		{"none", nil, "0 plies: at least 2"},
		{"one", equal(1, 6), "1 plies: at least 2"},
		{"no thickness", []float64{3, 0}, "ply 2 is 0 mm thick"},
		{"below zero", []float64{-3, 3}, "ply 1 is -3 mm thick"},
		{"not a number", []float64{3, nan}, "ply 2 is NaN mm thick"},
		{"infinite", []float64{3, inf}, "ply 2 is +Inf mm thick"},
		{"thicker than a metre", []float64{1000.5, 900}, "ply 1 is 1000.5 mm thick"},
		{"a veneer on a beam", []float64{1e-9, 100}, "springs back straight"},
	} {
		t.Run(row.name, func(t *testing.T) {
			s, err := Springback(row.plies)
			if err == nil || !strings.Contains(err.Error(), row.want) || s != 0 {
				t.Errorf("got %g, %v, want 0 and %q", s, err, row.want)
			}
		})
	}
}
