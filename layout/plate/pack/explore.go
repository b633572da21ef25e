package pack

import (
	"cmp"
	"slices"
)

// How a nest is changed: by how much the rectangle is made smaller before its overlap is
// pushed out, and after how many rounds in vain that is given up; how many neighbors are
// laid anew, at least and more at most, by how much the rectangle may be smaller, larger or
// longer then, after how many rounds in vain that is given up, and how many parts look for
// a better place in a round; how much larger than the best a nest may be that the search goes
// on from, at first; and by what the bound on overlap changes, up to which a try is gone on
// with. Our own choices.
const (
	smaller              = 0.01
	patience             = 60
	fewest, more         = 1, 4
	less, larger, longer = 0.006, 0.024, 0.012
	hasty, seekers       = 2, 2
	worse                = 0.025
	quicken              = 1.1
)

// explore changes the nest in two ways and makes it smaller again. Parts that may lie at any
// turn settle when they are laid anew; as far as there are others, their overlap is pushed
// out as well, for as many steps.
func (s *search) explore(until int) {
	var pool pool
	bound := 0.0
	for _, p := range s.now.parts {
		if p.turn >= 0 {
			bound += 1 / float64(len(s.now.parts))
		}
	}
	begun, anew, out := s.done, 0.0, 0.0
	for s.done < until {
		before := s.done
		if s.done++; out < anew*bound {
			s.pushedOut(&pool, until)
			out += float64(s.done - before)
			continue
		}
		s.laidAnew(1+worse*float64(until-s.done)/float64(until-begun), until)
		anew += float64(s.done - before)
	}
}

// area is the rectangle's, mm2.
func (s *state) area() float64 { return s.w * s.h }

// goOn takes what is now for the nest that the search goes on from, squeezed, where that is
// no larger than the best by more than the factor, and otherwise leaves the nest as it was.
func (s *search) goOn(allowed float64, until int) {
	s.was.copied(&s.from)
	s.from.copied(&s.now)
	s.squeeze(bold, timid, until)
	if s.from.area() > s.best.area()*allowed {
		s.from.copied(&s.was)
	}
	if s.from.area() < s.best.area() {
		s.best.copied(&s.from)
	}
}

// laidAnew takes some neighbors out of the nest and lays them anew, in a rectangle of about
// the same size.
func (s *search) laidAnew(allowed float64, until int) {
	fx := 1 - longer*s.chance.Float64()
	fy := (1 - less + larger*s.chance.Float64()) / fx
	if s.room.Strip {
		fx, fy = fx*fy, 1
	} else if s.chance.IntN(2) == 0 {
		fx, fy = fy, fx
	}
	if s.squashed(fx, fy) && s.laid(s.neighbors()) && s.hopeful() && s.separate(hasty, 1, seekers, until) {
		s.goOn(allowed, until)
	}
}

// hopeful reports whether the parts overlap less than in about half of the tries: pushing
// them apart takes most steps, and where they overlap more it mostly fails.
func (s *search) hopeful() bool {
	if s.total() > s.hope {
		s.hope *= quicken
		return false
	}
	s.hope = max(s.hope/quicken, s.extra)
	return true
}

// neighbors picks a few parts that lie close to one another, in any order.
func (s *search) neighbors() []int {
	n := len(s.now.parts)
	mid := s.now.parts[s.chance.IntN(n)]
	out := s.largest()
	far := func(i int) float64 {
		x, y := s.now.parts[i].x-mid.x, s.now.parts[i].y-mid.y
		return float64(x*x) + float64(y*y)
	}
	slices.SortStableFunc(out, func(i, k int) int { return cmp.Compare(far(i), far(k)) })
	out = out[:min(n, fewest+s.chance.IntN(more))]
	s.chance.Shuffle(len(out), func(i, k int) { out[i], out[k] = out[k], out[i] })
	return out
}

// pushedOut makes the best nest's rectangle smaller and pushes the overlap out. Where the
// parts do not come apart, it begins again from one of the best tries of that size, with two
// large parts changed over.
func (s *search) pushedOut(pool *pool, until int) {
	if area := s.best.area(); area != pool.of {
		pool.of, pool.tries = area, pool.tries[:0]
	}
	if len(pool.tries) == 0 || !s.room.Strip && s.chance.IntN(2) == 0 {
		if s.across = !s.across && !s.room.Strip; !s.shrunk() {
			return
		}
	} else {
		s.now.copied(pool.pick(s.chance))
		large := s.largest()
		s.swap(large[:(len(large)+1)/2])
	}
	if s.separate(patience, 3, len(s.now.parts), until) {
		s.goOn(1, until)
		return
	}
	pool.add(&s.least, s.total())
}

// shrunk makes the state the best nest in a rectangle smaller on the side whose turn it is: what
// lies beyond a line across it moves up. It reports whether all parts have room.
func (s *search) shrunk() bool {
	s.now.copied(&s.best)
	line := s.chance.Float64()
	left, down := s.now.w*smaller, 0.0
	if s.across {
		left, down = 0, s.now.h*smaller
	}
	s.now.w, s.now.h = s.now.w-left, s.now.h-down
	for i := range s.now.parts {
		p := &s.now.parts[i]
		x, y := 0.0, 0.0
		if p.x0+p.x1 > 2*line*s.best.w {
			x = -left
		}
		if p.y0+p.y1 > 2*line*s.best.h {
			y = -down
		}
		if !s.moved(p, x, y) && !s.dropped(i) {
			return false
		}
	}
	return true
}

// swap changes two large parts over.
func (s *search) swap(large []int) {
	i, k := large[s.chance.IntN(len(large))], large[s.chance.IntN(len(large))]
	p, q := s.now.parts[i], s.now.parts[k]
	x, y := (q.x0+q.x1-p.x0-p.x1)/2, (q.y0+q.y1-p.y0-p.y1)/2
	if s.moved(&p, x, y) && s.moved(&q, -x, -y) {
		s.now.parts[i], s.now.parts[k] = p, q
	}
}
