package nest

import (
	"math"
	"math/rand/v2"
	"slices"
)

// settled is the sum of all depths, mm, below which bodies count as apart.
const settled = 0.2

// bench is the bodies of one board and what they keep from each other.
type bench struct {
	bodies []body
	need   float64 // distance to keep, mm
	chance *rand.Rand
}

// state is where all bodies lie in a rectangle of w by h mm.
type state struct {
	w, h  float64
	poses []pose
}

// squashed returns the state in a rectangle made smaller by the factors.
func (s state) squashed(fx, fy float64) state {
	out := state{s.w * fx, s.h * fy, slices.Clone(s.poses)}
	for i := range out.poses {
		out.poses[i].x *= fx
		out.poses[i].y *= fy
	}
	return out
}

// frame is an upright rectangle; plain numbers, because it is asked for often.
type frame struct{ x0, y0, x1, y1 float64 }

// frame returns a rectangle round a body at p.
func (b *body) frame(p pose) frame {
	inf := math.Inf(1)
	f := frame{inf, inf, -inf, -inf}
	for i := range b.chain {
		l := &b.chain[i]
		x, y := p.c*l.mid.X-p.s*l.mid.Y+p.x, p.s*l.mid.X+p.c*l.mid.Y+p.y
		f.x0, f.x1 = min(f.x0, x-l.r), max(f.x1, x+l.r)
		f.y0, f.y1 = min(f.y0, y-l.r), max(f.y1, y+l.r)
	}
	return f
}

// within reports whether a disc comes as near as need to the frame.
func (f *frame) within(x, y, r float64) bool {
	return x > f.x0-r && x < f.x1+r && y > f.y0-r && y < f.y1+r
}

func (b *bench) near(f, g *frame) bool {
	return f.x0 < g.x1+b.need && g.x0 < f.x1+b.need && f.y0 < g.y1+b.need && g.y0 < f.y1+b.need
}

func (b *bench) frames(s state) []frame {
	out := make([]frame, len(s.poses))
	for i := range out {
		out[i] = b.bodies[i].frame(s.poses[i])
	}
	return out
}

// depth returns how deep the points of body i at p lie in the room of body j at
// q, which fills g, in all, mm.
func (b *bench) depth(i, j int, p, q pose, g *frame) float64 {
	one, other := &b.bodies[i], &b.bodies[j]
	c, s := q.c*p.c+q.s*p.s, q.c*p.s-q.s*p.c
	dx, dy := p.x-q.x, p.y-q.y
	dx, dy = q.c*dx+q.s*dy, q.c*dy-q.s*dx
	sum := 0.0
	for k := range one.chain {
		l := &one.chain[k]
		if !g.within(p.c*l.mid.X-p.s*l.mid.Y+p.x, p.s*l.mid.X+p.c*l.mid.Y+p.y, b.need+l.r) {
			continue
		}
		if other.field.about(c*l.mid.X-s*l.mid.Y+dx, s*l.mid.X+c*l.mid.Y+dy) > b.need+l.r+nodes {
			continue
		}
		for _, m := range one.pts[l.from:l.to] {
			d, _, _, ok := other.field.at(c*m.X-s*m.Y+dx, s*m.X+c*m.Y+dy)
			if ok && d < b.need {
				sum += b.need - d
			}
		}
	}
	return sum
}

// both is depth either way, of bodies that fill f and g.
func (b *bench) both(i, j int, p, q pose, f, g *frame) float64 {
	if !b.near(f, g) {
		return 0
	}
	return b.depth(i, j, p, q, g) + b.depth(j, i, q, p, f)
}

// outside returns how far the points of body i lie outside the rectangle, in all.
func (b *bench) outside(i int, p pose, w, h float64) float64 {
	one := &b.bodies[i]
	if r := one.radius; p.x >= r && p.y >= r && p.x <= w-r && p.y <= h-r {
		return 0
	}
	sum := 0.0
	for _, l := range one.chain {
		x, y := p.c*l.mid.X-p.s*l.mid.Y+p.x, p.s*l.mid.X+p.c*l.mid.Y+p.y
		if x >= l.r && y >= l.r && x <= w-l.r && y <= h-l.r {
			continue
		}
		for _, m := range one.pts[l.from:l.to] {
			sum += beyond(p.c*m.X-p.s*m.Y+p.x, w) + beyond(p.s*m.X+p.c*m.Y+p.y, h)
		}
	}
	return sum
}

// beyond returns how far v lies outside 0 to most.
func beyond(v, most float64) float64 {
	if v < 0 {
		return -v
	}
	return math.Max(0, v-most)
}

const places = 40

// settle pushes all bodies apart and, as long as some are stuck, puts one of
// them elsewhere, at most the given number of times. It reports whether all came
// apart; the poses are changed either way.
func (b *bench) settle(s state, times int) bool {
	const rounds = 40
	w := newWeights(len(b.bodies))
	stuck := make([]float64, len(b.bodies))
	for range times {
		left := b.relax(s, rounds)
		if left > settled && left < 100*settled {
			left = b.relax(s, 6*rounds)
		}
		if left <= settled {
			return true
		}
		if i := b.pick(s, w, stuck); i >= 0 {
			b.seek(s, w, i, places)
		}
	}
	return b.relax(s, rounds) <= settled
}

// pick makes stuck pairs count more and picks one of the stuck bodies by chance,
// the more likely the deeper it is stuck; -1 when none is.
func (b *bench) pick(s state, w weights, stuck []float64) int {
	const growth = 1.3
	sum := 0.0
	clear(stuck)
	add := func(i, j int, e float64) {
		if e > 0 {
			w[i][j] *= growth
			w[j][i] = w[i][j]
			stuck[i] += w[i][j] * e
			stuck[j] += w[i][j] * e
			sum += 2 * w[i][j] * e
		}
	}
	frames := b.frames(s)
	for i, p := range s.poses {
		add(i, i, b.outside(i, p, s.w, s.h))
		for j := range i {
			add(i, j, b.both(i, j, p, s.poses[j], &frames[i], &frames[j]))
		}
	}
	mark := b.chance.Float64() * sum
	for i, e := range stuck {
		if mark -= e; e > 0 && mark <= 0 {
			return i
		}
	}
	return -1
}

// squeeze makes the rectangle smaller, one side after the other, as long as
// pushing alone brings the bodies apart in it.
func (b *bench) squeeze(s state) state {
	const first, last, rounds = 0.008, 0.0008, 250
	steps := [2]float64{first, first}
	for k := 0; steps[0] > last || steps[1] > last; k = 1 - k {
		if steps[k] <= last {
			continue
		}
		f := [2]float64{1, 1}
		f[k] -= steps[k]
		if q := s.squashed(f[0], f[1]); b.relax(q, rounds) <= settled {
			s = q
		} else {
			steps[k] /= 2
		}
	}
	return s
}

type push struct{ x, y, turn, n, arm float64 }

func (p *push) add(rx, ry, fx, fy float64) {
	p.x += fx
	p.y += fy
	p.turn += rx*fy - ry*fx
	p.n++
	p.arm += rx*rx + ry*ry
}

// patience is after how many rounds the depth must have fallen by a tenth.
const patience = 10

// eager is how much farther bodies are moved than the mean push asks for.
const eager = 1.3

// relax pushes bodies apart that are too near, all at once, for the given number
// of rounds, and returns the depth that is left, mm. The poses are changed.
func (b *bench) relax(s state, rounds int) float64 {
	pushes, frames := make([]push, len(b.bodies)), make([]frame, len(b.bodies))
	left, before := 0.0, math.Inf(1)
	for k := range rounds {
		clear(pushes)
		left = 0
		for i := range b.bodies {
			frames[i] = b.bodies[i].frame(s.poses[i])
		}
		for i := range b.bodies {
			left += b.pushIn(s, i, &pushes[i])
			for j := range b.bodies {
				if i != j && b.near(&frames[i], &frames[j]) {
					left += b.pushOff(i, j, s.poses[i], s.poses[j], &frames[j], &pushes[i], &pushes[j])
				}
			}
		}
		if left < settled/4 {
			break
		}
		if k%patience == patience-1 {
			if left > 0.9*before {
				break // they are stuck
			}
			before = left
		}
		for i, p := range pushes {
			s.poses[i] = b.pushed(i, s.poses[i], p)
		}
	}
	return left
}

// pushed moves one pose by the mean of its pushes.
func (b *bench) pushed(i int, p pose, f push) pose {
	if f.n == 0 {
		return p
	}
	p.x += eager * f.x / f.n
	p.y += eager * f.y / f.n
	if b.bodies[i].turns == nil && f.arm > 0 {
		return at(p.x, p.y, p.a+eager*f.turn/f.arm)
	}
	return p
}

// pushOff pushes body i at p out of the room of body j at q, which fills g, and j
// the other way.
func (b *bench) pushOff(i, j int, p, q pose, g *frame, on, off *push) float64 {
	one, other := &b.bodies[i], &b.bodies[j]
	dx, dy := p.x-q.x, p.y-q.y
	left := 0.0
	for k := range one.chain {
		l := &one.chain[k]
		x, y := p.c*l.mid.X-p.s*l.mid.Y+dx, p.s*l.mid.X+p.c*l.mid.Y+dy
		if !g.within(x+q.x, y+q.y, b.need+l.r) {
			continue
		}
		if other.field.about(q.c*x+q.s*y, q.c*y-q.s*x) > b.need+l.r+nodes {
			continue
		}
		for _, m := range one.pts[l.from:l.to] {
			rx, ry := p.c*m.X-p.s*m.Y, p.s*m.X+p.c*m.Y
			x, y := rx+dx, ry+dy
			d, gx, gy, ok := other.field.at(q.c*x+q.s*y, q.c*y-q.s*x)
			if !ok || d >= b.need {
				continue
			}
			deep := b.need - d
			left += deep
			if g := math.Sqrt(gx*gx + gy*gy); g > 1e-6 {
				f := deep / g / 2
				fx, fy := (q.c*gx-q.s*gy)*f, (q.s*gx+q.c*gy)*f
				on.add(rx, ry, fx, fy)
				off.add(x, y, -fx, -fy)
			}
		}
	}
	return left
}

// pushIn pushes body i into the rectangle.
func (b *bench) pushIn(s state, i int, on *push) float64 {
	one, p := &b.bodies[i], s.poses[i]
	left := 0.0
	for _, l := range one.chain {
		x, y := p.c*l.mid.X-p.s*l.mid.Y+p.x, p.s*l.mid.X+p.c*l.mid.Y+p.y
		if x >= l.r && y >= l.r && x <= s.w-l.r && y <= s.h-l.r {
			continue
		}
		for _, m := range one.pts[l.from:l.to] {
			rx, ry := p.c*m.X-p.s*m.Y, p.s*m.X+p.c*m.Y
			x, y := rx+p.x, ry+p.y
			if e := beyond(x, s.w); e > 0 {
				on.add(rx, ry, math.Copysign(e, -x), 0)
				left += e
			}
			if e := beyond(y, s.h); e > 0 {
				on.add(rx, ry, 0, math.Copysign(e, -y))
				left += e
			}
		}
	}
	return left
}
