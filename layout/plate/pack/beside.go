package pack

import (
	"math"

	"ribwright/geometry"
)

// How many of the places beside a part are found by sliding one against it from outside, of
// a hundred, and how many of these come from about where it is broad.
const (
	slid  = 50
	broad = 50
)

// beside is part i beside another one that lies, or beside the rectangle's edge, and how far
// it must be moved there.
func (s *search) beside(i int) (p lying, x, y float64) {
	kind := s.now.parts[i].kind
	j := s.chance.IntN(len(s.now.parts) + 1)
	switch {
	case j == i || j == len(s.now.parts) || math.IsInf(s.now.parts[j].x0, 1):
		return s.alongEdge(kind)
	case s.chance.IntN(100) < slid:
		return s.against(kind, j)
	}
	return s.sideBySide(kind, j)
}

// alongEdge is a part with a side along an edge of the rectangle.
func (s *search) alongEdge(kind int) (p lying, x, y float64) {
	edge := s.chance.IntN(4)
	side := s.kinds[kind].shape.edge(s.chance.Float64())
	p = s.turnedOr(kind, float64(edge)*math.Pi/2-side.way)
	x, y = s.anywhere(&p)
	far := s.now.w + s.now.h
	switch edge {
	case 0:
		x = far
	case 1:
		y = far
	case 2:
		x = -far
	case 3:
		y = -far
	}
	return p, x, y
}

// turnedOr is a part turned by an angle or, where it may not lie so, by one that it may.
func (s *search) turnedOr(kind int, angle float64) lying {
	if len(s.kinds[kind].turns) > 0 {
		return s.anyhow(kind)
	}
	return s.turned(kind, -1, angle)
}

// anywhere is the way from the origin to some place in the rectangle.
func (s *search) anywhere(p *lying) (x, y float64) {
	x = float64(s.chance.Float64()*(s.now.w-(p.x1-p.x0))) - p.x0
	return x, float64(s.chance.Float64()*(s.now.h-(p.y1-p.y0))) - p.y0
}

// sideBySide is a part with a side along a side of part j, one end of both level.
func (s *search) sideBySide(kind, j int) (p lying, x, y float64) {
	q, other := &s.now.parts[j], s.body(j)
	e, f := s.kinds[kind].shape.edge(s.chance.Float64()), s.kinds[q.kind].shape.edge(s.chance.Float64())
	p = s.turnedOr(kind, f.way+q.angle+math.Pi-e.way)
	mine := s.solid(&p)
	a, b := &mine.corners[e.corner], &other.corners[f.next]
	if s.chance.IntN(2) == 0 {
		a, b = &mine.corners[e.next], &other.corners[f.corner]
	}
	n, off := &other.corners[f.corner], s.gap+s.extra
	return p, b.x + q.x + float64(off*n.nx) - a.x, b.y + q.y + float64(off*n.ny) - a.y
}

// against is a part that is long the way part j is, slid against it from some side.
func (s *search) against(kind, j int) (p lying, x, y float64) {
	q, other := &s.now.parts[j], s.body(j)
	axis := q.angle + s.kinds[q.kind].axis
	p = s.alike(kind, axis)
	x, y = s.slid(s.solid(&p), other, s.side(axis))
	return p, q.x + x, q.y + y
}

// alike is a part that is long some way, either end first.
func (s *search) alike(kind int, axis float64) lying {
	return s.turnedOr(kind, axis-s.kinds[kind].axis+float64(s.chance.IntN(2))*math.Pi)
}

// side is a way to some side of a part that is long along an axis.
func (s *search) side(axis float64) float64 {
	if s.chance.IntN(100) < broad {
		return axis + (float64(s.chance.IntN(2))+0.5)*math.Pi + 0.6*(s.chance.Float64()-0.5)
	}
	return s.chance.Float64() * 2 * math.Pi
}

// slid is how far from the other's middle a part comes to lie that is slid against it from
// some side.
func (s *search) slid(mine, other *solid, way float64) (x, y float64) {
	d := rotated(way)
	in, out := 0.0, length(geometry.Point{X: mine.x1 - mine.x0 + other.x1 - other.x0, Y: mine.y1 - mine.y0 + other.y1 - other.y0})/2+s.gap+s.extra
	for range 9 {
		if t := (in + out) / 2; s.depth(mine, other, -float64(d.cos*t), -float64(d.sin*t)) > 0 {
			in = t
		} else {
			out = t
		}
	}
	out += s.extra
	return float64(d.cos * out), float64(d.sin * out)
}
