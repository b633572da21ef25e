package tile

import (
	"math"
	"testing"

	"ribwright/geometry"
)

// TestLapped tries every way to cut a board on lines 5 mm apart into rows and columns of
// tiles that go on a sheet: none has laps of less area than the bound says, and of a strip
// the best has as much.
func TestLapped(t *testing.T) {
	const step, long = 5, 40
	for w := step; w <= 85; w += step {
		for h := step; h <= 85; h += step {
			bound := lapped([]geometry.Box{geometry.Rect(0, 0, float64(w), float64(h))}, long)
			least := leastShown(w, step, long)*leastShown(h, step, long) - float64(w*h)
			if least < bound-1e-9 {
				t.Errorf("a board of %d x %d mm has laps of %.0f mm2, under the bound of %.0f", w, h, least, bound)
			}
			if h <= long && math.Abs(least-bound) > 1e-9 {
				t.Errorf("a strip of %d x %d mm has laps of %.0f mm2 at the least, the bound says %.0f", w, h, least, bound)
			}
		}
	}
}

// leastShown is the least that the parts of a length show together, of all ways to divide it.
func leastShown(length, step, long int) float64 {
	least := math.Inf(1)
	for _, cuts := range divisions(length, step, long) {
		sum := 0.0
		for i := 1; i < len(cuts); i++ {
			sum += shownLength(cuts, i)
		}
		least = math.Min(least, sum)
	}
	return least
}

// divisions are all ways to divide a length on lines a step apart, so that each part goes on
// a sheet with its laps.
func divisions(length, step, long int) [][]int {
	var out [][]int
	var from func(cuts []int)
	from = func(cuts []int) {
		for to := cuts[len(cuts)-1] + step; to <= length; to += step {
			next := append(append([]int(nil), cuts...), to)
			shown := to - cuts[len(cuts)-1]
			if len(cuts) > 1 {
				shown += lap
			}
			if to < length {
				shown += lap
			}
			switch {
			case shown > long:
			case to == length:
				out = append(out, next)
			default:
				from(next)
			}
		}
	}
	from([]int{0})
	return out
}

// shownLength is what a part shows with its laps.
func shownLength(cuts []int, i int) float64 {
	out := float64(cuts[i] - cuts[i-1])
	if i > 1 {
		out += lap
	}
	if i < len(cuts)-1 {
		out += lap
	}
	return out
}

// TestLappedHole: a pattern with a gap has joints on each side for itself.
func TestLappedHole(t *testing.T) {
	apart := []geometry.Box{geometry.Rect(0, 0, 50, 10), geometry.Rect(200, 0, 250, 10)}
	if got := lapped(apart, 60); got != 0 {
		t.Errorf("two boards that go on sheets have laps of %.0f mm2", got)
	}
	whole := []geometry.Box{geometry.Rect(0, 0, 50, 10), geometry.Rect(50, 0, 100, 10)}
	if got := lapped(whole, 60); got != 2*lap*10 {
		t.Errorf("one board in two tiles has laps of %.0f mm2, want %.0f", got, 2*lap*10)
	}
}
