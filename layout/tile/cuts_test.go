package tile

import (
	"math"
	"testing"

	"ribwright/layout"
)

// TestCuts checks counts against the arithmetic n = ceil(length / most), with
// the awkward lengths that cost other programs an empty sheet: exactly one
// frame, and one frame plus rounding noise from inches.
func TestCuts(t *testing.T) {
	tests := []struct {
		name         string
		lo, hi, most float64
		keep         []layout.Span
		pieces       int
	}{
		{"fits", 0, 100, 200, nil, 1},
		{"exactly one", 0, 200, 200, nil, 1},
		{"one and noise", 0, 200.0000001, 200, nil, 1},
		{"inch noise", 0, 7.874015748 * 25.4, 200, nil, 1},
		{"just over", 0, 201, 200, nil, 2},
		{"five metres", -2500, 2500, 233.4, nil, 22},
		{"nothing", 5, 5, 200, nil, 1},
		{"all to be kept whole", 0, 1000, 200, []layout.Span{{From: -10, To: 1010}}, 5},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Cuts(tt.lo, tt.hi, tt.most, tt.keep)
			if len(got)-1 != tt.pieces {
				t.Errorf("%d pieces %v, want %d", len(got)-1, got, tt.pieces)
			}
			rejoin(t, got, tt.lo, tt.hi, tt.most)
		})
	}
}

// TestCutsMove checks that a joint moves out of a span when it can.
func TestCutsMove(t *testing.T) {
	got := Cuts(0, 400, 250, []layout.Span{{From: 180, To: 215}})
	if len(got) != 3 || got[1] != 215 {
		t.Errorf("joints %v, want the middle one at 215, the nearest edge of the span", got)
	}
}

// rejoin checks that pieces run from lo to hi without gap, none longer than most.
func rejoin(t *testing.T, cuts []float64, lo, hi, most float64) {
	t.Helper()
	if cuts[0] != lo || cuts[len(cuts)-1] != hi {
		t.Fatalf("joints %v do not span %v to %v", cuts, lo, hi)
	}
	for i := 1; i < len(cuts); i++ {
		w := cuts[i] - cuts[i-1]
		if w > most+closeEnough || (w <= 0 && hi > lo) {
			t.Fatalf("piece %d is %v mm long, most %v: %v", i, w, most, cuts)
		}
	}
}

// FuzzCuts cuts stretches of any length with any spans to keep whole: the pieces
// must rejoin to the whole and be as few as can be.
func FuzzCuts(f *testing.F) {
	f.Add(-1780.0, 3560.0, 233.4, 100.0, 40.0)
	f.Add(0.0, 200.0000001, 200.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, lo, length, most, pitch, wide float64) {
		for _, v := range []float64{lo, length, most, pitch, wide} {
			if math.IsNaN(v) || math.Abs(v) > 1e5 {
				t.Skip()
			}
		}
		if length < 0 || most < 20 || length/most > 500 {
			t.Skip()
		}
		var keep []layout.Span
		if pitch > 5 {
			for x := lo; x < lo+length && len(keep) < 500; x += pitch {
				keep = append(keep, layout.Span{From: x, To: x + math.Abs(wide)})
			}
		}
		hi := lo + length
		got := Cuts(lo, hi, most, keep)
		rejoin(t, got, lo, hi, most)
		if want := max(1, int(math.Ceil((hi-lo-closeEnough)/most))); len(got)-1 != want {
			t.Fatalf("%d pieces, want %d", len(got)-1, want)
		}
	})
}
