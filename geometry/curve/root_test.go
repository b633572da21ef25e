package curve

import (
	"math"
	"testing"
)

// TestRoot finds roots known exactly, of straight, steep, flat and leaping lines, and says
// what it does without one. The cubic is Wallis's of 1685.
func TestRoot(t *testing.T) {
	tests := []struct {
		name         string
		lo, hi, want float64
		tol          float64
		most         int // calls
		f            func(float64) float64
	}{
		{"square root of two", 0, 2, math.Sqrt2, 0, 12, func(x float64) float64 { return x*x - 2 }},
		{"from the other end", 2, 0, math.Sqrt2, 0, 12, func(x float64) float64 { return x*x - 2 }},
		{"straight", -3, 5, 1.25, 0, 4, func(x float64) float64 { return 4*x - 5 }},
		{"Wallis", 2, 3, 2.0945514815423265, 0, 12, func(x float64) float64 { return x*x*x - 2*x - 5 }},
		{"cosine", 0, 1, 0.7390851332151607, 0, 12, func(x float64) float64 { return math.Cos(x) - x }},
		{"far from zero", -1e6, 1e6, 12345.678, 0, 12, func(x float64) float64 { return x - 12345.678 }},
		{"roughly", 0, 2, math.Sqrt2, 1e-3, 7, func(x float64) float64 { return x*x - 2 }},
		{"flat at the root", -1, 2, 0, 1e-4, 60, func(x float64) float64 { return x * x * x * x * x }},
		{"a leap", 0, 1, 0.3, 1e-9, 90, func(x float64) float64 { return math.Copysign(1, x-0.3) }},
		{"at the first end", 3, 7, 3, 0, 2, func(x float64) float64 { return x - 3 }},
		{"at the last end", 3, 7, 7, 0, 2, func(x float64) float64 { return x - 7 }},
		{"none, nearer to the last", 3, 7, 7, 0, 2, func(x float64) float64 { return x - 8 }},
		{"none, nearer to the first", 3, 7, 3, 0, 2, func(x float64) float64 { return x - 2 }},
	}
	for _, tt := range tests {
		calls := 0
		got := Root(tt.lo, tt.hi, tt.tol, func(x float64) float64 { calls++; return tt.f(x) })
		if math.Abs(got-tt.want) > tt.tol+4e-16*math.Max(1, math.Abs(tt.want)) {
			t.Errorf("%s: %.17g, want %.17g", tt.name, got, tt.want)
		}
		if calls > tt.most {
			t.Errorf("%s: %d calls, want at most %d", tt.name, calls, tt.most)
		}
	}
}
