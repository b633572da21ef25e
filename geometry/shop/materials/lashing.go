package materials

import (
	"math"

	"ribwright/geometry/boat/frame"
)

// Lashings are the crossings of ribs with keel and stringers, each lashed in an X.
type Lashings struct {
	Stringers, Keel int     // crossings
	EachStringer    float64 // mm of cord
	EachKeel        float64
	Total           float64 // mm, with a tenth to spare and the ends' own lashings
}

// Count is all crossings.
func (l Lashings) Count() int { return l.Stringers + l.Keel }

// The turns of one lashing, two on each diagonal, and its two tails together, mm.
// Common practice, no source; old beam lashings of skin boats have three to four
// turns (Murdoch, Ninth Annual Report of the Bureau of Ethnology, 1892).
const (
	Turns = 4
	Tails = 200.0
	spare = 1.10
)

// Lashing returns the cord of one X lashing, mm: a rib of width a and thickness t
// crossed by a batten of width b and depth d, with so many turns:
//
//	turns (2 sqrt(a2 + b2) + 2 (t + d)) + tails
//
// Derived: each turn goes over the crossing on one diagonal and back under it.
func Lashing(a, t, b, d float64, turns int, tails float64) float64 {
	return float64(turns)*(2*math.Hypot(a, b)+2*(t+d)) + tails
}

func lashings(f *frame.Frame) Lashings {
	d := f.Design
	a, t := float64(d.Ribs.Width), float64(d.Ribs.Thickness)
	l := Lashings{
		Stringers:    2 * len(f.Stringers) * len(f.Ribs),
		Keel:         len(f.Ribs),
		EachStringer: Lashing(a, t, float64(d.Stringers.Width), float64(d.Stringers.Depth), Turns, Tails),
		EachKeel:     Lashing(a, t, float64(d.Keel.Width), float64(d.Keel.Depth), Turns, Tails),
	}
	l.Total = spare*(float64(l.Stringers)*l.EachStringer+float64(l.Keel)*l.EachKeel) + 2*endLashings*1000
	return l
}
