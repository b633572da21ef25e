package curve

import (
	"fmt"
	"math"

	"ribwright/geometry"
)

// Bend is one step of a chain: a straight run of Length when Radius is 0,
// else an arc of Radius through Sweep (Length = Radius * Sweep). mm and radians.
// An arc turns left; one that turns right has a negative Radius and Sweep.
type Bend struct{ Radius, Sweep, Length float64 }

// Straight returns the straight step of the given length in mm.
func Straight(length float64) Bend { return Bend{0, 0, length} }

// Turned returns the arc step of the given radius in mm and sweep in radians.
func Turned(radius, sweep float64) Bend { return Bend{radius, sweep, radius * sweep} }

// Chain is a line that leaves its start along +x and turns by its bends, smooth
// at every joint: a rib from the keel outward, or a stem from the keel forward
// and up.
type Chain []Bend

// Length returns the length along the chain in mm.
func (c Chain) Length() float64 {
	sum := 0.0
	for _, b := range c {
		sum += b.Length
	}
	return sum
}

// End returns the end point, from a start at the origin, and the heading there
// in radians from +x.
func (c Chain) End() (geometry.Point, float64) { return c.At(c.Length()) }

// At returns the point and heading at the distance s (mm) along the chain from
// a start at the origin. Beyond either end the chain is continued straight.
func (c Chain) At(s float64) (geometry.Point, float64) {
	var p geometry.Point
	heading := 0.0
	for _, b := range c {
		if s <= 0 {
			break
		}
		step := math.Min(s, b.Length)
		p, heading = b.walk(p, heading, step)
		s -= step
	}
	if s != 0 {
		p = p.Add(geometry.Polar(s, heading))
	}
	return p, heading
}

// Walked is a chain that has been walked once, to be asked for many places.
type Walked struct {
	chain  Chain
	starts []start // of each bend, and the end
}

type start struct {
	p       geometry.Point
	heading float64
}

// Walk walks the chain.
func (c Chain) Walk() Walked {
	w := Walked{c, make([]start, 1, len(c)+1)}
	for i, b := range c {
		p, heading := b.walk(w.starts[i].p, w.starts[i].heading, b.Length)
		w.starts = append(w.starts, start{p, heading})
	}
	return w
}

// At returns what At of the chain does, to the last bit.
func (w Walked) At(s float64) (geometry.Point, float64) {
	i := 0
	for ; i < len(w.chain) && s > w.chain[i].Length; i++ {
		s -= w.chain[i].Length
	}
	on := Bend{} // straight on, beyond either end
	if i < len(w.chain) && s > 0 {
		on = w.chain[i]
	}
	return on.walk(w.starts[i].p, w.starts[i].heading, s)
}

// walk returns the place and heading after the distance s of the bend. It goes by
// the chord, which loses nothing where the radius is very large.
func (b Bend) walk(p geometry.Point, heading, s float64) (geometry.Point, float64) {
	turn := 0.0
	if b.Radius != 0 {
		turn = s / b.Radius
	}
	return p.Add(geometry.Polar(s*Sinc(turn/2), heading+turn/2)), heading + turn
}

// Along calls f at places of the chain, from its start at the origin on, each with the
// number of its bend and the length ds that it stands for, mm, so that the sum of g(p) ds
// is the integral of g along the chain.
//
// How: five Gauss points in panels that turn by half a radian at the most.
// Accuracy: 1e-9 of the integral of a square of coordinates (TestAlong).
func (c Chain) Along(f func(bend int, p geometry.Point, ds float64)) {
	const widest = 0.5 // radians
	var start geometry.Point
	heading := 0.0
	for i, b := range c {
		panels := math.Max(1, math.Ceil(math.Abs(b.Sweep)/widest))
		half := b.Length / panels / 2
		for n := range int(panels) {
			for k, w := range gaussWeight {
				p, _ := b.walk(start, heading, half*(float64(2*n+1)+gaussNode[k]))
				f(i, p, w*half)
			}
		}
		start, heading = b.walk(start, heading, b.Length)
	}
}

// flat is the rise of an arc over its chord, mm, under which it is drawn straight: its
// center would lie a hundred meters off and more.
const flat = 0.001

// Path returns the chain drawn from start with the first heading given.
func (c Chain) Path(start geometry.Point, heading float64) Path {
	var out Path
	p := start
	for _, b := range c {
		if b.Length <= 0 {
			continue
		}
		next, turned := b.walk(p, heading, b.Length)
		if math.Abs(b.Length*b.Sweep) < 8*flat {
			out = append(out, Line{p, next})
		} else {
			side := math.Copysign(math.Pi/2, b.Radius)
			center := p.Add(geometry.Polar(math.Abs(b.Radius), heading+side))
			out = append(out, Arc{center, math.Abs(b.Radius), heading - side, b.Sweep})
		}
		p, heading = next, turned
	}
	return out
}

// Offset returns the chain that runs d mm to the left of c (inside its turns);
// negative d runs outside. Arcs change radius, straight runs keep their length,
// so the offset is exact. Its start lies d to the left of c's start.
//
// Errors: an inside offset that eats a whole arc, naming the arc's radius.
func (c Chain) Offset(d float64) (Chain, error) {
	out := make(Chain, len(c))
	for i, b := range c {
		if b.Radius == 0 {
			out[i] = b
			continue
		}
		if b.Radius > 0 && b.Radius <= d || b.Radius < 0 && b.Radius >= d {
			return nil, fmt.Errorf("an arc of %.1f mm radius has no room for an offset of %.1f mm inside it", b.Radius, d)
		}
		out[i] = Turned(b.Radius-d, b.Sweep)
	}
	return out, nil
}

// RadiusAt returns the radius at the length s along the chain; 0 where it is straight and
// beyond its end.
func (c Chain) RadiusAt(s float64) float64 {
	for _, b := range c {
		if s <= b.Length {
			return b.Radius
		}
		s -= b.Length
	}
	return 0
}
