package pack

import (
	"math"
	"slices"
)

// How many places a part that overlaps tries: all over the rectangle, about where it
// lies, and how many of the best are walked down from. From the published search.
const (
	anywhere = 24
	nearby   = 12
	walked   = 3
)

// found is a place with its cost.
type found struct {
	lying
	cost float64
}

// seek moves part i to the best place that it finds; it stays where none is better.
func (s *search) seek(i int, anywhere int) {
	here := found{lying: s.now.parts[i], cost: math.Inf(1)}
	here.cost = s.cost(i, &here.lying, math.Inf(1))
	if here.cost == 0 {
		return
	}
	var few [walked]found
	best := few[:0]
	keep := func(p lying, ok bool) {
		limit := math.Inf(1)
		if len(best) == walked {
			limit = best[walked-1].cost
		}
		if !ok {
			return
		}
		if c := s.cost(i, &p, limit); c < limit {
			best = kept(best, found{p, c})
		}
	}
	k := &s.kinds[here.kind]
	for range anywhere {
		p, ok := s.laid(here.kind, k.turns[s.chance.IntN(len(k.turns))], s.chance.Float64()*s.now.w, s.chance.Float64()*s.now.h)
		keep(p, ok)
	}
	wide, high := here.x1-here.x0, here.y1-here.y0
	for range nearby {
		turn := here.turn
		if s.chance.IntN(3) == 0 {
			turn = k.turns[s.chance.IntN(len(k.turns))]
		}
		p, ok := s.laid(here.kind, turn, here.x0+(s.chance.Float64()-0.5)*wide, here.y0+(s.chance.Float64()-0.5)*high)
		keep(p, ok)
	}
	side := math.Min(wide, high)
	to := s.walk(i, here, side/10, side/1000)
	for _, f := range best {
		if f = s.walk(i, f, side/4, side/50); f.cost < to.cost {
			to = f
		}
	}
	if to = s.walk(i, to, side/100, side/5000); to.cost < here.cost {
		s.now.parts[i] = to.lying
		s.measure(i)
	}
}

// kept adds a place to the best, which are sorted.
func kept(best []found, f found) []found {
	if len(best) < cap(best) {
		best = append(best, f)
	} else {
		best[len(best)-1] = f
	}
	for k := len(best) - 1; k > 0 && best[k].cost < best[k-1].cost; k-- {
		best[k], best[k-1] = best[k-1], best[k]
	}
	return best
}

// walk goes down from a place by steps along or across the rectangle or slantwise, longer
// after a success and shorter after none.
func (s *search) walk(i int, from found, step, least float64) found {
	turns := s.kinds[from.kind].turns
	for step > least && from.cost > 0 {
		x, y := step, 0.0
		switch s.chance.IntN(4) {
		case 1:
			x, y = 0, step
		case 2:
			y = step
		case 3:
			y = -step
		}
		cost := from.cost
		from = s.tried(i, from, from.turn, x, y)
		from = s.tried(i, from, from.turn, -x, -y)
		if n := len(turns); n > 4 && cost == from.cost && s.chance.IntN(4) == 0 {
			k := slices.Index(turns, from.turn)
			from = s.tried(i, from, turns[(k+1)%n], 0, 0)
			from = s.tried(i, from, turns[(k+n-1)%n], 0, 0)
		}
		if from.cost < cost {
			step *= 1.1
		} else {
			step *= 0.5
		}
	}
	return from
}

// tried is the place moved and turned about the middle of its box, where that is better.
func (s *search) tried(i int, from found, turn int, x, y float64) found {
	f := &s.kinds[from.kind].at[turn]
	x += (from.x0+from.x1)/2 - (f.x1-f.x0)/2
	y += (from.y0+from.y1)/2 - (f.y1-f.y0)/2
	p, ok := s.laid(from.kind, turn, x, y)
	if !ok {
		return from
	}
	if c := s.cost(i, &p, from.cost); c < from.cost {
		return found{p, c}
	}
	return from
}
