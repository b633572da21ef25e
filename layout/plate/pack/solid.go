package pack

import (
	"math"

	"ribwright/geometry"
)

// frame is an upright rectangle; plain numbers, because it is asked for often.
type frame struct{ x0, y0, x1, y1 float64 }

func (f frame) shifted(x, y float64) frame { return frame{f.x0 + x, f.y0 + y, f.x1 + x, f.y1 + y} }

// near reports whether two frames come nearer than the gap.
func (f *frame) near(g *frame, gap float64) bool {
	return f.x0 < g.x1+gap && g.x0 < f.x1+gap && f.y0 < g.y1+gap && g.y0 < f.y1+gap
}

func framed(pts []geometry.Point) frame {
	b := geometry.Around(pts...)
	return frame{b.Min.X, b.Min.Y, b.Max.X, b.Max.Y}
}

// solid is a part at one turn, about its middle: the corners of its convex pieces, one
// piece after the other.
type solid struct {
	frame
	corners []corner
	pieces  []piece
	edges   []edge // of the outline; only of the part as it is given
	of      *solid // that it was turned from
}

// edge is a side of the outline: its corners, and how long all edges up to its end are.
type edge struct {
	corner, next int
	upTo         float64
	way          float64 // of its normal, radians
}

// corner is a corner of a piece with the side that goes on from it: the normal outward, and
// how far the side's line lies from the part's middle.
type corner struct{ x, y, nx, ny, c float64 }

// piece is a run of corners, counterclockwise, the box round them and a point within.
type piece struct {
	frame
	x, y     float64
	from, to int
}

// newSolid lays convex pieces about a middle.
func newSolid(pieces []polygon, mid geometry.Point) *solid {
	out := &solid{}
	for _, p := range pieces {
		q := piece{from: len(out.corners), to: len(out.corners) + len(p)}
		for i, a := range p {
			a, b := a.Sub(mid), p[(i+1)%len(p)].Sub(mid)
			n := normal(a, b)
			out.corners = append(out.corners, corner{a.X, a.Y, n.X, n.Y, float64(n.X*a.X) + float64(n.Y*a.Y)})
			q.x, q.y = q.x+a.X/float64(len(p)), q.y+a.Y/float64(len(p))
		}
		out.pieces = append(out.pieces, q)
	}
	out.turn(out, 0)
	sum := 0.0
	for i, p := range out.pieces {
		for k := p.from; k < p.to; k++ {
			next := k + 1
			if next == p.to {
				next = p.from
			}
			if !out.cut(i, k, next) {
				a, b := out.corners[k], out.corners[next]
				sum += length(geometry.Point{X: b.x - a.x, Y: b.y - a.y})
				out.edges = append(out.edges, edge{k, next, sum, math.Atan2(a.ny, a.nx)})
			}
		}
	}
	return out
}

// cut reports whether a side of piece i parts it from another one.
func (s *solid) cut(i, k, next int) bool {
	a, b := s.corners[k], s.corners[next]
	for j, q := range s.pieces {
		for m := q.from; m < q.to && j != i; m++ {
			n := m + 1
			if n == q.to {
				n = q.from
			}
			c, d := s.corners[m], s.corners[n]
			if a.x == d.x && a.y == d.y && b.x == c.x && b.y == c.y {
				return true
			}
		}
	}
	return false
}

// edge is the one at a share of the outline's length.
func (s *solid) edge(u float64) *edge {
	u *= s.edges[len(s.edges)-1].upTo
	for i := range s.edges {
		if u < s.edges[i].upTo {
			return &s.edges[i]
		}
	}
	return &s.edges[0]
}

func normal(a, b geometry.Point) geometry.Point {
	d := b.Sub(a)
	l := length(d)
	return geometry.Point{X: d.Y / l, Y: -d.X / l}
}

// turn makes the solid another one, turned; it takes memory only the first time.
func (s *solid) turn(from *solid, angle float64) {
	if s.of != from {
		s.of = from
		s.corners, s.pieces = append(s.corners[:0], from.corners...), append(s.pieces[:0], from.pieces...)
	}
	r := rotated(angle)
	inf := math.Inf(1)
	s.frame = frame{inf, inf, -inf, -inf}
	for i := range s.pieces {
		p, q := &s.pieces[i], &from.pieces[i]
		p.x, p.y = r.at(q.x, q.y)
		f := frame{inf, inf, -inf, -inf}
		to := s.corners[p.from:p.to]
		for k, c := range from.corners[p.from:p.to] {
			x, y := r.at(c.x, c.y)
			to[k].x, to[k].y = x, y
			to[k].nx, to[k].ny = r.at(c.nx, c.ny)
			f.x0, f.x1, f.y0, f.y1 = min(f.x0, x), max(f.x1, x), min(f.y0, y), max(f.y1, y)
		}
		p.frame = f
		s.x0, s.x1, s.y0, s.y1 = min(s.x0, f.x0), max(s.x1, f.x1), min(s.y0, f.y0), max(s.y1, f.y1)
	}
}

// rotation is a turn, rounded so that every processor has the same.
type rotation struct{ cos, sin float64 }

func rotated(angle float64) rotation {
	const fine = 1 << 40
	s, c := math.Sincos(angle)
	return rotation{math.Round(c*fine) / fine, math.Round(s*fine) / fine}
}

// at turns a point; products are rounded one by one, so that every processor agrees.
func (r rotation) at(x, y float64) (float64, float64) {
	return float64(r.cos*x) - float64(r.sin*y), float64(r.sin*x) + float64(r.cos*y)
}
