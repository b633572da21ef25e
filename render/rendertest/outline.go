// Package rendertest reads the files the back ends write, so that tests can
// measure what really stands in them. It is an ordinary package, but only tests
// import it. It shares no code with the writers: its own points, its own
// parsers, nothing but the standard library.
//
// Everything it returns is in millimetres from the lower left corner of the
// page or plate, y up, angles counter-clockwise in radians, whatever the file's
// own units are. What a file may not hold is an error, not a guess.
package rendertest

import "math"

// Point is a place, or the step between two places. mm.
type Point struct{ X, Y float64 }

// To returns the distance between two points in mm.
func (p Point) To(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// Piece is one straight or curved piece of an outline.
type Piece struct {
	From, To Point
	Curved   bool
	C1, C2   Point // the handles of a Bézier cubic, when Curved
}

// At returns the point at the parameter t from 0 to 1.
func (p Piece) At(t float64) Point {
	u := 1 - t
	if !p.Curved {
		return Point{p.From.X*u + p.To.X*t, p.From.Y*u + p.To.Y*t}
	}
	a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		a*p.From.X + b*p.C1.X + c*p.C2.X + d*p.To.X,
		a*p.From.Y + b*p.C1.Y + c*p.C2.Y + d*p.To.Y,
	}
}

// Outline is one chain of pieces. A closed one ends where it starts: when the
// file leaves the last side to the closing operator, that side is a piece too.
type Outline struct {
	Pieces []Piece
	Closed bool
}

// Points returns the ends of the straight pieces and, on each curved piece, the
// points at the given number of equal steps of the parameter (1 or more).
func (o Outline) Points(steps int) []Point {
	n := 1
	for _, p := range o.Pieces {
		if n++; p.Curved {
			n += steps - 1
		}
	}
	out := make([]Point, 0, n)
	for i, p := range o.Pieces {
		if i == 0 {
			out = append(out, p.From)
		}
		for k := 1; p.Curved && k < steps; k++ {
			out = append(out, p.At(float64(k)/float64(steps)))
		}
		out = append(out, p.To)
	}
	return out
}

// Corners returns where the pieces meet, a closed outline's start only once.
func (o Outline) Corners() []Point {
	pts := o.Points(1)
	if n := len(pts); o.Closed && n > 1 {
		pts = pts[:n-1]
	}
	return pts
}

// Straight reports whether no piece is curved.
func (o Outline) Straight() bool {
	for _, p := range o.Pieces {
		if p.Curved {
			return false
		}
	}
	return true
}

// Area returns the area inside the outline in mm², curves cut into the given
// number of chords; positive when it runs counter-clockwise.
func (o Outline) Area(steps int) float64 {
	pts, sum := o.Points(steps), 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

// Bounds returns the box around the outline, curves sampled at 32 points each.
func (o Outline) Bounds() Box { return Around(o.Points(32)...) }
