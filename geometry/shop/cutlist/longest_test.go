package cutlist

import (
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestLongest: where a design says how long sticks are that its builder can get, no board that
// is asked for has more sound wood, nothing is left without wood, and sticks that are longer
// are made of pieces; a length that no yard can miss changes nothing.
func TestLongest(t *testing.T) {
	boards := func(longest float64) *Plan {
		f := frametest.Shipped(t, "brook", func(d *design.Design) { d.Stock.Longest = measure.Length(longest) })
		return Heat{}.Quick(f)
	}
	for _, longest := range []float64{2000, 2400, 3000} {
		p := boards(longest)
		for _, m := range p.Missing() {
			t.Errorf("%g mm: %s: %s", longest, p.Sticks[m.Stick].Part, m.Why)
		}
		for _, w := range p.Woods {
			for _, b := range w.Boards {
				if b.Board.Clear() > longest {
					t.Errorf("%g mm: a board of %s is %g mm long", longest, w.Species, b.Board.Length)
				}
			}
		}
		for i, s := range p.Sticks {
			if s.Length > longest && len(p.Cuttings[i].Pieces) < 2 {
				t.Errorf("%g mm: %s of %.0f mm is in one piece", longest, s.Part, s.Length)
			}
		}
	}
	for _, pair := range [][2]int{{len(soldLong(0)), 6}, {len(soldLong(12000)), 6}, {len(soldLong(3000)), 2}, {len(soldLong(1000)), 1}, {len(soldLong(3500)), 3}} {
		if pair[0] != pair[1] {
			t.Errorf("%d lengths are sold, want %d", pair[0], pair[1])
		}
	}
}
