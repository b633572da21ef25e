// Package awash sets solid blocks on the water that the water runs freely between: a
// swamped boat's wood, its flotation and what they carry. Units: mm, kg.
package awash

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
)

// Block is a solid of even section from its bottom to its top, sides plumb: what it
// weighs, and what it takes up of the water. One without size is a mere weight.
type Block struct {
	Mass             float64         // kg
	Long, Wide, Tall float64         // along the boat, across it, upward, mm
	At               geometry.Point3 // its middle, mm
}

// Volume returns what the block takes up, mm3.
func (b Block) Volume() float64 { return b.Long * b.Wide * b.Tall }

// wet is the share of the block under water whose surface stands so high over the
// baseline where the block is.
func (b Block) wet(surface float64) float64 {
	if b.Tall <= 0 {
		return 0
	}
	return max(0, min(1, (surface-b.At.Z)/b.Tall+0.5))
}

// Lift returns by how much all the blocks under water would be lighter than the water
// that they push aside, kg; less than 0 they sink.
func Lift(blocks []Block, density float64) float64 {
	lift := 0.0
	for _, b := range blocks {
		lift += b.Volume()*density*1e-9 - b.Mass
	}
	return lift
}

// Rest is how blocks lie that are tied together.
type Rest struct {
	Rise, Slope float64 // of the water's surface: its height at station 0, mm, and its climb forward on the boat, mm/mm
	GM          float64 // mm, by the weight of all blocks out of the water; less than 0 they roll over
	Righting    float64 // N m for each degree of heel from upright, less than 0 likewise
}

// Surface returns the height of the water over the baseline at a station, mm.
func (r Rest) Surface(x float64) float64 { return r.Rise + r.Slope*x }

// Trim returns the angle of the boat to the water, radians, bow down positive.
func (r Rest) Trim() float64 { return math.Atan(r.Slope) }

// steepest is the trim past which the boat is said to stand on end, as a slope.
const steepest = 0.36

// Settle finds how the blocks lie in water of a density, kg/m3: upright, trimmed as their
// weights ask. Accuracy: 1e-6 mm and 1e-9 of slope; the surface is flat, and cuts each
// 50 mm of length level.
//
// Errors: all of it sinks, or it stands on end.
func Settle(blocks []Block, density float64) (Rest, error) {
	if spare := Lift(blocks, density); spare <= 0 {
		return Rest{}, fmt.Errorf("it sinks: %.1f kg of lift are missing", -spare)
	}
	s := newSea(blocks, density*1e-9)
	slope, ok := s.trim()
	if !ok {
		return Rest{}, fmt.Errorf("it stands on end, past %.0f degrees of trim", math.Atan(steepest)*180/math.Pi)
	}
	r := Rest{Rise: s.rise(slope), Slope: slope}
	s.upright(&r)
	return r, nil
}

// Lifted returns by how much some of the blocks are lighter than the water that they push
// aside, kg, where all rest so and where they lie so much deeper, mm, at the same trim.
func Lifted(some []Block, density float64, r Rest, deeper float64) float64 {
	sum := 0.0
	for _, b := range pieces(some) {
		sum += b.Volume()*b.wet(r.Surface(b.At.X)+deeper)*density*1e-9 - b.Mass
	}
	return sum
}

// pieces cuts long blocks, so that a trimmed surface may cut each elsewhere.
func pieces(blocks []Block) []Block {
	const piece = 50 // mm
	in := func(b Block) float64 { return max(1, math.Ceil(b.Long/piece)) }
	all := 0
	for _, b := range blocks {
		all += int(in(b))
	}
	out := make([]Block, 0, all)
	for _, b := range blocks {
		n := in(b)
		p := b
		p.Long, p.Mass = b.Long/n, b.Mass/n
		for i := range int(n) {
			p.At.X = b.At.X - b.Long/2 + (float64(i)+0.5)*p.Long
			out = append(out, p)
		}
	}
	return out
}

// sea is blocks in the water, cut in pieces, and how their rise was found last. It is for
// one goroutine.
type sea struct {
	blocks  []Block
	float   []float // of the blocks that take up any water
	kg      float64 // of water in a mm3
	mass    float64 // of all blocks, kg
	surface float64 // found last, mm
}

// float is what of a block the water sees: where it begins, how tall it is and what each
// mm of it under water lifts, kg.
type float struct{ x, low, tall, lift float64 }

func newSea(blocks []Block, kg float64) *sea {
	s := &sea{blocks: pieces(blocks), kg: kg}
	s.float = make([]float, 0, len(s.blocks))
	for _, b := range s.blocks {
		s.mass += b.Mass
		if b.Tall > 0 {
			s.float = append(s.float, float{b.At.X, b.At.Z - b.Tall/2, b.Tall, b.Long * b.Wide * kg})
		}
	}
	return s
}

// carried is what the water carries with its surface at a height at station 0, kg, and
// how much more with each mm that it rises.
func (s *sea) carried(rise, slope float64) (kg, more float64) {
	for _, f := range s.float {
		switch deep := rise + slope*f.x - f.low; {
		case deep >= f.tall:
			kg += f.lift * f.tall
		case deep > 0:
			kg, more = kg+f.lift*deep, more+f.lift
		}
	}
	return kg, more
}

// rise is the height of the surface at station 0 at which the water carries all, mm.
//
// How: Newton's steps from the rise found last, kept between one at which too little is
// carried and one at which too much is. Between places where a block comes under or out,
// what is carried runs straight, so that the last step is exact.
func (s *sea) rise(slope float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, f := range s.float {
		z := f.low - slope*f.x
		lo, hi = min(lo, z), max(hi, z+f.tall)
	}
	at := min(max(s.surface, lo), hi)
	for range 100 {
		kg, more := s.carried(at, slope)
		over := kg - s.mass
		if math.Abs(over) <= 1e-12*s.mass {
			break
		}
		if over < 0 {
			lo = at
		} else {
			hi = at
		}
		next := at - over/more
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if next == at {
			break
		}
		at = next
	}
	s.surface = at
	return at
}

// moment is by how much the water's lift turns the boat against its weight, kg mm,
// positive bow up: at rest it is nothing.
func (s *sea) moment(slope float64) float64 {
	rise, sum := s.rise(slope), 0.0
	for _, b := range s.blocks {
		up := b.Volume()*b.wet(rise+slope*b.At.X)*s.kg - b.Mass
		sum += up * (b.At.X + b.At.Z*slope)
	}
	return sum / math.Hypot(1, slope)
}

// trim finds the slope of rest nearest to level that comes back when it is disturbed.
func (s *sea) trim() (float64, bool) {
	const (
		steps = 36
		close = 1e-9
	)
	m := s.moment(0)
	if m == 0 {
		return 0, s.moment(1e-4) >= 0
	}
	way := -math.Copysign(1, m) // water higher at the bow lifts the bow
	for i := range steps {
		a, b := way*steepest*float64(i)/steps, way*steepest*float64(i+1)/steps
		if s.moment(b)*m > 0 {
			continue
		}
		return curve.Root(a, b, close, s.moment), true
	}
	return 0, false
}

// upright works out how the blocks come back from a small heel: the plan areas that the
// surface cuts, and heights of lift over heights of weight.
func (s *sea) upright(r *Rest) {
	sum := 0.0
	for _, b := range s.blocks {
		wet := b.wet(r.Surface(b.At.X))
		low := b.At.Z - b.Tall/2
		sum += b.Volume()*wet*s.kg*(low+wet*b.Tall/2) - b.Mass*b.At.Z
		if wet > 0 && wet < 1 {
			sum += s.kg * b.Long * b.Wide * (b.Wide*b.Wide/12 + b.At.Y*b.At.Y)
		}
	}
	r.GM = sum / s.mass
	r.Righting = sum * 1e-3 * measure.Gravity * math.Pi / 180
}
