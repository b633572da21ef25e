package pack

import "math"

// depth is how deep two parts lie in one another, the second at (x, y) from the first: the
// sum over their convex pieces of how far each would have to be moved; 0 when they keep
// the gap.
func (s *search) depth(p, q *solid, x, y float64) float64 {
	sum := 0.0
	for _, m := range s.meet(p, q, x, y) {
		sum += s.gap - m.off
	}
	return sum
}

// meet finds every two pieces of two parts that lie nearer than the gap. What it returns
// holds until it is asked again.
func (s *search) meet(p, q *solid, x, y float64) []meeting {
	s.met = s.met[:0]
	x0, y0, x1, y1 := q.x0+x-s.gap, q.y0+y-s.gap, q.x1+x+s.gap, q.y1+y+s.gap
	s.done += 2 + len(p.pieces)/4
	for i := range p.pieces {
		a := &p.pieces[i]
		if a.x0 >= x1 || a.x1 <= x0 || a.y0 >= y1 || a.y1 <= y0 {
			continue
		}
		ax0, ay0, ax1, ay1 := a.x0-x-s.gap, a.y0-y-s.gap, a.x1-x+s.gap, a.y1-y+s.gap
		s.done += 1 + len(q.pieces)/4
		for k := range q.pieces {
			b := &q.pieces[k]
			if b.x1 <= ax0 || b.x0 >= ax1 || b.y1 <= ay0 || b.y0 >= ay1 {
				continue
			}
			s.done++
			m := meeting{p: p.corners[a.from:a.to], q: q.corners[b.from:b.to], x: x, y: y, off: math.Inf(-1)}
			if m.near(b.x+x-a.x, b.y+y-a.y, s.gap) {
				s.met = append(s.met, m)
			}
		}
	}
	return s.met
}

// meeting is two convex pieces that lie near each other, the second at (x, y).
type meeting struct {
	p, q     []corner
	x, y     float64
	off      float64 // how far they lie apart, below 0 how deep in one another
	nx, ny   float64 // the way from the first to the second
	side, at int     // the side that tells, and the corner of the other that is nearest to it
	second   bool    // the side is the second one's
}

// near works out how far the pieces lie apart; (mx, my) goes from within the first to within
// the second. It stops short where that is more than the gap.
func (m *meeting) near(mx, my, gap float64) bool {
	for i := range m.p {
		f := &m.p[i]
		if float64(f.nx*mx)+float64(f.ny*my) < 0 {
			continue // no side that looks away from the other can part them
		}
		least, at := math.Inf(1), 0
		for k := range m.q {
			if d := float64(f.nx*m.q[k].x) + float64(f.ny*m.q[k].y); d < least {
				least, at = d, k
			}
		}
		if d := least + float64(f.nx*m.x) + float64(f.ny*m.y) - f.c; d > m.off {
			if m.off, m.side, m.at, m.second = d, i, at, false; d >= gap {
				return false
			}
		}
	}
	for i := range m.q {
		f := &m.q[i]
		if float64(f.nx*mx)+float64(f.ny*my) > 0 {
			continue
		}
		least, at := math.Inf(1), 0
		for k := range m.p {
			if d := float64(f.nx*m.p[k].x) + float64(f.ny*m.p[k].y); d < least {
				least, at = d, k
			}
		}
		if d := least - float64(f.nx*m.x) - float64(f.ny*m.y) - f.c; d > m.off {
			if m.off, m.side, m.at, m.second = d, i, at, true; d >= gap {
				return false
			}
		}
	}
	if m.second {
		m.nx, m.ny = -m.q[m.side].nx, -m.q[m.side].ny
	} else {
		m.nx, m.ny = m.p[m.side].nx, m.p[m.side].ny
	}
	return m.off <= 0 || !m.cornered(gap)
}

// cornered looks along the line between the nearest corners, where these lie farther apart
// than any side tells, and reports whether that is more than the gap.
func (m *meeting) cornered(gap float64) bool {
	f, v := m.p, m.q[m.at%len(m.q)]
	vx, vy := v.x+m.x, v.y+m.y
	if m.second {
		f, v = m.q, m.p[m.at%len(m.p)]
		vx, vy = v.x-m.x, v.y-m.y
	}
	a, b := &f[m.side], &f[(m.side+1)%len(f)]
	along := func(x, y float64) float64 { return float64(y*a.nx) - float64(x*a.ny) }
	u, from, to := along(vx, vy), along(a.x, a.y), along(b.x, b.y)
	if u >= from && u <= to {
		return false
	}
	c := a
	if u > to {
		c = b
	}
	ux, uy := vx-c.x, vy-c.y
	l := math.Sqrt(float64(ux*ux) + float64(uy*uy))
	if ux, uy = ux/l, uy/l; m.second {
		ux, uy = -ux, -uy
	}
	most, least := math.Inf(-1), math.Inf(1)
	for i := range m.p {
		most = max(most, float64(ux*m.p[i].x)+float64(uy*m.p[i].y))
	}
	for i := range m.q {
		least = min(least, float64(ux*m.q[i].x)+float64(uy*m.q[i].y))
	}
	if off := least + float64(ux*m.x) + float64(uy*m.y) - most; off > m.off {
		m.off, m.nx, m.ny = off, ux, uy
	}
	return m.off >= gap
}
