package tile

import (
	"cmp"
	"math"
	"slices"
)

// orders lists the orders to lay the pieces in: as they are used at the bench, the tall
// ones first, and the wide ones first. What differs by less than a millimeter counts
// as equal, so that strips keep their order.
func orders(pieces []piece) [][]int {
	used := make([]int, len(pieces))
	for i := range used {
		used[i] = i
	}
	longer := func(a, b float64) int { return cmp.Compare(math.Round(b), math.Round(a)) }
	tall, wide := slices.Clone(used), slices.Clone(used)
	slices.SortStableFunc(tall, func(a, b int) int {
		p, q := pieces[a], pieces[b]
		return cmp.Or(longer(p.looks[0].high, q.looks[0].high), longer(p.looks[0].wide, q.looks[0].wide))
	})
	slices.SortStableFunc(wide, func(a, b int) int {
		p, q := pieces[a], pieces[b]
		return cmp.Or(longer(p.looks[0].wide, q.looks[0].wide), longer(p.looks[0].high, q.looks[0].high))
	})
	return [][]int{used, tall, wide}
}

// emptiestFirst orders the pieces by how little ink-bearing paper lies on their sheet, so
// that what found no company is laid first the next time.
func (p *plan) emptiestFirst() []int {
	filled := p.filled()
	order := make([]int, len(p.pieces))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(math.Round(1e5*filled[p.spots[a].sheet]), math.Round(1e5*filled[p.spots[b].sheet]))
	})
	return order
}

// sortSheets puts the sheets after the first ones in the order in which their
// patterns are used.
func (p *plan) sortSheets() {
	to := p.inUse()
	for i := range p.spots {
		p.spots[i].sheet = to[p.spots[i].sheet]
	}
}

// lowest adds to out, which is empty, the number of the first piece on each sheet: that of a
// sheet in use sooner is less. On the first sheets it is less than any, and rises.
func (p *plan) lowest(out []int) []int {
	for n := range p.count {
		if n < p.fronts {
			out = append(out, n-p.fronts)
		} else {
			out = append(out, math.MaxInt)
		}
	}
	for i := range p.spots {
		n := p.spots[i].sheet
		out[n] = min(out[n], i)
	}
	return out
}

// inUse is the place of each sheet in the order of use: by the first piece on it.
func (p *plan) inUse() []int {
	lowest, order := p.lowest(nil), make([]int, p.count)
	for i := range order {
		order[i] = i
	}
	behind := order[min(p.fronts, len(order)):]
	slices.SortStableFunc(behind, func(a, b int) int { return cmp.Compare(lowest[a], lowest[b]) })
	to := make([]int, p.count)
	for now, was := range order {
		to[was] = now
	}
	return to
}

// tidy lets strips of one size change places until they lie in their order, sheet after
// sheet and from the top down.
func (p *plan) tidy() {
	type size struct{ w, h float64 }
	for range 2 {
		alike, sizes := map[size][]int{}, []size{}
		for i, k := range p.pieces {
			if l := p.spots[i].look; k.grid.rows() == 1 && l.heads == over {
				s := size{math.Round(l.taken * 100), math.Round(l.high * 100)}
				if alike[s] == nil {
					sizes = append(sizes, s)
				}
				alike[s] = append(alike[s], i)
			}
		}
		for _, s := range sizes {
			p.sorted(alike[s])
		}
		p.sortSheets()
	}
}

// sorted lays a group of pieces at the places that they have, in their order. They stay where
// they are when one would then lie on another piece: beside a piece that leaves less of a sheet
// than a stub, something small may lie all the same.
func (p *plan) sorted(group []int) {
	was, spots := slices.Clone(p.spots), make([]spot, len(group))
	for n, i := range group {
		spots[n] = p.spots[i]
	}
	slices.SortStableFunc(spots, spot.compare)
	for n, i := range group {
		l := p.spots[i].look
		p.spots[i] = spots[n]
		p.spots[i].look = l
	}
	if slices.ContainsFunc(group, p.onOthers) {
		p.spots = was
	}
}

// onOthers reports whether piece i lies on another piece of its sheet, or too near to one.
func (p *plan) onOthers(i int) bool {
	return len(p.lyingIn(p.spots[i].sheet, p.spots[i].box())) > 1 // itself is one
}

// compare orders places as they are read: sheet after sheet, from the top down.
func (s spot) compare(t spot) int {
	if s.sheet != t.sheet || s.turned != t.turned {
		return cmp.Or(cmp.Compare(s.sheet, t.sheet), cmp.Compare(turns(s), turns(t)))
	}
	if s.turned { // read from the right: the first line is the leftmost
		return cmp.Or(cmp.Compare(s.at.X, t.at.X), cmp.Compare(s.at.Y, t.at.Y))
	}
	return cmp.Or(cmp.Compare(t.at.Y, s.at.Y), cmp.Compare(s.at.X, t.at.X))
}

// turns counts the quarter turns of a place.
func turns(s spot) int {
	if s.turned {
		return 1
	}
	return 0
}
