package pack

import "math"

// How parts are pushed apart: how much farther they are moved than the mean push asks for,
// after how many rounds the overlap must have fallen by a tenth, for how many rounds at most,
// and how far beyond the reach of pushes neighbors are looked for, in shares of the extra.
const (
	eager   = 1.3
	soonest = 10
	rounds  = 400
	farther = 10
)

// push is what moves a part: the sums of all pushes on it and of their turning about its
// middle, each with its weight.
type push struct{ x, y, turn, n, arm float64 }

func (p *push) add(rx, ry, fx, fy, weight float64) {
	p.x += float64(weight * fx)
	p.y += float64(weight * fy)
	p.turn += float64(weight * (float64(rx*fy) - float64(ry*fx)))
	p.n += weight
	p.arm += float64(weight * (float64(rx*rx) + float64(ry*ry)))
}

// link is two pieces of two parts that lie near each other, or may soon.
type link struct{ i, j, a, b int }

// linked finds all pieces that lie nearer than the gap and the slack, and sets how far each
// part may be moved before that must be done again.
func (s *search) linked(slack float64) {
	s.links = s.links[:0]
	clear(s.gone)
	gap := s.gap + s.extra + slack
	for i := range s.now.parts {
		p := &s.now.parts[i]
		for j := range i {
			q := &s.now.parts[j]
			if !p.near(&q.frame, gap) {
				continue
			}
			one, other := s.body(i), s.body(j)
			x, y := q.x-p.x, q.y-p.y
			f := other.frame.shifted(x, y)
			s.done += 2 + len(one.pieces)/4
			for a := range one.pieces {
				if g := &one.pieces[a].frame; f.near(g, gap) {
					s.done += 1 + len(other.pieces)/4
					back := g.shifted(-x, -y)
					for b := range other.pieces {
						if back.near(&other.pieces[b].frame, gap) {
							s.links = append(s.links, link{i, j, a, b})
						}
					}
				}
			}
		}
	}
}

// relax pushes all parts apart at once, until they are stuck, and reports whether nothing
// overlaps.
func (s *search) relax() bool {
	slack := farther * s.extra
	s.linked(slack)
	before := math.Inf(1)
	for k := range rounds {
		clear(s.pushes)
		left := s.pushApart()
		if left == 0 {
			return true
		}
		if k%soonest == soonest-1 {
			if left > 0.9*before {
				return false
			}
			before = left
		}
		far := 0.0
		for i := range s.now.parts {
			far = max(far, s.pushed(i))
		}
		if far > slack/2 {
			s.linked(slack)
		}
	}
	return false
}

// pushApart pushes parts out of one another, each by half, and returns how deep they lay.
func (s *search) pushApart() float64 {
	left := 0.0
	gap := s.gap + s.extra
	s.done += len(s.now.parts) + len(s.links)*2/3
	for _, l := range s.links {
		p, q := &s.now.parts[l.i], &s.now.parts[l.j]
		x, y := q.x-p.x, q.y-p.y
		one, other := s.body(l.i), s.body(l.j)
		a, b := &one.pieces[l.a], &other.pieces[l.b]
		if g := a.frame.shifted(-x, -y); !g.near(&b.frame, gap) {
			continue
		}
		m := meeting{p: one.corners[a.from:a.to], q: other.corners[b.from:b.to], x: x, y: y, off: math.Inf(-1)}
		if !m.near(b.x+x-a.x, b.y+y-a.y, gap) {
			continue
		}
		left += max(0, s.gap-m.off)
		weight := s.weight[l.i*len(s.now.parts)+l.j]
		for _, t := range m.touches(gap) {
			if t.deep > 0 {
				half := t.deep / 2
				s.pushes[l.i].add(t.x, t.y, -float64(m.nx*half), -float64(m.ny*half), weight)
				s.pushes[l.j].add(t.x-x, t.y-y, float64(m.nx*half), float64(m.ny*half), weight)
			}
		}
	}
	return left
}

// pushed moves a part by the mean of its pushes, inside the rectangle, and returns how far
// it has gone since the links were made.
func (s *search) pushed(i int) float64 {
	f, p := s.pushes[i], s.now.parts[i]
	if f.n == 0 {
		return s.gone[i]
	}
	was := p
	x, y := float64(eager*f.x)/f.n, float64(eager*f.y)/f.n
	if p.turn < 0 && f.arm > 0 {
		q := p
		q.angle += float64(f.turn) / f.arm
		lies := s.bodies[i].lie(s.kinds[p.kind].shape, q.angle, &s.done)
		q.frame = lies.shifted(q.x, q.y)
		if s.moved(&q, x, y) {
			p = q
		}
	}
	if p == was && !s.moved(&p, x, y) {
		return s.gone[i]
	}
	s.now.parts[i] = p
	s.gone[i] += math.Abs(p.x-was.x) + math.Abs(p.y-was.y) + math.Abs(p.angle-was.angle)*(p.x1-p.x0+p.y1-p.y0)
	return s.gone[i]
}

// touch is where two pieces press on one another, from the first part's middle, and how deep.
type touch struct{ x, y, deep float64 }

// touches are the ends of the run along which the pieces meet: of the side that tells and of
// the nearest side of the other; the second is nothing where they meet in a corner.
func (m *meeting) touches(gap float64) (out [2]touch) {
	side, other, x, y := m.p, m.q, m.x, m.y
	if m.second {
		side, other, x, y = m.q, m.p, -m.x, -m.y
	}
	a, b := &side[m.side], &side[(m.side+1)%len(side)]
	along := func(c *corner) float64 { return float64(c.y*a.nx) - float64(c.x*a.ny) }
	off := func(c *corner) float64 { return float64(c.x*a.nx) + float64(c.y*a.ny) }
	v, n := &other[m.at], len(other)
	w := &other[(m.at+1)%n]
	if u := &other[(m.at+n-1)%n]; off(u) < off(w) {
		w = u
	}
	from, to, shift := along(a), along(b), float64(y*a.nx)-float64(x*a.ny)
	at := func(t float64) touch {
		px, py := v.x+float64(t*(w.x-v.x))+x, v.y+float64(t*(w.y-v.y))+y
		if m.second {
			px, py = px+m.x, py+m.y
		}
		deep := gap - m.off - float64(t*(off(w)-off(v)))
		return touch{px, py, deep}
	}
	lv, lw := along(v)+shift, along(w)+shift
	if lv == lw || max(lv, lw) <= from || min(lv, lw) >= to {
		return [2]touch{at(0)}
	}
	share := func(l float64) float64 { return min(max((l-lv)/(lw-lv), 0), 1) }
	t0, t1 := share(from), share(to)
	return [2]touch{at(t0), at(t1)}
}
