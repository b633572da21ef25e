package pack

import "math"

// How a part that was taken out is laid: how many places are tried, how many of these are
// walked down from, how far beyond the gap a neighbor counts as touching, in shares of a
// mean part's size, and how dear a millimeter of overlap is, in shares of the part's size.
// Our own choices.
const (
	places            = 60
	chosen            = 6
	halo              = 0.2
	cheapest, dearest = 0.4, 20
)

// insert lays part i, which was taken out, where it touches most; overlap counts against
// that, sometimes more and sometimes less.
func (s *search) insert(i int) {
	var few [chosen]found
	best := few[:0]
	f := &s.kinds[s.now.parts[i].kind].shape.frame
	size := f.x1 - f.x0 + f.y1 - f.y0
	dear := size * (cheapest + (dearest-cheapest)*math.Pow(s.chance.Float64(), 3))
	here, most := s.now.parts[i], math.Inf(-1)
	consider := func(p *lying, cost float64) {
		if v := s.touching(i, p) - float64(dear*cost); v > most {
			here, most = *p, v
		}
	}
	for range places {
		p, x, y := s.beside(i)
		if !s.moved(&p, x, y) {
			continue
		}
		limit := math.Inf(1)
		if len(best) == chosen {
			limit = best[chosen-1].cost
		}
		if c := s.cost(i, &p, limit); c == 0 {
			consider(&p, 0)
		} else if c < limit {
			best = kept(best, found{p, c})
		}
	}
	for _, f := range best {
		f = s.walk(i, f, size/400)
		consider(&f.lying, f.cost)
	}
	s.now.parts[i] = here
	s.measure(i)
}

// touching is how much of part i, lying so, is near others or the rectangle's edges: lengths
// along which it faces them, each times how near it is, mm2.
func (s *search) touching(i int, p *lying) float64 {
	body, gap, reach := s.solid(p), s.gap, halo*s.size()
	s.gap += reach
	sum := 0.0
	for j := range s.now.parts {
		q := &s.now.parts[j]
		if j == i || !p.near(&q.frame, s.gap) {
			continue
		}
		for _, m := range s.meet(body, s.body(j), q.x-p.x, q.y-p.y) {
			if t := m.touches(s.gap); t[1] != (touch{}) {
				sum += float64((math.Abs(t[0].x-t[1].x) + math.Abs(t[0].y-t[1].y)) * (s.gap - m.off))
			}
		}
	}
	s.gap = gap
	for _, e := range s.kinds[p.kind].shape.edges {
		a, b := &body.corners[e.corner], &body.corners[e.next]
		l := math.Abs(a.x-b.x) + math.Abs(a.y-b.y)
		for _, d := range [4]float64{max(a.x, b.x) + p.x, max(a.y, b.y) + p.y, s.now.w - p.x - min(a.x, b.x), s.now.h - p.y - min(a.y, b.y)} {
			sum += float64(l * max(0, reach-d))
		}
	}
	return sum
}
