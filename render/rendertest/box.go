package rendertest

import "math"

// Box is an upright rectangle, edges included. mm. Nowhere is the box that
// holds nothing.
type Box struct{ X0, Y0, X1, Y1 float64 }

// Nowhere returns the box that holds nothing.
func Nowhere() Box {
	inf := math.Inf(1)
	return Box{inf, inf, -inf, -inf}
}

// Around returns the smallest box that holds every point.
func Around(pts ...Point) Box {
	b := Nowhere()
	for _, p := range pts {
		b = Box{math.Min(b.X0, p.X), math.Min(b.Y0, p.Y), math.Max(b.X1, p.X), math.Max(b.Y1, p.Y)}
	}
	return b
}

// Empty reports whether the box holds no point.
func (b Box) Empty() bool { return !(b.X0 <= b.X1 && b.Y0 <= b.Y1) }

// W returns the width in mm.
func (b Box) W() float64 { return b.X1 - b.X0 }

// H returns the height in mm.
func (b Box) H() float64 { return b.Y1 - b.Y0 }

// Meet returns what both boxes hold; it may be empty.
func (b Box) Meet(c Box) Box {
	return Box{math.Max(b.X0, c.X0), math.Max(b.Y0, c.Y0), math.Min(b.X1, c.X1), math.Min(b.Y1, c.Y1)}
}

// Grow returns the box with every edge moved outward by m mm.
func (b Box) Grow(m float64) Box { return Box{b.X0 - m, b.Y0 - m, b.X1 + m, b.Y1 + m} }

// Holds reports whether the point lies in the box or on its edge.
func (b Box) Holds(p Point) bool {
	return b.X0 <= p.X && p.X <= b.X1 && b.Y0 <= p.Y && p.Y <= b.Y1
}

// Pick returns the points that lie in the box.
func (b Box) Pick(pts []Point) []Point {
	var out []Point
	for _, p := range pts {
		if b.Holds(p) {
			out = append(out, p)
		}
	}
	return out
}

// HoldsBox reports whether the whole of c lies in b.
func (b Box) HoldsBox(c Box) bool {
	return b.X0 <= c.X0 && b.Y0 <= c.Y0 && c.X1 <= b.X1 && c.Y1 <= b.Y1
}

// Off returns by how much the edges of two boxes differ at most, mm.
func (b Box) Off(c Box) float64 {
	return math.Max(math.Max(math.Abs(b.X0-c.X0), math.Abs(b.Y0-c.Y0)), math.Max(math.Abs(b.X1-c.X1), math.Abs(b.Y1-c.Y1)))
}
