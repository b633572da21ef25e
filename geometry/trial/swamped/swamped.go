// Package swamped tells how a boat lies that is full of water: with its people holding
// on to it, with them sitting on its floor and on their seats, as its flotation is and as
// the same flotation would serve elsewhere. Units: mm, kg.
package swamped

import (
	"math"
	"slices"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/water/awash"
)

// Posture is where the people are.
type Posture string

// The postures.
const (
	Holding Posture = "in the water, holding on"
	Low     Posture = "sitting on the floor"
	Seated  Posture = "on their seats"
)

// Lying is how the boat lies in one case.
type Lying struct {
	Posture Posture
	Where   design.Flotation
	Liters  float64
	awash.Rest
	Fault               string  // why it finds no rest; "" when it does
	Bow, Midship, Stern float64 // the sheer over the water there, mm; less than 0 under it
	Carried             float64 // kg of people and gear that the boat carries, the water carrying the rest
	More                float64 // kg more that sink it until its sheer is under at the lowest of the three; less than 0 it is
}

// Steady is the GM under which nobody should rely on it, mm: how high people's weight lies
// is known to some 30 mm.
const Steady = 30.0

// Upright reports whether it rests and comes back from a small heel.
func (l Lying) Upright() bool { return l.Fault == "" && l.GM > 0 }

// Least is how far the sheer is out of the water at the lowest of bow, midship and stern.
func (l Lying) Least() float64 { return math.Min(l.Midship, math.Min(l.Bow, l.Stern)) }

// Report is all that was tried.
type Report struct {
	flotation.Fit
	Where  design.Flotation
	Fitted []Lying // with the boat's own flotation: holding on; low, where there are people; and on seats where there are any to speak of
	Sides  Lying   // low, with what it needs at the sides alone; the zero Lying without people
	Ends   Lying   // likewise in the ends alone
}

// All lists every case, as the boat is fitted first.
func (r *Report) All() []Lying {
	if r.Sides.Posture == "" {
		return r.Fitted
	}
	return append(slices.Clone(r.Fitted), r.Sides, r.Ends)
}

// Of tries a boat of a design, whose wood has lain in the water, in water of a density,
// kg/m3.
func Of(b aboard.Boat, density float64) *Report {
	r := &Report{Fit: b.Flotation, Where: b.Frame.Design.Inside.Flotation}
	solids := Solids(b.Parts)
	try := func(p Posture, where design.Flotation, bags []flotation.Bag) Lying {
		l := Lying{Posture: p, Where: where}
		blocks := slices.Clone(solids)
		for _, bag := range bags {
			l.Liters += bag.Liters
			blocks = append(blocks, bag.Blocks...)
		}
		carried := Bodies(b, p)
		if p != Holding {
			carried = append(carried, packs(b)...)
		}
		l.settle(b, blocks, carried, density)
		return l
	}
	r.Fitted = []Lying{try(Holding, r.Where, r.Bags)}
	if len(b.Crew) == 0 {
		return r
	}
	r.Fitted = append(r.Fitted, try(Low, r.Where, r.Bags))
	if high(b) {
		r.Fitted = append(r.Fitted, try(Seated, r.Where, r.Bags))
	}
	need, in := b.Flotation.Need.Seat, b.Places.Swamped(b.Cloth)
	r.Sides = try(Low, design.AtSides, flotation.Placed(in, need, true, false))
	r.Ends = try(Low, design.AtEnds, flotation.Placed(in, need, false, true))
	return r
}

func (l *Lying) settle(b aboard.Boat, own, carried []awash.Block, density float64) {
	blocks := slices.Concat(own, carried)
	var err error
	if l.Rest, err = awash.Settle(blocks, density); err != nil {
		l.Fault = err.Error()
		return
	}
	aft, fore := b.Hull.Ends()
	for _, at := range []struct {
		x  float64
		to *float64
	}{{aft, &l.Stern}, {0, &l.Midship}, {fore, &l.Bow}} {
		_, sheer := b.Hull.Heights(at.x)
		*at.to = sheer - l.Surface(at.x)
	}
	if len(carried) > 0 {
		l.Carried = -awash.Lifted(carried, density, l.Rest, 0)
	}
	l.More = awash.Lifted(own, density, l.Rest, l.Least()) - l.Carried
}

// tall is the height over which a part is taken to be spread about its middle, mm: it
// matters where the water cuts gunwales and outwales. Estimate.
const tall = 36.0

// Solids are the parts of a boat but its flotation, soaked.
func Solids(parts []weight.Item) []awash.Block {
	var out []awash.Block
	for _, p := range parts {
		whole := p.Load().Mass
		if p.Name == flotation.Group || whole == 0 {
			continue
		}
		s := p.Solid
		for _, l := range p.Loads {
			share := l.Mass / whole
			across := math.Sqrt((s.Volume + s.Swells) * share / tall)
			out = append(out, awash.Block{Mass: l.Mass + s.Drinks*share, Long: across, Wide: across, Tall: tall, At: l.At})
		}
	}
	return out
}
