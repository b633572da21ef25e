package pack

import (
	"cmp"
	"math"
	"slices"
)

// How a search goes on: the rectangle that a first nest is looked for in, as a share of
// the parts' area; by how much the rectangle is made smaller at a time while exploring;
// the share of all steps that is kept for pressing at the end, and the first and last
// step of that. Our own choices, near the published ones.
const (
	opening             = 1.8
	boldest             = 0.06
	wider               = 1.1
	smaller             = 0.01
	pressing            = 5
	patience            = 60
	hasty               = 15
	firstPress, endOfIt = 0.002, 0.00002
)

// start lays the parts one after the other, the largest first, where they overlap least,
// and pushes them apart. The rectangle is made larger until that is done, as far as the
// room goes.
func (s *search) start(until int) bool {
	for share := opening; ; share *= wider {
		whole := s.opened(share)
		if s.strew() && s.separate(40, 2, until) {
			s.best.copied(&s.now)
			return true
		}
		if whole || s.done >= until {
			return false
		}
	}
}

// opened gives the rectangle the share of the parts' area, and reports whether that is
// all of the room.
func (s *search) opened(share float64) bool {
	area := s.area * share
	s.now.h = s.room.H
	if !s.room.Strip {
		s.now.h = math.Min(s.room.H, math.Max(math.Sqrt(area), area/s.room.W))
	}
	s.now.h = math.Min(math.Max(s.now.h, s.tallest()), s.room.H)
	s.now.w = math.Min(math.Max(area/s.now.h, s.widest()), s.room.W)
	return s.now.w == s.room.W && s.now.h == s.room.H
}

func (s *search) tallest() float64 {
	return s.longest(func(f frame) float64 { return f.y1 - f.y0 })
}
func (s *search) widest() float64 {
	return s.longest(func(f frame) float64 { return f.x1 - f.x0 })
}

// longest is the least that a side of the rectangle must have, so that every part has a
// turn for it.
func (s *search) longest(side func(frame) float64) float64 {
	most := 0.0
	for _, k := range s.kinds {
		least := math.Inf(1)
		for _, t := range k.turns {
			least = math.Min(least, side(k.at[t]))
		}
		most = math.Max(most, least)
	}
	return most
}

// strew lays the parts anew, the largest first, each where it overlaps least what lies
// already. It reports whether all have a turn for the rectangle.
func (s *search) strew() bool {
	parts := s.now.parts
	for i := range parts {
		parts[i].frame = frame{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
	}
	for k := range s.weight {
		s.weight[k] = 1
	}
	for _, i := range s.largest() {
		if !s.dropped(i) {
			return false
		}
		s.seek(i, 4*anywhere)
	}
	return true
}

// dropped lays a part somewhere at a turn that the rectangle has room for.
func (s *search) dropped(i int) bool {
	k := s.now.parts[i].kind
	turns := s.kinds[k].turns
	first := s.chance.IntN(len(turns))
	x, y := s.chance.Float64()*s.now.w, s.chance.Float64()*s.now.h
	for n := range turns {
		if p, ok := s.laid(k, turns[(first+n)%len(turns)], x, y); ok {
			s.now.parts[i] = p
			return true
		}
	}
	return false
}

// largest is the parts in the order of their areas.
func (s *search) largest() []int {
	out := make([]int, len(s.now.parts))
	for i := range out {
		out[i] = i
	}
	area := func(i int) float64 { return s.kinds[s.now.parts[i].kind].area }
	slices.SortStableFunc(out, func(i, k int) int { return cmp.Compare(area(k), area(i)) })
	return out
}

// shrunk makes the state the best one in a rectangle smaller by a share, on the side whose
// turn it is: what lies beyond a line across it moves up. It reports whether all parts
// have room.
func (s *search) shrunk(share float64) bool {
	s.now.copied(&s.best)
	if s.room.Strip || !s.across {
		less := s.now.w * share
		s.now.w -= less
		return s.moved(s.chance.Float64()*s.best.w, math.Inf(1), less, 0)
	}
	less := s.now.h * share
	s.now.h -= less
	return s.moved(math.Inf(1), s.chance.Float64()*s.best.h, 0, less)
}

// moved moves what has its middle beyond a line, and all parts into the rectangle.
func (s *search) moved(pastX, pastY, left, down float64) bool {
	for i, p := range s.now.parts {
		x, y := p.x0, p.y0
		if (p.x0+p.x1)/2 > pastX {
			x -= left
		}
		if (p.y0+p.y1)/2 > pastY {
			y -= down
		}
		q, ok := s.laid(p.kind, p.turn, x, y)
		if !ok && !s.dropped(i) {
			return false
		}
		if ok {
			s.now.parts[i] = q
		}
	}
	return true
}

// explore makes the rectangle smaller step by step. Where the parts do not come apart,
// it begins again from one of the best tries of that size, with two large parts changed
// over.
func (s *search) explore(until int) {
	large := s.largest()
	large = large[:(len(large)+1)/2]
	var pool pool
	for step := boldest; step > smaller && s.done < until; {
		if s.shrunk(step) && s.separate(hasty, 1, until) {
			s.best.copied(&s.now)
			continue
		}
		if s.across = !s.across; !s.across || s.room.Strip {
			step /= 2
		}
		s.done += len(s.now.parts)
	}
	for s.done < until {
		if len(pool.tries) == 0 || !s.room.Strip && s.chance.IntN(2) == 0 {
			if !s.shrunk(smaller) {
				s.done += len(s.now.parts)
				s.across = !s.across
				continue
			}
		} else {
			s.now.copied(pool.pick(s.chance))
			s.swap(large)
		}
		if s.separate(patience, 3, until) {
			s.best.copied(&s.now)
			pool.tries = pool.tries[:0]
			continue
		}
		s.across = !s.across
		pool.add(&s.least, s.total())
	}
}

// swap changes two large parts over.
func (s *search) swap(large []int) {
	i, k := large[s.chance.IntN(len(large))], large[s.chance.IntN(len(large))]
	p, q := s.now.parts[i], s.now.parts[k]
	at := func(p, q lying) (lying, bool) {
		return s.laid(p.kind, p.turn, (q.x0+q.x1)/2-(p.x1-p.x0)/2, (q.y0+q.y1)/2-(p.y1-p.y0)/2)
	}
	a, ok1 := at(p, q)
	b, ok2 := at(q, p)
	if ok1 && ok2 {
		s.now.parts[i], s.now.parts[k] = a, b
	}
}

// press makes the rectangle of the best nest smaller by less and less.
func (s *search) press(until int) {
	from := s.done
	for s.done < until {
		spent := float64(s.done-from) / float64(until-from)
		if s.shrunk(firstPress*math.Pow(endOfIt/firstPress, spent)) && s.separate(patience/2, 1, until) {
			s.best.copied(&s.now)
		} else {
			s.across = !s.across
		}
		s.done += len(s.now.parts)
	}
}
