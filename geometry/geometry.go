// Package geometry holds the nouns every other package shares: points, boxes
// and flat transforms.
//
// Units and axes, everywhere inside the program: lengths are float64
// millimetres, angles are radians, masses kilograms, forces newtons. In space
// x runs forward from midship (the middle of the length overall), y to port
// and z up from the baseline. In flat drawings x runs right and y up; only the
// packages under render know points, degrees or y down.
package geometry

import "math"

// Point is a place, or the step between two places, in a flat drawing. mm.
type Point struct{ X, Y float64 }

// Pt returns the point at x and y, mm.
func Pt(x, y float64) Point { return Point{x, y} }

// Point3 is a place, or the step between two places, in the boat. mm.
type Point3 struct{ X, Y, Z float64 }

// Add returns p moved by the step q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns the step p made k times as long.
func (p Point) Scale(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product of two steps, in mm².
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the z part of the vector product of two steps, in mm²;
// positive when q lies counter-clockwise of p.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Norm returns the length of the step p, in mm.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// Unit returns the step of length 1 along p; the zero step stays zero.
func (p Point) Unit() Point {
	n := p.Norm()
	if n == 0 {
		return Point{}
	}
	return Point{p.X / n, p.Y / n}
}

// Left returns p turned a quarter turn counter-clockwise.
func (p Point) Left() Point { return Point{-p.Y, p.X} }

// Lerp returns the point a share t of the way from p to q; t = 0 gives p.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.X + (q.X-p.X)*t, p.Y + (q.Y-p.Y)*t}
}

// Off returns the distance from p to the straight piece from a to b.
func (p Point) Off(a, b Point) float64 {
	ab, ap := b.Sub(a), p.Sub(a)
	t := 0.0
	if l := ab.Dot(ab); l > 0 {
		t = max(0, min(1, ap.Dot(ab)/l))
	}
	return ap.Sub(ab.Scale(t)).Norm()
}

// Polar returns the step of length r at the angle a, counter-clockwise from x.
func Polar(r, a float64) Point {
	sin, cos := math.Sincos(a)
	return Point{r * cos, r * sin}
}

// Finite reports whether neither coordinate is NaN or infinite.
func (p Point) Finite() bool { return Finite(p.X) && Finite(p.Y) }

// Finite reports whether v is neither NaN nor infinite.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Add returns p moved by the step q.
func (p Point3) Add(q Point3) Point3 { return Point3{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Sub returns the step from q to p.
func (p Point3) Sub(q Point3) Point3 { return Point3{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Scale returns the step p made k times as long.
func (p Point3) Scale(k float64) Point3 { return Point3{k * p.X, k * p.Y, k * p.Z} }

// Cross returns the step square to both p and q.
func (p Point3) Cross(q Point3) Point3 {
	return Point3{p.Y*q.Z - p.Z*q.Y, p.Z*q.X - p.X*q.Z, p.X*q.Y - p.Y*q.X}
}

// Dot returns the scalar product of the steps p and q.
func (p Point3) Dot(q Point3) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

// Norm returns the length of the step p, in mm.
func (p Point3) Norm() float64 { return math.Sqrt(p.X*p.X + p.Y*p.Y + p.Z*p.Z) }

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
// EmptyBox. A coordinate that is no number is passed over.
func Around(pts ...Point) Box {
	b := EmptyBox()
	for _, p := range pts {
		b.Add(p)
	}
	return b
}

// Add grows b to hold p; a coordinate that is no number leaves it.
func (b *Box) Add(p Point) {
	if p.X < b.Min.X {
		b.Min.X = p.X
	}
	if p.X > b.Max.X {
		b.Max.X = p.X
	}
	if p.Y < b.Min.Y {
		b.Min.Y = p.Y
	}
	if p.Y > b.Max.Y {
		b.Max.Y = p.Y
	}
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
		Point{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)},
		Point{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)},
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

// Away returns the square of how far p lies outside b, in mm2; 0 in it and on its edge.
func (b Box) Away(p Point) float64 {
	dx, dy := outside(p.X, b.Min.X, b.Max.X), outside(p.Y, b.Min.Y, b.Max.Y)
	return dx*dx + dy*dy
}

func outside(at, least, most float64) float64 {
	if at < least {
		return least - at
	}
	if at > most {
		return at - most
	}
	return 0
}

// Holds reports whether p lies in b or on its edge.
func (b Box) Holds(p Point) bool {
	return b.Min.X <= p.X && p.X <= b.Max.X && b.Min.Y <= p.Y && p.Y <= b.Max.Y
}

// Affine is a flat transform: (x, y) goes to (A x + C y + E, B x + D y + F).
// A to D have no unit, E and F are mm. The zero Affine is not usable; start
// from Shift, Turn or Stretch.
type Affine struct{ A, B, C, D, E, F float64 }

// Shift returns the transform that moves everything by (dx, dy) mm.
func Shift(dx, dy float64) Affine { return Affine{1, 0, 0, 1, dx, dy} }

// Turn returns the turn by a radians counter-clockwise about the origin.
func Turn(a float64) Affine {
	s, c := math.Sincos(a)
	return Affine{c, s, -s, c, 0, 0}
}

// Stretch returns the transform that multiplies x by kx and y by ky.
func Stretch(kx, ky float64) Affine { return Affine{kx, 0, 0, ky, 0, 0} }

// Apply returns where m takes p.
func (m Affine) Apply(p Point) Point {
	return Point{m.A*p.X + m.C*p.Y + m.E, m.B*p.X + m.D*p.Y + m.F}
}

// Then returns the transform that does m first and n after it.
func (m Affine) Then(n Affine) Affine {
	return Affine{
		A: n.A*m.A + n.C*m.B, B: n.B*m.A + n.D*m.B,
		C: n.A*m.C + n.C*m.D, D: n.B*m.C + n.D*m.D,
		E: n.A*m.E + n.C*m.F + n.E, F: n.B*m.E + n.D*m.F + n.F,
	}
}

// Det returns the factor by which m changes areas; negative when m mirrors.
func (m Affine) Det() float64 { return m.A*m.D - m.B*m.C }

// Similar reports whether m keeps circles round, to 1e-12 of its scale: then
// it is a turn, a uniform stretch, a shift, a mirror or a mix of these.
func (m Affine) Similar() bool {
	tol := 1e-12 * (m.A*m.A + m.B*m.B)
	return math.Abs(m.A*m.C+m.B*m.D) <= tol &&
		math.Abs(m.A*m.A+m.B*m.B-m.C*m.C-m.D*m.D) <= tol
}
