// Package rowing fits a fixed seat, a pair of oars and a clip-on frame for the
// rowlocks to a rower's body and to the boat. Its rules are habits of the trade;
// only lengths, levers and stresses are arithmetic.
package rowing

import "math"

// The oar maker's rule: the inboard part is half the span and two inches, so that
// the handles pass over each other a little, and seven parts of twenty-five of the
// oar are inboard.
//
// Source: an oar maker's rule that four pages on rowing agree on.
const (
	overHalf = 2 * 25.4 // mm
	parts    = 25.0
	inParts  = 7.0
)

// Oar is one of a pair.
type Oar struct {
	Length  float64 // mm
	Inboard float64 // from the grip's end to the button, mm
}

// ForSpan returns the oar for a span between the rowlocks, mm.
func ForSpan(span float64) Oar { return ruled(span/2 + overHalf) }

// Short returns the oar of the same rule without the overlap, which another table
// of the maker's has.
func Short(span float64) Oar { return ruled(span / 2) }

func ruled(inboard float64) Oar { return Oar{inboard * parts / inParts, inboard} }

// Given returns an oar of a length that is there already, with its button where the
// handles overlap as by the rule.
func Given(length, span float64) Oar { return Oar{length, span/2 + overHalf} }

// Outboard returns the part beyond the rowlock, mm.
func (o Oar) Outboard() float64 { return o.Length - o.Inboard }

// Leverage returns inboard over outboard; the rule's is 7/18.
func (o Oar) Leverage() float64 { return o.Inboard / o.Outboard() }

// Overlap returns by how much the handles pass over each other, mm.
func (o Oar) Overlap(span float64) float64 { return 2*o.Inboard - span }

// AtLock returns the force on the rowlock, N, for a pull on the handle: the blade
// stands in the water and the oar turns about it.
func (o Oar) AtLock(pull float64) float64 { return pull * o.Length / o.Outboard() }

// Stroke is where the handles go, as heights and angles at one rowlock.
type Stroke struct {
	Drive   float64 // height of the handle over the seat with the blade in, mm
	Recover float64 // with the blade carried clear of the water, mm
	Slope   float64 // of the oar with the blade in, radians below level
}

// How deep the blade's tip goes and how high it is carried, mm. From memory.
const (
	buried = 150.0
	clear  = 100.0
)

// stroke works out the heights for a rowlock over the water and over the seat, mm;
// ok is false when the oar cannot reach the water.
func stroke(o Oar, overWater, overSeat float64) (Stroke, bool) {
	out := o.Outboard()
	sin := (overWater + buried) / out
	if !(sin < 1) {
		return Stroke{}, false
	}
	return Stroke{Drive: overSeat + o.Inboard*sin, Recover: overSeat + o.Inboard*((overWater-clear)/out), Slope: math.Asin(sin)}, true
}
