package nest

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// How far the polygon of a part may leave its true edge, mm: when a nest is
// laid on cells, and when it is proved.
const (
	rough = 0.1
	chord = 0.01
)

// leastHole is the width of a hole under which nothing can lie in it, so that it counts
// as wood, mm: holes for bolts and lashings only slow the search down. Our own choice.
const leastHole = 20.0

// shape is a part's closed edges as polygons that repeat their first point, the
// outer edge last, turned about the part's own origin. Small holes are left out.
type shape struct {
	loops [][]geometry.Point
	box   geometry.Box
}

func newShape(p layout.Part, chord float64) shape {
	s := shape{box: geometry.EmptyBox()}
	ground := p.Ground()
	for i, c := range ground {
		if b := c.Bounds(); i < len(ground)-1 && max(b.W(), b.H()) < leastHole {
			continue
		}
		pts := c.Flatten(chord)
		s.loops = append(s.loops, pts)
		s.box = s.box.Union(geometry.Around(pts...))
	}
	return s
}

// area is what the shape takes of a board, mm2.
func (s shape) area() float64 {
	sum := 0.0
	for i, l := range s.loops {
		a := math.Abs(curve.Area(l))
		if i < len(s.loops)-1 {
			a = -a
		}
		sum += a
	}
	return sum
}

func (s shape) mapped(m geometry.Affine) shape {
	out := shape{box: geometry.EmptyBox()}
	for _, l := range s.loops {
		pts := make([]geometry.Point, len(l))
		for i, p := range l {
			pts[i] = m.Apply(p)
		}
		out.loops = append(out.loops, pts)
		out.box = out.box.Union(geometry.Around(pts...))
	}
	return out
}

// same reports whether two shapes are the same, point by point.
func (s shape) same(t shape) bool {
	return s.box == t.box && slices.EqualFunc(s.loops, t.loops, slices.Equal)
}

func (s shape) edges(f func(a, b geometry.Point)) {
	for _, l := range s.loops {
		for i := 1; i < len(l); i++ {
			f(l[i-1], l[i])
		}
	}
}

// holds reports whether p lies in the wood, by the even-odd rule.
func (s shape) holds(p geometry.Point) bool {
	in := false
	for _, l := range s.loops {
		in = in != curve.Holds(l, p)
	}
	return in
}

// apart reports whether two shapes keep the distance gap from each other, with
// neither inside the other's wood.
func apart(s, t shape, gap float64) bool {
	if !s.box.Grow(gap).Overlaps(t.box) {
		return true
	}
	if s.holds(t.loops[len(t.loops)-1][0]) || t.holds(s.loops[len(s.loops)-1][0]) {
		return false
	}
	ok := true
	near := t.box.Grow(gap)
	s.edges(func(a, b geometry.Point) {
		box := geometry.Around(a, b)
		if !ok || !box.Overlaps(near) {
			return
		}
		t.edges(func(c, d geometry.Point) {
			ok = ok && (!geometry.Around(c, d).Grow(gap).Overlaps(box) || spacing(a, b, c, d) >= gap)
		})
	})
	return ok
}

// spacing returns the distance between two straight pieces, 0 when they cross.
func spacing(a, b, c, d geometry.Point) float64 {
	if crossing(a, b, c, d) {
		return 0
	}
	return min(a.Off(c, d), b.Off(c, d), c.Off(a, b), d.Off(a, b))
}

func crossing(a, b, c, d geometry.Point) bool {
	side := func(p, q, r geometry.Point) bool { return q.Sub(p).Cross(r.Sub(p)) > 0 }
	return side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
}
