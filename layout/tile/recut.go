package tile

import (
	"math"
	"slices"
)

// begun lays the pieces that one way to cut gives, the same for all patterns as far as they
// have it, and takes the way that begins best. The headings of a way are set when it leads
// with the looks that its pieces likely have.
func (p plan) begun(set Set, ways [][]option) plan {
	begin := func(how cutting, sure bool) plan {
		q := p
		q.pieces = nil
		for _, all := range ways {
			j := max(0, slices.IndexFunc(all, func(o option) bool { return len(o.pieces) > 0 && o.pieces[0].cutting == how }))
			if sure {
				all[j] = p.sure(all[j])
			}
			q.pieces = append(q.pieces, all[j].pieces...)
		}
		return q.packed(set)
	}
	type start struct {
		plan
		how  cutting
		sure bool
	}
	var all []start
	for _, how := range []cutting{{}, {first, first, false}, {even, even, true}, {first, first, true}} {
		all = append(all, start{begin(how, false), how, false})
	}
	for {
		lead := &all[0]
		for i := range all {
			if all[i].better(lead.plan) {
				lead = &all[i]
			}
		}
		if lead.sure {
			return lead.plan
		}
		lead.plan, lead.sure = begin(lead.how, true), true
	}
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

// farBehind is how many sheets more than a plan has one with another way to cut may take at first:
// of those that took more, a few in a hundred came to be better once laid again.
const farBehind = 1

// cutBetter cuts one pattern after the other in another way, as long as that is better. It
// ends where each way has been tried since the plan was last changed: tried again, it would
// give the same, and so would one whose pieces look like those of another.
func (p plan) cutBetter(ways [][]option) plan {
	all, idle := 0, 0 // ways, and how many of them were tried since
	tried := make([][]option, len(ways))
	for i := range ways {
		all += len(ways[i])
	}
	s, spare := &search{}, &search{}
	better := func(i int, o option) bool {
		tried[i] = append(tried[i], o)
		return p.with(i, o, s).better(p)
	}
	for cost := math.Inf(1); p.cost() < cost-1e-9; {
		cost = p.cost()
		for i := range ways {
			for j := range ways[i] {
				if idle++; idle > all {
					return p
				}
				o := &ways[i][j]
				if slices.ContainsFunc(tried[i], o.alike) || !better(i, *o) {
					continue
				}
				if !o.sure {
					if *o = p.sure(*o); !better(i, *o) {
						continue
					}
				}
				p, s, spare, idle = s.plan, spare, s, 0 // the plan keeps what it stands in
				for k := range tried {
					tried[k] = tried[k][:0]
				}
			}
		}
	}
	return p
}

// alike reports whether the pieces of two options of a pattern are laid and joined alike.
func (o option) alike(q option) bool {
	return joined(o.pieces) == joined(q.pieces) && slices.EqualFunc(o.pieces, q.pieces, func(a, b piece) bool { return slices.Equal(a.looks, b.looks) })
}

// with is the plan with one of its patterns in other pieces, its sheets laid again by a search
// that may have served before: the plan stands in it.
func (p plan) with(drawing int, o option, s *search) plan {
	d := &p.drawings[drawing]
	q, fresh := p, s.on[:0]
	q.pieces, q.spots = s.pieces[:0], s.spots[:0]
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
	s.begin(q)
	for _, i := range s.bySize(fresh) {
		s.spots[i] = s.sheets.lay(s.pieces[i].looks)
	}
	s.count = len(s.sheets.free)
	s.now = s.dropEmpty(s.filledIn(s.now))
	if s.count <= p.count+farBehind {
		s.fill(recutSearches)
	}
	return s.plan
}
