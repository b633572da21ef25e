package tile

import (
	"testing"

	"ribwright/geometry"
)

// TestBarred: whatever a search has laid again, kept and undone, a piece goes in no free box
// of a sheet that it is said not to go on, in none of its looks; and some are said not to, or
// nothing would be passed over.
func TestBarred(t *testing.T) {
	p := plan{room: geometry.Rect(0, 0, 250, 180)}
	for i := range 120 {
		wide, high := 30+float64(i*37%90), 25+float64(i*53%70)
		p.pieces = append(p.pieces, piece{looks: []look{{wide: wide, taken: wide, high: high}, {wide: wide - 8, taken: wide - 8, high: high + 12}}})
		p.spots = append(p.spots, spot{sheet: -1})
	}
	s := p.search()
	for i := range s.pieces {
		s.spots[i] = s.sheets.lay(s.pieces[i].looks)
	}
	s.count = len(s.sheets.free)
	barred := 0
	for range 60 {
		s.fill(20)
		for n := range s.count {
			for i, k := range s.pieces {
				if !s.barred[n*len(s.pieces)+i] {
					continue
				}
				barred++
				for _, f := range s.sheets.free[n] {
					for _, l := range k.looks {
						if l.taken <= f.W() && l.high <= f.H() || l.high <= f.W() && l.taken <= f.H() {
							t.Fatalf("piece %d of %.0f x %.0f mm goes on sheet %d, which has %.0f x %.0f mm free", i, l.taken, l.high, n, f.W(), f.H())
						}
					}
				}
			}
		}
	}
	if barred == 0 {
		t.Error("nothing is remembered")
	}
	for i, a := range s.spots {
		for j, b := range s.spots[:i] {
			if a.sheet == b.sheet && a.box().Grow(-closeEnough).Overlaps(b.box()) {
				t.Errorf("pieces %d and %d lie on one another", i, j)
			}
		}
	}
}
