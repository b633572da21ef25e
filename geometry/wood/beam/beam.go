// Package beam has the plain cases of bending that spars, cross beams and boards
// come down to. N, mm, N mm, N/mm2; loads are taken as still.
package beam

import (
	"math"

	"ribwright/geometry/wood/timber"
)

// Section is the shape across a stick.
type Section struct {
	Area    float64 // mm2
	Inertia float64 // mm4, about the axis it bends on
	Modulus float64 // mm3, of the same
}

// Rectangle is a solid stick, bent the way of its depth. mm.
func Rectangle(width, depth float64) Section {
	return Section{width * depth, width * depth * depth * depth / 12, width * depth * depth / 6}
}

// Round is a solid round stick, mm.
func Round(diameter float64) Section {
	d2 := diameter * diameter
	return Section{math.Pi * d2 / 4, math.Pi * d2 * d2 / 64, math.Pi * d2 * diameter / 32}
}

// Case is a way of carrying a load: the greatest moment is Moment times load
// times length, the greatest sag Sag times load times length cubed over E I.
//
// Source: the usual tables of beams, as in the Wood Handbook FPL-GTR-282 chapter 9.
type Case struct{ Moment, Sag float64 }

// Middle is a load on the middle of a stick that rests on both ends.
func Middle() Case { return Case{1.0 / 4, 1.0 / 48} }

// Even is a load spread evenly over a stick that rests on both ends.
func Even() Case { return Patch(1) }

// Patch is a load spread evenly over a share of a stick that rests on both ends, on its
// middle; a share over 1 counts as 1.
func Patch(share float64) Case {
	s := math.Min(share, 1)
	return Case{(1 - s/2) / 4, (8 - 4*s*s + s*s*s) / 384}
}

// Tip is a load on the free end of a stick held fast at the other.
func Tip() Case { return Case{1, 1.0 / 3} }

// Sway is a load across one end of a stick when neither end can turn.
func Sway() Case { return Case{1.0 / 2, 1.0 / 12} }

// Bending returns the greatest moment, N mm, for a load in N over a length in mm.
func (c Case) Bending(load, length float64) float64 { return c.Moment * load * length }

// Gives returns the greatest sag, mm, with the stiffness moe in N/mm2.
func (c Case) Gives(load, length, moe float64, s Section) float64 {
	return c.Sag * load * length * length * length / (moe * s.Inertia)
}

// Buckling returns the load, N, at which a stick pressed at both ends, free to turn
// there, bows out: Euler's.
func Buckling(length, moe float64, s Section) float64 {
	return math.Pi * math.Pi * moe * s.Inertia / (length * length)
}

// Factor is how many times the working stress goes into the modulus of rupture of
// small clear wood: for knots, slope of grain, wet wood and years. From memory,
// 3 to 5 in old books on timber.
const Factor = 4.0

// Working returns the stress that a wood is asked to carry, N/mm2.
func Working(s timber.Species) float64 { return s.MOR / Factor }

// RoundFor returns the diameter, mm, at which a moment, N mm, gives the stress.
func RoundFor(moment, stress float64) float64 { return math.Cbrt(32 * moment / (math.Pi * stress)) }
