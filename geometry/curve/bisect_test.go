package curve

import (
	"math"
	"testing"
)

// TestBisect finds roots known exactly, and says what it does without one.
func TestBisect(t *testing.T) {
	tests := []struct {
		name         string
		lo, hi, want float64
		below        func(float64) bool
	}{
		{"square root of two", 0, 2, math.Sqrt2, func(x float64) bool { return x*x < 2 }},
		{"far from zero", -1e6, 1e6, 12345.678, func(x float64) bool { return x < 12345.678 }},
		{"always below", 3, 7, 7, func(float64) bool { return true }},
		{"never below", 3, 7, 3, func(float64) bool { return false }},
	}
	for _, tt := range tests {
		if got := Bisect(tt.lo, tt.hi, tt.below); math.Abs(got-tt.want) > 4e-16*math.Max(1, math.Abs(tt.want)) {
			t.Errorf("%s: %.17g, want %.17g", tt.name, got, tt.want)
		}
	}
}
