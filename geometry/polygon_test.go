package geometry

import (
	"math"
	"slices"
	"testing"
)

// TestBeside cuts a square: its area to the right of an upright line is known, nothing is
// left beyond it, all of it on its own side.
func TestBeside(t *testing.T) {
	square := []Point{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}
	area := func(pts []Point) float64 {
		sum := 0.0
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			sum += a.X*b.Y - b.X*a.Y
		}
		return sum / 2
	}
	for at, want := range map[float64]float64{-1: 100, 0: 100, 4: 60, 9.5: 5, 11: 0} {
		got := Beside(square, func(q Point) float64 { return q.X - at })
		if math.Abs(area(got)-want) > 1e-12 {
			t.Errorf("right of %g lie %g, want %g", at, area(got), want)
		}
	}
	corner := Beside(square, func(q Point) float64 { return q.X + q.Y - 15 })
	if want := []Point{{X: 10, Y: 5}, {X: 10, Y: 10}, {X: 5, Y: 10}}; !slices.Equal(corner, want) {
		t.Errorf("the corner is %v, want %v", corner, want)
	}
}
