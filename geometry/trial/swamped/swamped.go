// Package swamped tells how a boat lies that is full of water: with its people holding
// on to it, and with them sitting in it, as its flotation is and as the same flotation
// would serve elsewhere. Units: mm, kg.
package swamped

import (
	"math"

	"ribwright/geometry"
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
	Seated  Posture = "sitting in the boat"
)

// Lying is how the boat lies in one case.
type Lying struct {
	Posture Posture
	Where   design.Flotation
	Liters  float64
	awash.Rest
	Fault               string  // why it finds no rest; "" when it does
	Bow, Midship, Stern float64 // the sheer over the water there, mm; less than 0 under it
	Carried             float64 // kg
}

// Upright reports whether it rests and comes back from a small heel.
func (l Lying) Upright() bool { return l.Fault == "" && l.GM > 0 }

// Report is all that was tried.
type Report struct {
	flotation.Fit
	Where  design.Flotation
	Fitted []Lying // with the boat's own flotation: holding on, then sitting
	Sides  Lying   // sitting, with what it needs at the sides alone
	Ends   Lying   // likewise in the ends alone
}

// Of tries a boat of a design, whose wood has lain in the water, in water of a density,
// kg/m3.
func Of(b aboard.Boat, density float64) *Report {
	r := &Report{Fit: b.Flotation, Where: b.Frame.Design.Inside.Flotation}
	solids := Solids(b.Parts)
	try := func(p Posture, where design.Flotation, bags []flotation.Bag) Lying {
		l := Lying{Posture: p, Where: where}
		blocks := solids
		for _, bag := range bags {
			l.Liters += bag.Liters
			for _, k := range bag.Blocks {
				k.Mass = bag.Mass * k.Volume() / (bag.Liters * 1e6)
				blocks = append(blocks[:len(blocks):len(blocks)], k)
			}
		}
		if p == Seated {
			people := Sitting(b)
			l.Carried = mass(people)
			blocks = append(blocks[:len(blocks):len(blocks)], people...)
		}
		l.settle(b, blocks, density)
		return l
	}
	r.Fitted = []Lying{try(Holding, r.Where, r.Bags), try(Seated, r.Where, r.Bags)}
	need := b.Flotation.Need.Seat
	r.Sides = try(Seated, design.AtSides, flotation.Placed(b.Frame, b.Cloth, need, true, false))
	r.Ends = try(Seated, design.AtEnds, flotation.Placed(b.Frame, b.Cloth, need, false, true))
	return r
}

func mass(blocks []awash.Block) float64 {
	sum := 0.0
	for _, b := range blocks {
		sum += b.Mass
	}
	return sum
}

func (l *Lying) settle(b aboard.Boat, blocks []awash.Block, density float64) {
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

// pelvis is how high over the seat the middle of what is under water lies of one who sits
// to the navel in it, as a share of the sitting height. Estimate.
const pelvis = 0.10

// Sitting are people and gear of a boat as its flotation carries them: what the water
// does not carry, at the height at which the two together turn the boat. A weight m at
// zg of which the water carries the share s at zb is m (1-s) at (zg - s zb) / (1-s).
func Sitting(b aboard.Boat) []awash.Block {
	d := b.Frame.Design
	var out []awash.Block
	for i, c := range b.Crew {
		p, l := b.People[i], c.Load()
		sitting := weight.Sitting(p)
		low := l.At.Z - weight.Height(d, p) + seatOf(d, p) + pelvis*sitting
		s := 1 - flotation.Sitting
		l.At.Z = (l.At.Z - s*low) / (1 - s)
		out = append(out, awash.Block{Mass: flotation.Sitting * l.Mass, At: l.At})
	}
	for _, g := range b.Gear {
		l := g.Load()
		out = append(out, awash.Block{Mass: flotation.WithGear * l.Mass, At: geometry.Point3{X: l.At.X, Z: l.At.Z}})
	}
	return out
}

// seatOf is how high a person sits over the floor, mm, by how high the weight lies.
func seatOf(d *design.Design, p design.Person) float64 {
	share := map[design.Posture]float64{design.Floor: weight.FloorShare, design.Bench: weight.BenchShare, design.Kneeling: weight.KneelShare}[p.Posture]
	return weight.Height(d, p) - share*weight.Sitting(p)
}
