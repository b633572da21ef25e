package tile

import (
	"slices"
	"testing"

	"ribwright/geometry"
)

// manyLaid is a search of a hundred boxes that are laid one after the other.
func manyLaid() *search {
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
	return s
}

// TestRefilled: in a trial, what each sheet holds is what it would be counted to hold anew.
func TestRefilled(t *testing.T) {
	s := manyLaid()
	s.forget()
	filled := s.filled()
	for n := range 200 {
		if s.again(s.few(filled), func() bool {
			if now, want := s.refilled(nil, filled), s.filled(); !slices.Equal(now, want) {
				t.Fatalf("trial %d: %v, counted anew %v", n, now, want)
			}
			return n%3 == 0
		}) {
			filled = s.filled()
		}
	}
}

// TestFreeBoxes: whatever is laid, no free box of a sheet lies in another one, and none reaches
// into a piece.
func TestFreeBoxes(t *testing.T) {
	s := manyLaid()
	s.fill(100)
	for n, free := range s.sheets.free {
		for i, b := range free {
			for j, o := range free {
				if i != j && o.Holds(b.Min) && o.Holds(b.Max) {
					t.Errorf("sheet %d: free box %v lies in %v", n, b, o)
				}
			}
			for _, at := range s.spots {
				if at.sheet == n && at.box().Overlaps(b.Grow(-closeEnough)) {
					t.Errorf("sheet %d: free box %v reaches into a piece at %v", n, b, at.box())
				}
			}
		}
	}
}

// TestBarred: whatever a search has laid again, kept and undone, a piece goes in no free box
// of a sheet that it is said not to go on, in none of its looks; and some are said not to, or
// nothing would be passed over.
func TestBarred(t *testing.T) {
	s := manyLaid()
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
