package tile

import (
	"math"

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
// are alike or lie beside each other.
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

// alike reports whether two boxes are of one size.
func alike(a, b geometry.Box) bool {
	return math.Abs(a.W()-b.W()) < closeEnough && math.Abs(a.H()-b.H()) < closeEnough
}

// changed lays each of two pieces of a sheet where the other lies, where they are alike, or both
// the other way round in the box round them, and reports whether they have that for themselves.
func (p *plan) changed(first, second int) bool {
	a, b := &p.spots[first], &p.spots[second]
	if alike(a.box(), b.box()) && a.turned == b.turned {
		a.at, b.at = b.at, a.at
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
