package rendertest

import "math"

// Crosses returns the middles of the registration crosses on a page: a level
// and an upright line of the given length that halve each other, with a circle
// of the given radius round their middle, all to tol mm. Only unclipped strokes
// count, so a pattern's own lines are never taken for one; a cross drawn twice at
// one place counts once.
func (p Page) Crosses(long, radius, tol float64) []Point {
	var level, upright, circles []Point
	whole := Box{0, 0, p.W, p.H}
	for _, s := range p.Strokes {
		if s.Clip != whole || len(s.Outlines) != 1 {
			continue
		}
		o := s.Outlines[0]
		b := o.Bounds()
		mid := Point{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2}
		near := func(a, b float64) bool { return math.Abs(a-b) <= tol }
		switch {
		case o.isCircle(mid, radius, tol):
			circles = append(circles, mid)
		case len(o.Pieces) == 1 && near(b.W(), long) && near(b.H(), 0):
			level = append(level, mid)
		case len(o.Pieces) == 1 && near(b.H(), long) && near(b.W(), 0):
			upright = append(upright, mid)
		}
	}
	var out []Point
	for _, q := range circles {
		if hasNear(level, q, tol) && hasNear(upright, q, tol) && !hasNear(out, q, tol) {
			out = append(out, q)
		}
	}
	return out
}

// isCircle reports whether the outline is a full circle.
func (o Outline) isCircle(mid Point, radius, tol float64) bool {
	if !o.Closed || o.Straight() {
		return false
	}
	for _, q := range o.Points(8) {
		if math.Abs(q.To(mid)-radius) > tol {
			return false
		}
	}
	return math.Abs(math.Abs(o.Area(8))-math.Pi*radius*radius) <= 0.1*radius*radius
}

// SameSet reports whether each point of one set has one of the other within tol
// mm.
func SameSet(a, b []Point, tol float64) bool {
	for _, p := range a {
		if !hasNear(b, p, tol) {
			return false
		}
	}
	for _, p := range b {
		if !hasNear(a, p, tol) {
			return false
		}
	}
	return true
}

func hasNear(pts []Point, q Point, tol float64) bool {
	for _, p := range pts {
		if p.To(q) <= tol {
			return true
		}
	}
	return false
}
