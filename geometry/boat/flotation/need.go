// Package flotation is what keeps a boat up that is full of water: how much lift its own
// wood has, how much its people want, and the foam and bags that make up the rest, with
// their places and their straps. Units: mm, kg, liters.
package flotation

import (
	"math"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
)

// fresh is the water that needs are worked out for, kg/m3: sea water lifts a little more.
const fresh = 1000.0

// Shares of what people and their gear weigh that a swamped boat carries, the rest being
// carried by the water that they are in. Sitting, to the navel in water: a half (masses
// of body segments, de Leva 1996, from memory). Holding on outside with an aid of their
// own: nothing. Gear, being partly in the water: a quarter, as the United States' rule on
// level flotation has it (33 CFR 183, subpart G, read in a boatbuilder's guide; canoes
// are exempt from it). Least: 2/15 of what the boat is meant to carry (33 CFR 183.105),
// taken here of its people.
const (
	Sitting  = 0.5
	WithGear = 0.25
	Basic    = 2.0 / 15
)

// Foam and bags, kg a liter: closed-cell foam of 30 kg/m3; a bag with its valve.
// Estimates.
const (
	foamMass = 0.030
	bagMass  = 0.015
)

// Group is the entry of the list of weights.
const Group = "Flotation"

// Need is what the boat lacks, liters of flotation; 0 where its own wood is enough.
type Need struct {
	Dry, Soaked          float64 // kg that the boat lifts itself when it is full of water; less than 0 it sinks
	People, Gear         float64 // kg aboard
	Holding, Basic, Seat float64 // with people in the water holding on; with 2/15 of them; sitting in the boat
	Whole                float64 // carrying all their weight out of the water
}

// Own returns what parts lift that are all under water, dry and soaked, kg.
func Own(parts []weight.Item) (dry, soaked float64) {
	for _, p := range parts {
		dry += p.Solid.Volume*fresh*1e-9 - p.Load().Mass
		soaked += (p.Solid.Volume+p.Solid.Swells)*fresh*1e-9 - p.Load().Mass - p.Solid.Drinks
	}
	return dry, soaked
}

// NeedOf works out what the parts of a boat lack for people and gear, kg.
func NeedOf(parts []weight.Item, people, gear float64) Need {
	n := Need{People: people, Gear: gear}
	n.Dry, n.Soaked = Own(parts)
	n.Holding, n.Basic = n.lack(0), n.lack(Basic*people)
	n.Seat, n.Whole = n.lack(Sitting*people+WithGear*gear), n.lack(people+gear)
	return n
}

// needAboard works it out for the people and gear of a design.
func needAboard(d *design.Design, parts []weight.Item) Need {
	people, gear := 0.0, 0.0
	for _, p := range weight.People(d) {
		people += p.Mass
	}
	for _, g := range d.Gear {
		gear += g.Mass
	}
	return NeedOf(parts, people, gear)
}

// lack is the room in water that a soaked boat wants more under a load, kg, in liters.
func (n Need) lack(load float64) float64 { return math.Max(0, (load-n.Soaked)/(fresh/1000)) }
