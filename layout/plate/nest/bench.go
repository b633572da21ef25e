package nest

import (
	"math"
	"math/rand/v2"
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
	out := state{s.w * fx, s.h * fy, append([]pose(nil), s.poses...)}
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

// near reports whether two frames come as near as need.
func (b *bench) near(f, g *frame) bool {
	return f.x0 < g.x1+b.need && g.x0 < f.x1+b.need && f.y0 < g.y1+b.need && g.y0 < f.y1+b.need
}

// frames returns the frames of all bodies.
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
