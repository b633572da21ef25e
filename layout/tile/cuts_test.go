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
			got := Cuts(tt.lo, tt.hi, tt.most, tt.keep, nil, even)
			if len(got)-1 != tt.pieces {
				t.Errorf("%d pieces %v, want %d", len(got)-1, got, tt.pieces)
			}
			rejoin(t, got, tt.lo, tt.hi, tt.most)
		})
	}
}

// TestCutsMove checks that joints step round spans: always round those that must
// stay whole, round the others when it costs no piece.
func TestCutsMove(t *testing.T) {
	span := func(from, to float64) []layout.Span { return []layout.Span{{From: from, To: to}} }
	tests := []struct {
		name         string
		hi, most     float64
		must, should []layout.Span
		want         []float64
	}{
		{"to the nearest edge", 400, 250, nil, span(180, 215), []float64{0, 215, 400}},
		{"must, with room", 400, 250, span(180, 215), nil, []float64{0, 215, 400}},
		{"should, without room", 400, 205, nil, span(190, 215), []float64{0, 195, 400}},
		{"must, for one piece more", 400, 205, span(190, 215), nil, []float64{0, 133.333, 266.667, 400}},
		{"both", 400, 250, span(190, 210), span(170, 195), []float64{0, 210, 400}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Cuts(0, tt.hi, tt.most, tt.must, tt.should, even)
			if len(got) != len(tt.want) {
				t.Fatalf("joints %v, want %v", got, tt.want)
			}
			for i := range got {
				if math.Abs(got[i]-tt.want[i]) > 0.01 {
					t.Errorf("joints %v, want %v", got, tt.want)
				}
			}
		})
	}
}

// TestLongCuts checks that long pieces come first: 500 mm in pieces of 220 at the
// most are 220, 220 and 60; a rest too short to tape in takes from the one before.
func TestLongCuts(t *testing.T) {
	for rest, want := range map[float64][]float64{60: {0, 220, 440, 500}, 10: {0, 220, 406, 450}} {
		got := Cuts(0, 440+rest, 220, nil, nil, first)
		if len(got) != 4 {
			t.Fatalf("joints %v", got)
		}
		for i := range got {
			if math.Abs(got[i]-want[i]) > 2.5 { // joints are tried every 2.2 mm
				t.Errorf("joints %v, want %v", got, want)
				break
			}
		}
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
	f.Add(-1780.0, 3560.0, 233.4, 100.0, 40.0, uint8(even))
	f.Add(0.0, 200.0000001, 200.0, 0.0, 0.0, uint8(first))
	f.Add(0.0, 212.4, 211.0, 41.0, 143.0, uint8(even)) // six pieces would keep all whole, and be slivers
	f.Fuzz(func(t *testing.T, lo, length, most, pitch, wide float64, by uint8) {
		for _, v := range []float64{lo, length, most, pitch, wide} {
			if math.IsNaN(v) || math.Abs(v) > 1e5 {
				t.Skip()
			}
		}
		if length < 0 || most < 20 || length/most > 100 { // 100 sheets in a row is a boat of 20 meters
			t.Skip()
		}
		var keep []layout.Span
		if pitch > 5 {
			for x := lo; x < lo+length && len(keep) < 200; x += pitch {
				keep = append(keep, layout.Span{From: x, To: x + math.Abs(wide)})
			}
		}
		hi := lo + length
		got := Cuts(lo, hi, most, keep, nil, wish(by%3))
		rejoin(t, got, lo, hi, most)
		least := max(1, int(math.Ceil((hi-lo-closeEnough)/most)))
		if n := len(got) - 1; n < least || n > least+dearest {
			t.Fatalf("%d pieces, want %d or up to %d more", n, least, dearest)
		}
		if n := len(Cuts(lo, hi, most, nil, keep, wish(by%3))) - 1; n != least {
			t.Fatalf("%d pieces although nothing must stay whole, want %d", n, least)
		}
	})
}
