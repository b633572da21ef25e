package tile

import (
	"cmp"
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
func (p *plan) untidy() int { return p.scattered() + misplaced*p.disorder() }

// disorder counts the pieces that lie on a sheet before that of the piece before them, and
// the pairs on one sheet that are not read in their order, each pattern for itself.
func (p *plan) disorder() (n int) {
	var room [64]int
	on := p.lowest(room[:0])
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

// inOrder lets pieces of one pattern on a sheet, the later one first, change places.
func (p *plan) inOrder() {
	for n := p.disorder(); n > 0; {
		was := n
		for j := range p.pieces {
			for i := j - 1; i >= 0 && p.pieces[i].drawing == p.pieces[j].drawing; i-- {
				if p.spots[i].sheet != p.spots[j].sheet || follows(p.spots[j].box(), p.spots[i].box()) {
					continue
				}
				before := slices.Clone(p.spots)
				if p.changed(i, j) && p.disorder() < n {
					n = p.disorder()
				} else {
					p.spots = before
				}
			}
		}
		if n == was {
			return
		}
	}
}

// changed lays two pieces of a sheet the other way round in the box round both and all that lies
// partly in it, and reports whether that can be: all in it stand in one column or one row, which
// stays one.
func (p *plan) changed(first, second int) bool {
	both := p.spots[first].box().Union(p.spots[second].box())
	in := p.lyingIn(p.spots[first].sheet, both)
	for n := 0; n < len(in); {
		n = len(in)
		for _, i := range in {
			both = both.Union(p.spots[i].box())
		}
		in = p.lyingIn(p.spots[first].sheet, both)
	}
	return p.turnedRound(in, first, second, func(b geometry.Box) (from, to float64) { return -b.Max.Y, -b.Min.Y }, func(s *spot, from float64) { s.at.Y = -from - s.box().H() }) ||
		p.turnedRound(in, first, second, func(b geometry.Box) (from, to float64) { return b.Min.X, b.Max.X }, func(s *spot, from float64) { s.at.X = from })
}

// lyingIn lists the pieces of a sheet that lie in a box, wholly or in part.
func (p *plan) lyingIn(sheet int, box geometry.Box) (in []int) {
	for i, s := range p.spots {
		if s.sheet == sheet && s.box().Grow(pieceGap-closeEnough).Overlaps(box) {
			in = append(in, i)
		}
	}
	return in
}

// turnedRound lets two pieces of a row change places, along a way on which a box reaches from and
// to, and on which lay puts a piece; false where the pieces stand in no row along it.
func (p *plan) turnedRound(in []int, first, second int, reach func(geometry.Box) (from, to float64), lay func(s *spot, from float64)) bool {
	slices.SortFunc(in, func(i, j int) int {
		a, _ := reach(p.spots[i].box())
		b, _ := reach(p.spots[j].box())
		return cmp.Compare(a, b)
	})
	at, end := reach(p.spots[in[0]].box())
	for _, i := range in[1:] {
		from, to := reach(p.spots[i].box())
		if from < end-closeEnough {
			return false
		}
		end = to
	}
	a, b := slices.Index(in, first), slices.Index(in, second)
	in[a], in[b] = second, first
	for _, i := range in {
		lay(&p.spots[i], at)
		_, at = reach(p.spots[i].box())
		at += pieceGap
	}
	return true
}
