package nest

import "math"

// weights make pairs that stay stuck count more each time; a body's own stands
// for the rectangle's edges.
type weights [][]float64

func newWeights(n int) weights {
	w := make(weights, n)
	for i := range w {
		w[i] = make([]float64, n)
		for j := range w[i] {
			w[i][j] = 1
		}
	}
	return w
}

// crowd is a state as one body meets it: the others stand still in their frames.
type crowd struct {
	state
	weights
	frames []frame
}

// cost returns the weighed depth of body i at p among the others; at limit or
// above it it may stop short.
func (b *bench) cost(s crowd, i int, p pose, limit float64) float64 {
	w := s.weights[i]
	sum := w[i] * b.outside(i, p, s.w, s.h)
	f := b.bodies[i].frame(p)
	for j := range b.bodies {
		if j == i || !b.near(&f, &s.frames[j]) {
			continue
		}
		if sum >= limit {
			return sum
		}
		e := b.depth(i, j, p, s.poses[j], &s.frames[j])
		if sum+w[j]*e >= limit {
			return limit
		}
		sum += w[j] * (e + b.depth(j, i, s.poses[j], p, &f))
	}
	return sum
}

// seek moves body i to the best of the given number of places all over the
// rectangle, or to a better one close by.
func (b *bench) seek(s state, w weights, i, places int) {
	c := crowd{s, w, b.frames(s)}
	here := s.poses[i]
	least := b.cost(c, i, here, math.Inf(1))
	there, cost := here, math.Inf(1)
	for range places {
		p := at(b.chance.Float64()*s.w, b.chance.Float64()*s.h, b.anyTurn(i, here.a))
		if e := b.cost(c, i, p, cost); e < cost {
			there, cost = p, e
		}
	}
	here, least = b.refine(c, i, here, least)
	if there, cost = b.refine(c, i, there, cost); cost < least {
		here = there
	}
	s.poses[i] = here
}

// anyTurn picks one of the angles a body may lie at.
func (b *bench) anyTurn(i int, now float64) float64 {
	if turns := b.bodies[i].turns; len(turns) > 0 {
		return turns[b.chance.IntN(len(turns))]
	}
	return b.chance.Float64() * 2 * math.Pi
}

// refine tries small moves from p, ever smaller, and keeps what is better.
func (b *bench) refine(s crowd, i int, p pose, cost float64) (pose, float64) {
	const first, last = 16.0, 0.4 // mm
	tries := 4
	small := func(step float64) float64 { return (2*b.chance.Float64() - 1) * step }
	for step := first; step > last && cost > 0; {
		better := false
		for range tries {
			q := at(p.x+small(step), p.y+small(step), p.a)
			if b.bodies[i].turns == nil {
				q = at(q.x, q.y, q.a+small(step/b.bodies[i].radius))
			}
			if c := b.cost(s, i, q, cost); c < cost {
				p, cost, better = q, c, true
			}
		}
		if !better {
			step /= 2
		}
	}
	return p, cost
}
