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
	at := c.pose(s)
	return at.p, at.heading
}

// Way returns the point at the distance s (mm) along the chain, as At does, and the way
// on from there: a step of length 1.
func (c Chain) Way(s float64) (p, way geometry.Point) {
	at := c.pose(s)
	return at.p, at.way
}

func (c Chain) pose(s float64) pose {
	at := outset()
	for _, b := range c {
		if !(s > b.Length) {
			break
		}
		at = b.walk(at, b.Length)
		s -= b.Length
		c = c[1:]
	}
	return c.rest(at, s)
}

// rest goes on from where the first bend begins, which is longer than s or the end.
func (c Chain) rest(from pose, s float64) pose {
	on := Bend{} // straight on, beyond either end
	if len(c) > 0 && s > 0 {
		on = c[0]
	}
	return on.walk(from, s)
}

// pose is where a walk along a chain has come to.
type pose struct {
	p       geometry.Point
	way     geometry.Point // the step of length 1 onward
	heading float64        // its angle
}

// outset is where every chain begins.
func outset() pose { return pose{way: geometry.Point{X: 1}} }

// Walked is a chain that remembers which bend it was asked for last and where that begins,
// for many places of one chain, asked for from its start on. One that lies before the last
// is walked to anew.
type Walked struct {
	chain Chain
	bend  int
	start pose // of that bend, or the end
}

// Walk stands at the start of the chain.
func (c Chain) Walk() *Walked { return &Walked{chain: c, start: outset()} }

// to goes on to where a bend begins, or back.
func (w *Walked) to(bend int) pose {
	if bend < w.bend {
		w.bend, w.start = 0, outset()
	}
	for ; w.bend < bend; w.bend++ {
		b := w.chain[w.bend]
		w.start = b.walk(w.start, b.Length)
	}
	return w.start
}

// Bends returns how many bends the chain has.
func (w *Walked) Bends() int { return len(w.chain) }

// Joint returns where the bend with the number i ends.
func (w *Walked) Joint(i int) geometry.Point { return w.to(i + 1).p }

// At returns what At of the chain does, to the last bit.
func (w *Walked) At(s float64) (geometry.Point, float64) {
	at := w.pose(s)
	return at.p, at.heading
}

// Way returns what Way of the chain does, to the last bit.
func (w *Walked) Way(s float64) (p, way geometry.Point) {
	at := w.pose(s)
	return at.p, at.way
}

func (w *Walked) pose(s float64) pose {
	i := 0
	for ; i < len(w.chain) && s > w.chain[i].Length; i++ {
		s -= w.chain[i].Length
	}
	return w.chain[i:].rest(w.to(i), s)
}

// walk returns where the distance s of the bend leads. It goes by the chord, which loses
// nothing where the radius is very large.
func (b Bend) walk(from pose, s float64) pose {
	if b.Radius == 0 {
		from.p = from.p.Add(from.way.Scale(s))
		return from
	}
	turn := s / b.Radius
	sin, cos := math.Sincos(turn / 2)
	chord := s
	if turn != 0 {
		chord *= sin / (turn / 2)
	}
	half := turned(from.way, sin, cos)
	return pose{from.p.Add(half.Scale(chord)), turned(half, sin, cos), from.heading + turn}
}

// turned is a step turned left by an angle of which sine and cosine are given.
func turned(p geometry.Point, sin, cos float64) geometry.Point {
	return geometry.Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
}

// Along calls f at places of the chain, from its start at the origin on, each with the
// number of its bend and the length ds that it stands for, mm, so that the sum of g(p) ds
// is the integral of g along the chain.
//
// How: five Gauss points in panels that turn by half a radian at the most.
// Accuracy: 1e-9 of the integral of a square of coordinates (TestAlong).
func (c Chain) Along(f func(bend int, p geometry.Point, ds float64)) {
	const widest = 0.5 // radians
	start := outset()
	for i, b := range c {
		panels := math.Max(1, math.Ceil(math.Abs(b.Sweep)/widest))
		half := b.Length / panels / 2
		for n := range int(panels) {
			for k, w := range gaussWeight {
				f(i, b.walk(start, half*(float64(2*n+1)+gaussNode[k])).p, w*half)
			}
		}
		start = b.walk(start, b.Length)
	}
}

// flat is the rise of an arc over its chord, mm, under which it is drawn straight: its
// center would lie a hundred meters off and more.
const flat = 0.001

// Path returns the chain drawn from start with the first heading given.
func (c Chain) Path(start geometry.Point, heading float64) Path {
	out := make(Path, 0, len(c))
	at := pose{start, geometry.Polar(1, heading), heading}
	for _, b := range c {
		if b.Length <= 0 {
			continue
		}
		next := b.walk(at, b.Length)
		if math.Abs(b.Length*b.Sweep) < 8*flat {
			out = append(out, Line{at.p, next.p})
		} else {
			side := math.Copysign(math.Pi/2, b.Radius)
			center := at.p.Add(geometry.Polar(math.Abs(b.Radius), at.heading+side))
			out = append(out, Arc{center, math.Abs(b.Radius), at.heading - side, b.Sweep})
		}
		at = next
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
