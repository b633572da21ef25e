package geometry

import "math"

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
