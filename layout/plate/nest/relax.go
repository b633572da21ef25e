package nest

import "math"

// push is what all touching points do to one body.
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
		for i := range pushes {
			pushes[i] = push{}
		}
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
