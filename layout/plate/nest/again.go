package nest

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"ribwright/geometry"
)

// lay draws on the layer what lies at a pose.
func (j *job) lay(l *layer, i int, p pose) {
	room := j.gap/2 - slack*cell
	t := j.shapes[i].mapped(j.bodies[i].move(p)).mapped(geometry.Shift(j.gap/2, j.gap/2))
	x, y := math.Floor((t.box.Min.X-room)/cell), math.Floor((t.box.Min.Y-room)/cell)
	x, y = math.Max(0, x), math.Max(0, y)
	s := stampFrom(t, geometry.Point{X: x * cell, Y: y * cell}, room, cell)
	h := stampFrom(t, geometry.Point{X: (x - touches) * cell, Y: (y - touches) * cell}, room+touches*cell, cell)
	l.put(s.clipped(l.grid.wide-int(x), l.grid.high-int(y)), h, spot{int(x), int(y)})
}

// How a nest is changed: by how much the rectangle's sides differ from before at
// most, how many parts are laid anew, and how often one that is stuck is moved.
const (
	lessArea, otherSide = 0.006, 0.012
	fewest, spreadOf    = 2, 5
	moves               = 4
)

// again takes some neighbors out of a nest, pushes the others into a rectangle
// that may be a little smaller and lays those anew; ok is false when they do not
// come apart.
func (j *job) again(b *bench, from state) (state, bool) {
	s := j.smaller(b.chance, from)
	out := j.neighbors(b.chance, s)
	stay := &bench{need: b.need, chance: b.chance}
	part := state{w: s.w, h: s.h}
	var who []int
	for i := range s.poses {
		if !slices.Contains(out, i) {
			stay.bodies, part.poses, who = append(stay.bodies, b.bodies[i]), append(part.poses, s.poses[i]), append(who, i)
		}
	}
	stay.relax(part, 60)
	l := newLayer(int((s.w+j.gap)/cell), int((s.h+j.gap)/cell), touches)
	for k, i := range who {
		s.poses[i] = part.poses[k]
		j.lay(l, i, s.poses[i])
	}
	if !j.insert(b, l, s, out) || !b.settle(s, moves) {
		return s, false
	}
	return b.squeeze(s), true
}

// smaller returns the nest in a rectangle of other sides, every other time in the
// same: then only the order changes, which opens new ways.
func (j *job) smaller(chance *rand.Rand, from state) state {
	if chance.IntN(2) == 0 {
		return from.squashed(1, 1)
	}
	fx := 1 - otherSide*chance.Float64()
	fy := (1 - lessArea*chance.Float64()) / fx
	s := from.squashed(fx, fy)
	s.w, s.h = math.Min(s.w, j.room.X), math.Min(s.h, j.room.Y)
	return s
}

// neighbors picks a few parts that lie close to one another, in laying order.
func (j *job) neighbors(chance *rand.Rand, s state) []int {
	n := min(len(s.poses), fewest+chance.IntN(spreadOf))
	mid := s.poses[chance.IntN(len(s.poses))]
	near := j.order(chance, 0.3)
	d := func(i int) float64 { return math.Hypot(s.poses[i].x-mid.x, s.poses[i].y-mid.y) }
	sorted := slices.Clone(near)
	slices.SortStableFunc(sorted, func(a, b int) int { return cmp.Compare(d(a), d(b)) })
	sorted = sorted[:n]
	return slices.DeleteFunc(near, func(i int) bool { return !slices.Contains(sorted, i) })
}

// weights make pairs that stay stuck count more each time; a body's own stands
// for the rectangle's edges.
type weights [][]float64

func newWeights(n int) weights {
	w := make(weights, n)
	for i := range w {
		w[i] = slices.Repeat([]float64{1}, n)
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
