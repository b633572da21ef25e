package pack

import (
	"cmp"
	"math"
	"slices"
)

// The rectangle that a first nest is laid in, as a share of the parts' area, and by how much
// it is made larger where they do not come apart; by how much a rectangle is made smaller at
// a time, at first and at last: the first nest, one that was changed, and the best one at
// the end. Our own choices.
const (
	opening               = 3.0
	wider                 = 1.1
	boldest               = 0.1
	bold, timid, smallest = 0.008, 0.002, 0.0001
)

// start lays the parts one after the other, the largest first, where they touch most, and
// pushes them apart. The rectangle is made larger until that is done, as far as the room
// goes.
func (s *search) start(until int) bool {
	for share := opening; ; share *= wider {
		whole := s.opened(share)
		if s.strew() && s.separate(40, 2, len(s.now.parts), until) {
			s.from.copied(&s.now)
			s.squeeze(boldest, timid, until)
			s.best.copied(&s.from)
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
	s.now.h = math.Min(math.Max(s.now.h, s.longest(func(f *frame) float64 { return f.y1 - f.y0 })), s.room.H)
	s.now.w = math.Min(math.Max(area/s.now.h, s.longest(func(f *frame) float64 { return f.x1 - f.x0 })), s.room.W)
	return s.now.w == s.room.W && s.now.h == s.room.H
}

// longest is about the least that a side of the rectangle must have, so that every part has
// a turn for it.
func (s *search) longest(side func(*frame) float64) float64 {
	most := 0.0
	for i := range s.kinds {
		k := &s.kinds[i]
		least := math.Inf(1)
		for n := range k.at {
			least = math.Min(least, side(&k.at[n].frame))
		}
		if f := &k.shape.frame; len(k.at) == 0 {
			least = math.Min(f.x1-f.x0, f.y1-f.y0)
		}
		most = math.Max(most, least)
	}
	return most
}

// strew lays the parts anew, the largest first. It reports whether all have a turn for the
// rectangle.
func (s *search) strew() bool { return s.laid(s.largest()) }

// laid takes parts out and lays them in the order given. It reports whether all have a turn
// for the rectangle.
func (s *search) laid(order []int) bool {
	s.even()
	inf := math.Inf(1)
	for _, i := range order {
		s.now.parts[i].frame = frame{inf, inf, inf, inf}
	}
	for _, i := range order {
		if !s.dropped(i) {
			return false
		}
		s.insert(i)
	}
	return true
}

// even makes all pairs weigh the same.
func (s *search) even() {
	for k := range s.weight {
		s.weight[k] = 1
	}
}

// dropped lays a part somewhere at a turn that the rectangle has room for.
func (s *search) dropped(i int) bool {
	k := s.now.parts[i].kind
	n := len(s.kinds[k].turns)
	x, y, first := s.chance.Float64(), s.chance.Float64(), s.chance.Float64()
	const compass = 24 // turns that are tried of a part that may lie at any
	for t := range max(n, compass) {
		p := lying{}
		if n > 0 {
			p = s.turned(k, (int(first*float64(n))+t)%n, 0)
		} else {
			p = s.turned(k, -1, (first+float64(t)/compass)*2*math.Pi)
		}
		if s.moved(&p, float64(x*(s.now.w-(p.x1-p.x0)))-p.x0, float64(y*(s.now.h-(p.y1-p.y0)))-p.y0) {
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

// squeeze makes the nest smaller, one side after the other, by less and less, as long as
// pushing alone brings the parts apart in it.
func (s *search) squeeze(first, last float64, until int) {
	share := [2]float64{first, first}
	if s.room.Strip {
		share[1] = 0
	}
	s.even()
	for side := 0; max(share[0], share[1]) > last && s.done < until; side = 1 - side {
		if share[side] <= last {
			continue
		}
		less := [2]float64{1, 1}
		less[side] -= share[side]
		if s.squashed(less[0], less[1]) && s.relax() {
			s.from.copied(&s.now)
		} else {
			share[side] /= 2
		}
	}
}

// squashed makes the state the nest in a rectangle of other sides, by these factors, as far
// as the room goes. It reports whether all parts have room at their turns.
func (s *search) squashed(fx, fy float64) bool {
	s.now.copied(&s.from)
	s.now.w, s.now.h = min(s.from.w*fx, s.room.W), min(s.from.h*fy, s.room.H)
	for i := range s.now.parts {
		p := &s.now.parts[i]
		if !s.moved(p, float64(p.x*fx)-p.x, float64(p.y*fy)-p.y) {
			return false
		}
	}
	return true
}
