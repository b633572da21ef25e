package curve

import (
	"math"

	"ribwright/geometry"
)

// Cubic is a Bézier cubic from P0 to P3 with the handles P1 and P2. mm.
type Cubic struct{ P0, P1, P2, P3 geometry.Point }

// Start returns P0.
func (c Cubic) Start() geometry.Point { return c.P0 }

// End returns P3.
func (c Cubic) End() geometry.Point { return c.P3 }

// At returns the point at the parameter t.
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

// Bounds returns the box around the cubic itself, not around its handles.
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

// Reverse returns the same cubic from P3 to P0.
func (c Cubic) Reverse() Segment { return Cubic{c.P3, c.P2, c.P1, c.P0} }

func (Cubic) segment() {}
