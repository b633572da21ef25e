package curve

import (
	"math"

	"ribwright/geometry"
)

// Arc is a piece of a circle: from the angle From (counter-clockwise from x)
// through Sweep, counter-clockwise when positive. Radius is mm and > 0; the
// angles are radians, with |Sweep| up to a full turn.
type Arc struct {
	Center      geometry.Point
	Radius      float64
	From, Sweep float64
}

// Start returns the point at the angle From.
func (a Arc) Start() geometry.Point { return a.At(0) }

// End returns the point at the angle From + Sweep.
func (a Arc) End() geometry.Point { return a.At(1) }

// At returns the point after the share t of the sweep.
func (a Arc) At(t float64) geometry.Point {
	return a.Center.Add(geometry.Polar(a.Radius, a.From+t*a.Sweep))
}

// Length returns radius times sweep in mm, never negative.
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

// Reverse returns the same arc from its end to its start.
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
