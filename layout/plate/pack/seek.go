package pack

import "math"

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
func (s *search) seek(i int) {
	here := found{lying: s.now.parts[i], cost: math.Inf(1)}
	here.cost = s.cost(i, &here.lying, math.Inf(1))
	if here.cost == 0 {
		return
	}
	var few [walked]found
	best := few[:0]
	keep := func(p lying, x, y float64) {
		if !s.moved(&p, x, y) {
			return
		}
		limit := math.Inf(1)
		if len(best) == walked {
			limit = best[walked-1].cost
		}
		if c := s.cost(i, &p, limit); c < limit {
			best = kept(best, found{p, c})
		}
	}
	for n := range anywhere {
		if n%2 == 0 {
			keep(s.beside(i))
			continue
		}
		p := s.anyhow(here.kind)
		x, y := s.anywhere(&p)
		keep(p, x, y)
	}
	wide, high := here.x1-here.x0, here.y1-here.y0
	for range nearby {
		p := here.lying
		if s.chance.IntN(3) == 0 {
			p = s.anyhow(here.kind)
			p.frame, p.x, p.y = p.frame.shifted(here.x, here.y), here.x, here.y
		}
		keep(p, (s.chance.Float64()-0.5)*wide, (s.chance.Float64()-0.5)*high)
	}
	side := math.Min(wide, high)
	to := s.walk(i, here, side/1000)
	for _, f := range best {
		if f = s.walk(i, f, side/200); f.cost < to.cost {
			to = f
		}
	}
	if to.cost < here.cost {
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

// pressed is the cost of part i, lying so, and what pushes it.
func (s *search) pressed(i int, p *lying) (total float64, on push) {
	body, weights := s.solid(p), s.weight[i*len(s.now.parts):]
	s.done += 4
	for j := range s.now.parts {
		q := &s.now.parts[j]
		if j == i || !p.near(&q.frame, s.gap) {
			continue
		}
		for _, m := range s.meet(body, s.body(j), q.x-p.x, q.y-p.y) {
			total += float64(weights[j] * (s.gap - m.off))
			for _, t := range m.touches(s.gap) {
				if t.deep > 0 {
					on.add(t.x, t.y, -float64(m.nx*t.deep), -float64(m.ny*t.deep), weights[j])
				}
			}
		}
	}
	return total, on
}

// walk goes down from a place the way the part is pushed, less far after a step that did not
// help, until steps are shorter than the least, mm.
func (s *search) walk(i int, from found, least float64) found {
	var on push
	p, share := from.lying, eager
	for first := true; ; first = false {
		if cost, f := s.pressed(i, &p); first || cost < from.cost {
			from, on = found{p, cost}, f
			share = min(eager, 1.2*share)
		} else {
			share *= 0.5
		}
		if from.cost == 0 || share < 0.1 || on.n == 0 {
			return from
		}
		p = from.lying
		if p.turn < 0 && on.arm > 0 {
			p.angle += float64(share*on.turn) / on.arm
			p.frame = s.solid(&p).frame.shifted(p.x, p.y)
		}
		if !s.moved(&p, float64(share*on.x)/on.n, float64(share*on.y)/on.n) {
			return from
		}
		turned := math.Abs(p.angle-from.angle) * (p.x1 - p.x0 + p.y1 - p.y0)
		if max(math.Abs(p.x-from.x)+math.Abs(p.y-from.y), turned) < least {
			return from
		}
	}
}
