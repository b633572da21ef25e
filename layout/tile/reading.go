package tile

import (
	"slices"

	"ribwright/geometry"
)

// follows reports whether a box is read after another one on its sheet: it lies to the right
// of it, or under it.
func follows(later, sooner geometry.Box) bool {
	return later.Min.X >= sooner.Max.X || later.Max.Y <= sooner.Min.Y
}

// misplaced is how many sheets more for a pattern a piece out of order is worth. Our own choice.
const misplaced = 3

// untidy counts what makes pieces slow to find, in sheets more for a pattern.
func (p plan) untidy() int { return p.scattered() + misplaced*p.disorder() }

// disorder counts the pieces that lie on a sheet before that of the piece before them, and
// the pairs on one sheet that are not read in their order, each pattern for itself.
func (p *plan) disorder() (n int) {
	on := p.inUse()
	for j := range p.pieces {
		for i := j - 1; i >= 0 && p.pieces[i].drawing == p.pieces[j].drawing; i-- {
			a, b := p.spots[i].sheet, p.spots[j].sheet
			if i == j-1 && on[b] < on[a] || a == b && !follows(p.spots[j].box(), p.spots[i].box()) {
				n++
			}
		}
	}
	return n
}

// inOrder lets pieces of one pattern on a sheet, the later one first, change places where they
// have room for that or lie beside each other.
func (p *plan) inOrder() {
	for n := p.disorder(); n > 0; {
		was := n
		for j := range p.pieces {
			for i := j - 1; i >= 0 && p.pieces[i].drawing == p.pieces[j].drawing; i-- {
				a, b := p.spots[i], p.spots[j]
				if a.sheet != b.sheet || follows(b.box(), a.box()) || !p.changed(i, j) {
					continue
				}
				if now := p.disorder(); now < n {
					n = now
				} else {
					p.spots[i], p.spots[j] = a, b
				}
			}
		}
		if n == was {
			return
		}
	}
}

// changed lays each of two pieces of a sheet where the other lies, where they have room for it, or both
// the other way round in the box round them, and reports whether they have that for themselves.
func (p *plan) changed(first, second int) bool {
	a, b := &p.spots[first], &p.spots[second]
	if p.exchanged(first, second) {
		return true
	}
	both := a.box().Union(b.box())
	for i := range p.spots {
		if s := &p.spots[i]; i != first && i != second && s.sheet == a.sheet && s.box().Grow(pieceGap-closeEnough).Overlaps(both) {
			return false
		}
	}
	stacked := a.box().Max.Y <= b.box().Min.Y
	for i, s := range []*spot{a, b} {
		w, h := s.box().W(), s.box().H()
		s.at = geometry.Pt(both.Min.X, both.Max.Y-h)
		if i == 1 && stacked {
			s.at.Y = both.Min.Y
		} else if i == 1 {
			s.at.X = both.Max.X - w
		}
	}
	return true
}

// exchanged lays each of two pieces of a sheet with its upper left corner where the other's is,
// if both have room there.
func (p *plan) exchanged(first, second int) bool {
	a, b := p.spots[first], p.spots[second]
	to := func(s, o spot) spot {
		s.at = geometry.Pt(o.box().Min.X, o.box().Max.Y-s.box().H())
		return s
	}
	x, y := to(a, b), to(b, a)
	free := func(s spot) bool {
		in := slices.ContainsFunc(p.blank(s.sheet), func(r geometry.Box) bool {
			r = r.Grow(closeEnough)
			return r.Holds(s.box().Min) && r.Holds(s.box().Max)
		})
		for i := range p.spots {
			if o := p.spots[i]; i != first && i != second && o.sheet == s.sheet && o.box().Grow(pieceGap-closeEnough).Overlaps(s.box()) {
				return false
			}
		}
		return in
	}
	if x.box().Grow(pieceGap-closeEnough).Overlaps(y.box()) || !free(x) || !free(y) {
		return false
	}
	p.spots[first], p.spots[second] = x, y
	return true
}
