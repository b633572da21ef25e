// Package curve holds the lines a boat is drawn with: straight lines, circular
// arcs and Bézier cubics joined into paths, the elastic batten, and tracks in
// space with their true lengths.
package curve

import (
	"fmt"
	"math"

	"ribwright/geometry"
)

// Segment is one piece of a path. The set is closed: Line, Arc and Cubic, so
// that every consumer can switch over all kinds.
type Segment interface {
	// Start and End return the end points, mm.
	Start() geometry.Point
	End() geometry.Point
	// At returns the point at the parameter t in [0, 1]; t outside is extended.
	At(t float64) geometry.Point
	// Length returns the length along the segment in mm. Exact for lines and
	// arcs, to about 1e-6 of the length for cubics of less than a half turn.
	Length() float64
	// Bounds returns the smallest upright box around the segment.
	Bounds() geometry.Box
	// Reverse returns the same piece run the other way.
	Reverse() Segment
	segment()
}

// Every kind there is; a new one must be added here and to the lists of examples that
// tests go through.
var (
	_ Segment = Line{}
	_ Segment = Arc{}
	_ Segment = Cubic{}
)

// Line is the straight piece from A to B. mm.
type Line struct{ A, B geometry.Point }

func (l Line) Start() geometry.Point       { return l.A }
func (l Line) End() geometry.Point         { return l.B }
func (l Line) At(t float64) geometry.Point { return l.A.Lerp(l.B, t) }
func (l Line) Length() float64             { return l.B.Sub(l.A).Norm() }
func (l Line) Bounds() geometry.Box        { return geometry.Around(l.A, l.B) }
func (l Line) Reverse() Segment            { return Line{l.B, l.A} }

func (Line) segment() {}

// Arc is a piece of a circle: from the angle From (counter-clockwise from x)
// through Sweep, counter-clockwise when positive. Radius is mm and > 0; the
// angles are radians, with |Sweep| up to a full turn.
type Arc struct {
	Center      geometry.Point
	Radius      float64
	From, Sweep float64
}

func (a Arc) Start() geometry.Point { return a.At(0) }
func (a Arc) End() geometry.Point   { return a.At(1) }

func (a Arc) At(t float64) geometry.Point {
	return a.Center.Add(geometry.Polar(a.Radius, a.From+t*a.Sweep))
}

func (a Arc) Length() float64 { return a.Radius * math.Abs(a.Sweep) }

// Bounds returns the box around the arc; it counts the quarter points the
// sweep passes, not only the ends.
func (a Arc) Bounds() geometry.Box {
	b := geometry.Around(a.Start(), a.End())
	lo, hi := a.From, a.From+a.Sweep
	if lo > hi {
		lo, hi = hi, lo
	}
	for k := math.Ceil(lo / (math.Pi / 2)); k*math.Pi/2 <= hi; k++ {
		b = b.Union(geometry.Around(a.Center.Add(geometry.Polar(a.Radius, k*math.Pi/2))))
	}
	return b
}

func (a Arc) Reverse() Segment {
	return Arc{a.Center, a.Radius, a.From + a.Sweep, -a.Sweep}
}

func (Arc) segment() {}

// maxPieceSweep is the widest arc turned into one cubic: at 30 degrees the
// radius is off by 4e-7 of itself, 0.0002 mm at 500 mm (TestArcAsCubics).
const maxPieceSweep = math.Pi / 6

// Cubics returns the arc as Bézier cubics of at most 30 degrees each, with
// handles of 4/3 tan(sweep/4) radii. The ends are exact to rounding; between
// them the radius errs by less than 5e-7 of itself.
func (a Arc) Cubics() []Cubic {
	n := int(math.Ceil(math.Abs(a.Sweep) / maxPieceSweep))
	if n < 1 {
		n = 1
	}
	step := a.Sweep / float64(n)
	handle := a.Radius * 4 / 3 * math.Tan(step/4)
	out := make([]Cubic, n)
	for i := range out {
		t0 := a.From + step*float64(i)
		t1 := t0 + step
		p0 := a.Center.Add(geometry.Polar(a.Radius, t0))
		p3 := a.Center.Add(geometry.Polar(a.Radius, t1))
		out[i] = Cubic{
			P0: p0, P1: p0.Add(geometry.Polar(handle, t0+math.Pi/2)),
			P2: p3.Sub(geometry.Polar(handle, t1+math.Pi/2)), P3: p3,
		}
	}
	return out
}

// Cubic is a Bézier cubic from P0 to P3 with the handles P1 and P2. mm.
type Cubic struct{ P0, P1, P2, P3 geometry.Point }

func (c Cubic) Start() geometry.Point { return c.P0 }
func (c Cubic) End() geometry.Point   { return c.P3 }

func (c Cubic) At(t float64) geometry.Point {
	u := 1 - t
	return c.P0.Scale(u * u * u).Add(c.P1.Scale(3 * u * u * t)).
		Add(c.P2.Scale(3 * u * t * t)).Add(c.P3.Scale(t * t * t))
}

// Slope returns the derivative of At at t, in mm per unit of t.
func (c Cubic) Slope(t float64) geometry.Point {
	u := 1 - t
	return c.P1.Sub(c.P0).Scale(3 * u * u).Add(c.P2.Sub(c.P1).Scale(6 * u * t)).
		Add(c.P3.Sub(c.P2).Scale(3 * t * t))
}

// Length returns the length along the cubic in mm, by Gauss-Legendre in
// sixteen panels.
func (c Cubic) Length() float64 {
	return Integrate(func(t float64) float64 { return c.Slope(t).Norm() }, 0, 1, 16)
}

func (c Cubic) Bounds() geometry.Box {
	b := geometry.Around(c.P0, c.P3)
	for _, t := range append(
		turns(c.P0.X, c.P1.X, c.P2.X, c.P3.X), turns(c.P0.Y, c.P1.Y, c.P2.Y, c.P3.Y)...) {
		b = b.Union(geometry.Around(c.At(t)))
	}
	return b
}

// turns returns the parameters in (0, 1) where one coordinate stands still.
func turns(p0, p1, p2, p3 float64) []float64 {
	a, b, c := p3-3*p2+3*p1-p0, 2*(p2-2*p1+p0), p1-p0
	var roots []float64
	add := func(t float64) {
		if t > 0 && t < 1 {
			roots = append(roots, t)
		}
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	// The stable pair: one root from the large sum, the other from the product.
	q := -0.5 * (b + math.Copysign(math.Sqrt(disc), b))
	if q != 0 {
		add(c / q)
	}
	if a != 0 {
		add(q / a)
	}
	return roots
}

func (c Cubic) Reverse() Segment { return Cubic{c.P3, c.P2, c.P1, c.P0} }

func (Cubic) segment() {}

// Stretch returns the piece of a segment from the parameter a to b, 0 <= a <= b <= 1,
// run through as the segment is; the segment itself from 0 to 1.
//
// Accuracy: that of doubles; of a cubic it is the same curve, cut after de Casteljau.
func Stretch(s Segment, a, b float64) Segment {
	if a <= 0 && b >= 1 {
		return s
	}
	switch s := s.(type) {
	case Line:
		return Line{A: s.At(a), B: s.At(b)}
	case Arc:
		return Arc{Center: s.Center, Radius: s.Radius, From: s.From + a*s.Sweep, Sweep: (b - a) * s.Sweep}
	case Cubic:
		// The handles of a stretch are a third of the slope at its ends.
		k := (b - a) / 3
		p, q := s.At(a), s.At(b)
		return Cubic{P0: p, P1: p.Add(s.Slope(a).Scale(k)), P2: q.Sub(s.Slope(b).Scale(k)), P3: q}
	}
	panic(fmt.Sprintf("a segment of no known kind: %T", s))
}
