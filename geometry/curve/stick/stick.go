// Package stick bends a rectangular stick in space: tied to pins, with one stiffness
// off its flat and another along it.
package stick

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// Pin is where a stick is tied, mm. Flat is the angle that its flat makes with level
// there, seen from ahead: 0 lies level, a right angle stands upright, radians.
type Pin struct {
	geometry.Point3
	Flat float64
}

// Stick is the curve of least bending energy through its pins, free at both ends, to
// first order in the slopes. Beyond its end pins it runs straight.
//
// How: between two pins the bending moment, across and up, runs straight, and the
// curvature is the moment times a flexibility that has the stick's two axes. Within a
// bay the flexibility is the parabola through its values at both pins and half way,
// where the flat stands half way between. Where the flat never turns the stick is a
// natural spline in plan and another in profile.
//
// Accuracy: the parabola is exact without twist; where one bay twists by 65 degrees it
// is off by at most a tenth of what the two flexibilities differ by (TestParabola).
//
// Source: any text on beams (flexibility method, bending about two axes).
type Stick struct {
	pins []Pin
	bays []bent
}

// bent is one bay with its ends' turning known: the curvature is the cubic c in the
// share of the bay, 1/mm.
type bent struct {
	slope geometry.Point // dy/dx and dz/dx where it begins
	h     float64
	c     [4]geometry.Point
}

// New returns the stick through its pins, stiff times as stiff along its flat as off
// it: the square of width over depth.
//
// Requires: at least two pins, X rising, all finite; stiff > 0.
func New(pins []Pin, stiff float64) (*Stick, error) {
	if len(pins) < 2 || !(stiff > 0) || math.IsInf(stiff, 0) {
		return nil, errors.New("a stick needs two pins at least, and a width and a depth")
	}
	for i, p := range pins {
		if !geometry.Finite(p.X) || !geometry.Finite(p.Y) || !geometry.Finite(p.Z) || !geometry.Finite(p.Flat) {
			return nil, fmt.Errorf("pin %d of a stick holds a number that is no place or angle", i+1)
		}
		if i > 0 && !(p.X > pins[i-1].X) {
			return nil, fmt.Errorf("pin %d of a stick at %.1f mm does not follow the one at %.1f mm", i+1, p.X, pins[i-1].X)
		}
	}
	s := &Stick{pins, make([]bent, len(pins)-1)}
	s.bend(stiff)
	return s, nil
}

// bend runs a loose end along the pins to the last one, where there is no moment, and
// finds the moments on the way back.
func (s *Stick) bend(stiff float64) {
	last := len(s.bays) - 1
	ends := make([]Loose, len(s.bays)) // at every pin but the last
	ends[0] = Loosen(s.pins[0], stiff)
	for i := 1; i <= last; i++ {
		ends[i] = ends[i-1].To(s.pins[i])
	}
	var far geometry.Point
	for i := last; i >= 0; i-- {
		b := ends[i].bay(s.pins[i+1])
		near := ends[i].moment(&b, far)
		s.bays[i] = b.bent(near, far)
		far = near
	}
}

// Ends returns the stations of both ends, mm.
func (s *Stick) Ends() (aft, fore float64) { return s.pins[0].X, s.pins[len(s.pins)-1].X }

// at returns the bay of the station x and the share of it that lies before x.
func (s *Stick) at(x float64) (i int, t float64) {
	i = sort.Search(len(s.bays)-1, func(i int) bool { return s.pins[i+1].X >= x })
	return i, (x - s.pins[i].X) / s.bays[i].h
}

// Run returns where the stick is at the station x, across and up in mm, how it points
// there, dy/dx and dz/dx, and how it bends, the second derivatives in 1/mm.
func (s *Stick) Run(x float64) (at, slope, bend geometry.Point) {
	aft, fore := s.Ends()
	in := min(max(x, aft), fore)
	i, t := s.at(in)
	at, slope, bend = s.run(i, t)
	if in != x {
		return at.Add(slope.Scale(x - in)), slope, geometry.Point{}
	}
	return at, slope, bend
}

// run is that in bay i, past a share of it.
func (s *Stick) run(i int, t float64) (at, slope, bend geometry.Point) {
	b, p := &s.bays[i], &s.pins[i]
	bend = cubic(&b.c, t, 1, 1, 1, 1)
	slope = b.slope.Add(cubic(&b.c, t, 1, 1.0/2, 1.0/3, 1.0/4).Scale(t * b.h))
	at = geometry.Point{X: p.Y, Y: p.Z}.Add(b.slope.Scale(b.h * t)).Add(cubic(&b.c, t, 1.0/2, 1.0/6, 1.0/12, 1.0/20).Scale(t * t * b.h * b.h))
	return at, slope, bend
}

// cubic is that of the coefficients, each so many times, at t.
func cubic(c *[4]geometry.Point, t, k0, k1, k2, k3 float64) geometry.Point {
	return geometry.Point{
		X: k0*c[0].X + t*(k1*c[1].X+t*(k2*c[2].X+t*k3*c[3].X)),
		Y: k0*c[0].Y + t*(k1*c[1].Y+t*(k2*c[2].Y+t*k3*c[3].Y)),
	}
}

// Turn returns the angle between two runs, each given as dy/dx and dz/dx, radians.
func Turn(a, b geometry.Point) float64 {
	d := b.Sub(a)
	return math.Atan2(math.Hypot(d.Norm(), a.Cross(b)), 1+a.Dot(b))
}

// Flat returns the angle of the flat at the station x, and how it turns, radians per mm
// of station: even within a bay, and no more beyond the ends.
func (s *Stick) Flat(x float64) (flat, turn float64) {
	aft, fore := s.Ends()
	return s.flat(s.at(min(max(x, aft), fore)))
}

// flat is that in bay i, past a share of it.
func (s *Stick) flat(i int, t float64) (flat, turn float64) {
	a, b := &s.pins[i], &s.pins[i+1]
	return a.Flat + (b.Flat-a.Flat)*t, (b.Flat - a.Flat) / s.bays[i].h
}

// Line returns where the stick is at x and how it points there, as a track takes them.
func (s *Stick) Line(x float64) (at, slope geometry.Point) {
	at, slope, _ = s.Run(x)
	return at, slope
}

// Slopes returns how the stick points at x, dy/dx and dz/dx.
func (s *Stick) Slopes(x float64) geometry.Point {
	aft, fore := s.Ends()
	i, t := s.at(min(max(x, aft), fore))
	b := &s.bays[i]
	return b.slope.Add(cubic(&b.c, t, 1, 1.0/2, 1.0/3, 1.0/4).Scale(t * b.h))
}

// About returns the curvatures off the flat and along it at the station x, 1/mm. They
// are those of the line in space, taken about the stick's own axes, which lie square to
// its run.
func (s *Stick) About(x float64) (off, along float64) {
	aft, fore := s.Ends()
	in := min(max(x, aft), fore)
	i, t := s.at(in)
	_, slope, bend := s.run(i, t)
	if in != x {
		bend = geometry.Point{}
	}
	flat, _ := s.flat(i, t)
	return about(slope, bend, flat)
}

// about resolves second derivatives about the axes of a stick whose flat stands at the
// angle flat across the boat: positive off the flat is up where the flat lies level and
// inward where it stands upright, positive along it is outward and up.
//
// How: with r = (x, y(x), z(x)) the curvature is the part of r”/|r'|^2 that is square
// to r'. The flat's direction is made square to r' as well; the other axis is square to
// both.
func about(slope, bend geometry.Point, flat float64) (off, along float64) {
	up, across := math.Sincos(flat)
	axis := geometry.Point{X: across, Y: up}
	w := 1 + slope.Dot(slope)
	lean := axis.Dot(slope)
	size := w * math.Sqrt(1-lean*lean/w)
	return axis.Cross(bend) / (math.Sqrt(w) * size), (axis.Dot(bend) - lean*bend.Dot(slope)/w) / size
}

// Energy returns the bending energy from one station to another over E I of bending
// off the flat, 1/mm, to first order in the slopes.
func (s *Stick) Energy(from, to, stiff float64) float64 {
	sum := 0.0
	for i, b := range s.bays {
		lo, hi := math.Max(from, s.pins[i].X), math.Min(to, s.pins[i].X+b.h)
		if lo < hi {
			sum += curve.Integrate(func(x float64) float64 {
				_, _, bend := s.Run(x)
				flat, _ := s.Flat(x)
				off, along := about(geometry.Point{}, bend, flat)
				return (off*off + stiff*along*along) / 2
			}, lo, hi, 1)
		}
	}
	return sum
}
