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

// again takes some neighbours out of a nest, pushes the others into a rectangle
// that may be a little smaller and lays those anew; ok is false when they do not
// come apart.
func (j *job) again(b *bench, from state) (state, bool) {
	s := j.smaller(b.chance, from)
	out := j.neighbours(b.chance, s)
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

// neighbours picks a few parts that lie close to one another, in laying order.
func (j *job) neighbours(chance *rand.Rand, s state) []int {
	n := min(len(s.poses), fewest+chance.IntN(spreadOf))
	mid := s.poses[chance.IntN(len(s.poses))]
	near := j.order(chance, 0.3)
	d := func(i int) float64 { return math.Hypot(s.poses[i].x-mid.x, s.poses[i].y-mid.y) }
	sorted := slices.Clone(near)
	slices.SortStableFunc(sorted, func(a, b int) int { return cmp.Compare(d(a), d(b)) })
	sorted = sorted[:n]
	return slices.DeleteFunc(near, func(i int) bool { return !slices.Contains(sorted, i) })
}
