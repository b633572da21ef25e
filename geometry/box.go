package geometry

import "math"

// Box is an upright rectangle from Min to Max, both edges included. mm.
// EmptyBox is the box that holds nothing; the zero Box holds the origin.
type Box struct{ Min, Max Point }

// EmptyBox returns the box that holds nothing and grows to what is added.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

// Rect returns the box between two corners, mm: x0 is at most x1, y0 at most y1.
func Rect(x0, y0, x1, y1 float64) Box { return Box{Point{x0, y0}, Point{x1, y1}} }

// Around returns the smallest box that holds every point; with no point it is
// EmptyBox.
func Around(pts ...Point) Box {
	b := EmptyBox()
	for _, p := range pts {
		b = b.Union(Box{p, p})
	}
	return b
}

// Empty reports whether b holds no point.
func (b Box) Empty() bool { return !(b.Min.X <= b.Max.X && b.Min.Y <= b.Max.Y) }

// W returns the width of b in mm; meaningless for an empty box.
func (b Box) W() float64 { return b.Max.X - b.Min.X }

// H returns the height of b in mm; meaningless for an empty box.
func (b Box) H() float64 { return b.Max.Y - b.Min.Y }

// Center returns the middle of b; meaningless for an empty box.
func (b Box) Center() Point { return b.Min.Lerp(b.Max, 0.5) }

// Union returns the smallest box that holds both.
func (b Box) Union(c Box) Box {
	return Box{
		Point{math.Min(b.Min.X, c.Min.X), math.Min(b.Min.Y, c.Min.Y)},
		Point{math.Max(b.Max.X, c.Max.X), math.Max(b.Max.Y, c.Max.Y)},
	}
}

// Grow returns b with every edge moved outward by m mm; negative m shrinks it.
func (b Box) Grow(m float64) Box {
	return Box{Point{b.Min.X - m, b.Min.Y - m}, Point{b.Max.X + m, b.Max.Y + m}}
}

// Overlaps reports whether b and c share a point; boxes that only touch do.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}

// Holds reports whether p lies in b or on its edge.
func (b Box) Holds(p Point) bool {
	return b.Min.X <= p.X && p.X <= b.Max.X && b.Min.Y <= p.Y && p.Y <= b.Max.Y
}
