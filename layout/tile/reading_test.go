package tile

import (
	"testing"

	"ribwright/geometry"
	"ribwright/layout"
)

// TestInOrder: pieces 1 and 2 of a strip lie the wrong way round on a sheet, over each other
// or side by side; they change places unless what lies in their way stands in no column or row
// with them, keep off each other and stay in the room of all. A pattern's piece on a sheet before
// is counted, and stays.
func TestInOrder(t *testing.T) {
	at := func(sheet int, x, y, w, h float64) spot {
		return spot{sheet: sheet, at: geometry.Pt(x, y), look: look{wide: w, high: h}}
	}
	for name, c := range map[string]struct {
		one, two, other spot
		left            int
	}{
		"over each other":  {at(0, 0, 0, 100, 30), at(0, 0, 40, 80, 50), at(0, 0, 100, 50, 50), 0},
		"beside":           {at(0, 60, 0, 30, 80), at(0, 0, 10, 50, 60), at(0, 0, 100, 50, 50), 0},
		"in their order":   {at(0, 0, 0, 50, 30), at(0, 60, 0, 50, 30), at(0, 0, 100, 50, 50), 0},
		"in one column":    {at(0, 0, 0, 100, 30), at(0, 0, 80, 100, 40), at(0, 0, 40, 100, 30), 0},
		"a wider between":  {at(0, 0, 0, 100, 30), at(0, 0, 80, 100, 40), at(0, 0, 40, 104, 30), 0},
		"with one between": {at(0, 0, 0, 100, 30), at(0, 0, 40, 60, 50), at(0, 70, 40, 30, 50), 1},
		"on another sheet": {at(1, 0, 0, 100, 30), at(0, 0, 0, 60, 50), at(0, 0, 100, 50, 50), 1},
	} {
		all := []layout.Drawing{{Name: "strip"}, {Name: "other"}}
		p := plan{count: 2, drawings: all, spots: []spot{c.other, c.one, c.two}}
		for _, d := range []int{1, 0, 0} {
			p.pieces = append(p.pieces, piece{drawing: &all[d]})
		}
		p.inOrder()
		if n := p.disorder(); n != c.left {
			t.Errorf("%s: %d pieces out of order, want %d", name, n, c.left)
		}
		for i, s := range p.spots {
			if b := s.box(); s.sheet == 0 && !geometry.Rect(0, 0, 110, 150).Holds(b.Max) || b.Min.X < 0 || b.Min.Y < 0 {
				t.Errorf("%s: a piece lies at %v", name, b)
			}
			for _, o := range p.spots[:i] {
				if o.sheet == s.sheet && s.box().Overlaps(o.box()) {
					t.Errorf("%s: pieces lie on each other at %v and %v", name, s.box(), o.box())
				}
			}
		}
	}
}

// TestTidyApart: a strip's pieces 1 and 2 lie the wrong way round, on two sheets, as places of
// one size: they change places, but not where a small piece lies in what the shorter of the two
// leaves beside it and the longer one would lie on that.
func TestTidyApart(t *testing.T) {
	at := func(sheet int, x, y, w, h float64) spot {
		return spot{sheet: sheet, at: geometry.Pt(x, y), look: look{wide: w, high: h, taken: 180}}
	}
	for name, c := range map[string]struct {
		small spot
		sheet int // of piece 1 afterwards
	}{
		"room": {at(1, 0, 40, 20, 30), 0},
		"none": {at(0, 150, 0, 20, 30), 1},
	} {
		all := []layout.Drawing{{Name: "strip"}, {Name: "other"}}
		p := plan{count: 2, drawings: all, spots: []spot{at(1, 0, 0, 179, 30), at(0, 0, 0, 147, 30), c.small}}
		for _, d := range []int{0, 0, 1} {
			p.pieces = append(p.pieces, piece{drawing: &all[d]})
		}
		p.sorted([]int{0, 1})
		if p.spots[0].sheet != c.sheet {
			t.Errorf("%s: piece 1 lies on sheet %d, want %d", name, p.spots[0].sheet, c.sheet)
		}
		for i := range p.spots {
			if p.onOthers(i) {
				t.Errorf("%s: piece %d lies on another", name, i+1)
			}
		}
	}
}
