package laden

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/equations"
)

// hoop is half a rib, condensed to what holds it: its middle on the keel, which stays in the
// middle of the boat and upright, the stringers and its head. In its plane it bends and stretches;
// square to it, it bends and twists.
type hoop struct {
	within, square block
	bits           []bit // where it may be stressed most
}

// block is one of the two.
type block struct {
	of    []int     // the numbers of its movements, the keel's first and the head's turns last
	turns int       // of the head
	stiff []float64 // row by row: forces for each movement, with heads that cannot turn in the gunwale
}

// bit is a place along a rib: what a force of 1 on each of the last movements does there, those that reach it.
type bit struct{ within, square []pair }

// pair is what bends and what stretches a rib in its plane, or what bends and what twists it square to that.
type pair [2]float64

// Gauss-Lobatto: five points of [0, 1], its ends among them, where bending is often most.
// Abramowitz and Stegun, table 25.6.
var (
	lobattoAt     = [5]float64{0, 0.5 - 0.327326835353989, 0.5, 0.5 + 0.327326835353989, 1}
	lobattoWeight = [5]float64{1.0 / 20, 49.0 / 180, 16.0 / 45, 49.0 / 180, 1.0 / 20}
)

// steepest is the turn over which one panel of points goes, radians.
const steepest = 0.8

// condenser condenses one half rib after the other in the same room.
type condenser struct {
	within, square give
	bits           []pair // room for those to come
}

// hoop condenses a half rib of a width and a wood. ok is false for one that does not stand.
//
// How: Castigliano's theorem with forces of 1. A force d on a place p bends and twists the rib at r
// by (p - r) × d and stretches it along its way; the sums of squares over the rib say how far
// the places give beside the keel, and their inverse how they hold.
// Source: S. Timoshenko, Strength of Materials.
func (c *condenser) hoop(r frame.Rib, wide, moe float64) (h hoop, ok bool) {
	half := r.Section.Half
	marks := append(slices.Clone(r.Stringers), half.Length())
	n := len(marks)
	places := make([]geometry.Point, n)
	up, lean, along := make([]float64, 2*n+1), make([]float64, n+2), make([]float64, n+2)
	walk := half.Walk()
	h.bits = make([]bit, 0, 2*(n+len(half))) // enough where no bend is steep
	for i, m := range marks {
		places[i], _ = walk.At(m)
		up[2*i+1], lean[i], along[i] = 1, places[i].Y, 1
	}
	lean[n] = 1
	s := rectangle(wide, r.Thickness, moe)
	c.within.anew(2*n+1, s.tall, s.long)
	c.square.anew(n+2, s.flat, s.twist)
	stretches(half, marks, func(first int, at, ds float64, tells bool) {
		p, way := walk.Way(at)
		in, out := c.bit(2*(n-first)+1, n-first+2)
		for i, q := range places[first:] {
			a, c := q.X-p.X, q.Y-p.Y
			in[2*i], in[2*i+1] = pair{-c, way.X}, pair{a, way.Y}
			out[i] = pair{-c*way.Y - a*way.X, c*way.X - a*way.Y}
		}
		in[len(in)-1], out[len(out)-2], out[len(out)-1] = pair{1, 0}, pair{-way.Y, way.X}, pair{way.X, way.Y}
		c.within.take(in, ds)
		c.square.take(out, ds)
		if tells {
			h.bits, c.bits = append(h.bits, bit{in, out}), c.bits[len(in)+len(out):]
		}
	})
	if h.within, ok = c.within.block(1, up); ok {
		h.square, ok = c.square.block(2, lean, along)
	}
	return h, ok
}

// bit is room for one of so many forces in the rib's plane and square to it.
func (c *condenser) bit(in, out int) (within, square []pair) {
	if len(c.bits) < in+out {
		c.bits = make([]pair, 100*(in+out))
	}
	return c.bits[:in:in], c.bits[in:][:out:out]
}

// stretches calls f at points of each stretch between bends and marks, with the number of the first
// mark beyond it and the length ds that each point stands for; tells says that its neighbors do not
// tell as much of the greatest stress.
func stretches(half curve.Chain, marks []float64, f func(first int, at, ds float64, tells bool)) {
	stops := append([]float64{0}, marks...)
	sum := 0.0
	for _, b := range half {
		sum += b.Length
		stops = append(stops, sum)
	}
	slices.Sort(stops)
	for i, from := range stops[:len(stops)-1] {
		to := stops[i+1]
		if to == from {
			continue
		}
		first := 0
		for marks[first] < to {
			first++
		}
		_, heads := half.At(from)
		_, comes := half.At(to)
		n := max(1, math.Ceil(math.Abs(comes-heads)/steepest))
		for k := range int(n) {
			lo, long := from+(to-from)*float64(k)/n, (to-from)/n
			for j, w := range lobattoWeight {
				at := lo + long*lobattoAt[j]
				f(first, at, w*long, j == 2 || j == 4 || at == 0)
			}
		}
	}
}

// give sums up how far places give under forces of 1.
type give struct {
	stiff pair
	n     int // of the forces
	sums  equations.Profile
	holds []float64 // room for their inverse
}

func (g *give) anew(n int, bent, other float64) {
	*g = give{pair{bent, other}, n, g.sums.Anew(make([]int, n)), slices.Grow(g.holds[:0], n*n)[:n*n]}
}

func (g *give) take(bit []pair, ds float64) {
	first := g.n - len(bit)
	for i, u := range bit {
		a, b := ds*u[0]/g.stiff[0], ds*u[1]/g.stiff[1]
		row := g.sums.Row(first + i)[first:]
		for j, v := range bit[:i+1] {
			row[j] += a*v[0] + b*v[1]
		}
	}
}

// block turns how places give into how they hold, with the ways in which they go when the rib moves
// as it is: at last along with the keel. One before that, in which nothing holds the keel, is let go.
func (g *give) block(turns int, ways ...[]float64) (b block, ok bool) {
	n := g.n
	if !g.sums.Factor() {
		return b, false
	}
	holds := g.holds
	clear(holds)
	for i := range n {
		holds[i*n+i] = 1
		g.sums.Solve(holds[i*n:][:n])
	}
	b = block{turns: turns, stiff: carried(holds, ways[0])}
	for _, w := range ways[1:] {
		ease(b.stiff, n+1, 0, 0)
		for i := range n {
			copy(holds[i*n:][:n], b.stiff[(i+1)*(n+1)+1:])
		}
		b.stiff = carried(holds, w)
	}
	return b, true
}

// carried puts a movement in front that carries all others along in a way.
func carried(holds, way []float64) []float64 {
	n := len(way)
	out := make([]float64, (n+1)*(n+1))
	for i, w := range way {
		row := holds[i*n:][:n]
		force := -equations.Dot(row, way)
		out[0] -= force * w
		out[i+1], out[(i+1)*(n+1)] = force, force
		copy(out[(i+1)*(n+1)+1:], row)
	}
	return out
}

// ease lets go of movement i of n but for a share of the force with which it is held while all
// others stand: it moves on its own until no more is left.
func ease(holds []float64, n, i int, share float64) {
	own := holds[i*n:][:n]
	for k := range n {
		if k == i {
			continue
		}
		row := holds[k*n:][:n]
		let := (1 - share) * own[k] / own[i]
		for j, v := range own {
			if j != i {
				row[j] -= let * v
			}
		}
		row[i] *= share
	}
	for j := range own {
		own[j] *= share
	}
}

// with is the block with heads that bear so large a share of the moment that heads which cannot turn
// would bear, in room that it may have.
func (b block) with(heads float64, room []float64) block {
	b.stiff = append(room[:0], b.stiff...)
	n := len(b.of)
	for i := n - b.turns; i < n; i++ {
		ease(b.stiff, n, i, heads)
	}
	return b
}

// hold adds the block to the equations.
func (b block) hold(k equations.Profile) {
	for i, p := range b.of {
		row := b.stiff[i*len(b.of):]
		for j, q := range b.of[:i+1] {
			k.Add(p, q, row[j])
		}
	}
}

// forces are those that movements put on the block, but the keel's, in room that they may have.
func (b block) forces(u, room []float64) []float64 {
	n := len(b.of)
	for _, k := range b.of {
		room = append(room, u[k])
	}
	moved := room
	for i := 1; i < n; i++ {
		room = append(room, equations.Dot(b.stiff[i*n:][:n], moved))
	}
	return room[n:]
}

// at is what forces do at a place.
func at(units []pair, forces []float64) (a, b float64) {
	forces = forces[len(forces)-len(units):]
	for i, unit := range units {
		a += unit[0] * forces[i]
		b += unit[1] * forces[i]
	}
	return a, b
}

// stress returns the greatest stress that movements make in a rib of a width and a thickness.
func (h hoop) stress(u []float64, wide, thick float64) (most float64) {
	var room [2][60]float64 // enough where no more than a dozen stringers cross
	within, square := h.within.forces(u, room[0][:0]), h.square.forces(u, room[1][:0])
	for _, b := range h.bits {
		bends, pulls := at(b.within, within)
		leans, _ := at(b.square, square)
		most = max(most, math.Abs(bends)*6/thick+math.Abs(pulls)+math.Abs(leans)*6/wide)
	}
	return most / (wide * thick)
}
