package report

import (
	"math"
	"strings"
	"testing"
)

// letters is a terminal's room: a letter is as wide as any other.
func letters(wide float64) Room {
	return Room{Wide: wide, Gutter: 2, Least: 10,
		Of: func(words string) float64 { return float64(len(words)) },
		Lines: func(words string, wide float64) int {
			n, at := 1, 0.0
			for _, w := range strings.Fields(words) {
				if at > 0 && at+1+float64(len(w)) > wide {
					n, at = n+1, 0
				}
				at += float64(len(w)) + 1
			}
			return n
		}}
}

// TestColumnsShare: columns of words that are too wide together share the room when they are
// alike; one of many long cells takes it from one with a single long cell; together with their
// gutters they fill the room.
func TestColumnsShare(t *testing.T) {
	long := strings.Repeat("words ", 30)
	alike := Titled("").Words("a", "b").Filled(long, long, long, long)
	wide, ok := alike.Widths(letters(80))
	if !ok || math.Abs(wide[0]-wide[1]) > 12 || math.Abs(wide[0]+wide[1]+2-80) > 1e-6 {
		t.Errorf("alike: %v, %v", wide, ok)
	}
	few := Titled("").Words("a", "b")
	few.Row(strings.Repeat("one ", 12), "short")
	for range 9 {
		few.Row("x", long)
	}
	wide, ok = few.Widths(letters(80))
	even := few.lines([]float64{39, 39}, letters(80))
	if got := few.lines(wide, letters(80)); !ok || wide[1] < 2*wide[0] || got > even*3/4 {
		t.Errorf("one long cell beside many: %v, %d lines, %d when shared evenly", wide, got, even)
	}
}
