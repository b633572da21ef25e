package tile

import (
	"math"
	"slices"
)

// begun lays the pieces that one way to cut gives, the same for all patterns as far as they
// have it, and takes the way that begins best.
func (p plan) begun(set Set, ways [][]option) plan {
	var best plan
	for _, how := range []cutting{{}, {first, first, false}, {even, even, true}, {first, first, true}} {
		q := p
		q.pieces = nil
		for _, all := range ways {
			j := max(0, slices.IndexFunc(all, func(o option) bool { return len(o.pieces) > 0 && o.pieces[0].cutting == how }))
			all[j] = p.sure(all[j])
			q.pieces = append(q.pieces, all[j].pieces...)
		}
		if q = q.packed(set); q.better(best) {
			best = q
		}
	}
	return best
}

// better reports whether a plan costs less than another, or as much and fills its sheets less
// evenly, so that one of them is nearer to being empty.
func (p plan) better(q plan) bool {
	if q.count == 0 || math.Abs(p.cost()-q.cost()) > 1e-9 {
		return q.count == 0 || p.cost() < q.cost()
	}
	return uneven(p.filled()) > uneven(q.filled())+1e-9
}

// recutSearches is how often sheets are laid again before another way to cut is judged.
const recutSearches = 50

// cutBetter cuts one pattern after the other in another way, as long as that is better. It
// ends where each way has been tried since the plan was last changed: tried again, it would
// give the same.
func (p plan) cutBetter(ways [][]option) plan {
	all, idle := 0, 0 // ways, and how many of them were tried since
	for i := range ways {
		all += len(ways[i])
	}
	for cost := math.Inf(1); p.cost() < cost-1e-9; {
		cost = p.cost()
		for i := range ways {
			for j := range ways[i] {
				if idle++; idle > all {
					return p
				}
				q := p.with(i, ways[i][j])
				if !q.better(p) {
					continue
				}
				if !ways[i][j].sure {
					ways[i][j] = p.sure(ways[i][j])
					if q = p.with(i, ways[i][j]); !q.better(p) {
						continue
					}
				}
				p, idle = q, 0
			}
		}
	}
	return p
}

// with is the plan with one of its patterns in other pieces, its sheets laid again.
func (p plan) with(drawing int, o option) plan {
	d := &p.drawings[drawing]
	q := p
	most := len(p.pieces) + len(o.pieces)
	q.pieces, q.spots = make([]piece, 0, most), make([]spot, 0, most)
	fresh := make([]int, 0, len(o.pieces))
	put := func() {
		for _, k := range o.pieces {
			fresh = append(fresh, len(q.pieces))
			q.pieces, q.spots = append(q.pieces, k), append(q.spots, spot{sheet: -1})
		}
	}
	done := false
	for i := range p.pieces {
		if p.pieces[i].drawing != d {
			q.pieces, q.spots = append(q.pieces, p.pieces[i]), append(q.spots, p.spots[i])
		} else if !done {
			put()
			done = true
		}
	}
	s := q.search()
	for _, i := range s.bySize(fresh) {
		s.spots[i] = s.sheets.lay(s.pieces[i].looks)
	}
	s.count = len(s.sheets.free)
	s.dropEmpty()
	s.fill(recutSearches)
	return s.plan
}
