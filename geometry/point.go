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
		t = math.Max(0, math.Min(1, ap.Dot(ab)/l))
	}
	return ap.Sub(ab.Scale(t)).Norm()
}

// Polar returns the step of length r at the angle a, counter-clockwise from x.
func Polar(r, a float64) Point { return Point{r * math.Cos(a), r * math.Sin(a)} }

// Finite reports whether neither coordinate is NaN or infinite.
func (p Point) Finite() bool { return Finite(p.X) && Finite(p.Y) }

// Finite reports whether v is neither NaN nor infinite.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Add returns p moved by the step q.
func (p Point3) Add(q Point3) Point3 { return Point3{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Sub returns the step from q to p.
func (p Point3) Sub(q Point3) Point3 { return Point3{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Norm returns the length of the step p, in mm.
func (p Point3) Norm() float64 { return math.Sqrt(p.X*p.X + p.Y*p.Y + p.Z*p.Z) }
