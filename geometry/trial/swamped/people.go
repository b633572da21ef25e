package swamped

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/water/awash"
	"ribwright/geometry/water/float"
)

// A sitting body in three blocks as heavy as water: shares of the mass of legs with feet,
// of what lies from the hips to the navel, and of all above with the arms (de Leva 1996,
// from memory), and where the upper two lie over the seat as shares of the sitting height
// (estimates). Sitting to the navel in water, the water carries half.
const (
	legs, lap, trunk = 0.40, 0.11, 0.49
	navel, crown     = 0.25, 0.90
)

// sitter is one person whose weight lies at a point and who sits so high over the baseline:
// the legs lie where the whole has its weight in its place, on the floor.
func sitter(mass, sitting, seat, floor float64, at geometry.Point3) []awash.Block {
	low, up := seat+navel/2*sitting, seat+(navel+crown)/2*sitting
	leg := (at.Z - lap*low - trunk*up) / legs
	block := func(share, z, tall float64) awash.Block {
		across := math.Sqrt(mass * share * 1e6 / tall)
		return awash.Block{Mass: mass * share, Long: across, Wide: across, Tall: tall, At: geometry.Point3{X: at.X, Y: at.Y, Z: z}}
	}
	return []awash.Block{block(legs, leg, math.Max(leanest, 2*math.Min(leg-floor, seat+thigh-leg))), block(lap, low, navel*sitting), block(trunk, up, (crown-navel)*sitting)}
}

// dog is one that stands in the water inside, as heavy as water.
func dog(l float.Load, floor float64) awash.Block {
	tall := 2 * (l.At.Z - floor)
	long := body.DogLong(l.Mass)
	return awash.Block{Mass: l.Mass, Long: long, Wide: l.Mass * 1e6 / (tall * long), Tall: tall, At: l.At}
}

// How high a thigh lies over the seat, and how tall legs are at least that lie on the
// floor, mm. Estimates.
const (
	thigh   = 150.0
	leanest = 100.0
)

// downBy is how much lower than on a seat a weight must lie on the floor for the two to be
// told apart, mm: what it is known to, and a little more.
const downBy = 50.0

// low returns where the weight of one person lies who sits on the floor; false for one who
// does so already, or nearly.
func low(b aboard.Boat, i int) (z float64, lower bool) {
	l := b.Crew[i].Load()
	down := b.People[i]
	down.Posture, down.Seat = design.Floor, design.OnFloor
	z = b.Frame.Hull.FloorZ(l.At.X) + weight.Height(b.Frame.Design, down)
	return math.Min(z, l.At.Z), l.At.Z-z > downBy
}

// high reports whether somebody sits higher than on the floor.
func high(b aboard.Boat) bool {
	for i := range b.Crew {
		if _, lower := low(b, i); lower {
			return true
		}
	}
	return false
}

// Bodies are the people of a boat in a posture; nobody when they hold on outside, who are
// carried by the water and their own aids.
func Bodies(b aboard.Boat, p Posture) []awash.Block {
	if p == Holding {
		return nil
	}
	var out []awash.Block
	for i, c := range b.Crew {
		one, l := b.People[i], c.Load()
		floor := b.Frame.Hull.FloorZ(l.At.X)
		if one.Role == design.Dog {
			out = append(out, dog(l, floor))
			continue
		}
		seat := l.At.Z - weight.OverHips(one)*weight.Sitting(one)
		if z, lower := low(b, i); p == Low && lower {
			seat, l.At.Z = floor, z
		}
		out = append(out, sitter(l.Mass, weight.Sitting(one), seat, floor, l.At)...)
	}
	return out
}

// packs are what is left of the gear's weight, tied in and in the water.
func packs(b aboard.Boat) []awash.Block {
	var out []awash.Block
	for _, g := range b.Gear {
		l := g.Load()
		out = append(out, awash.Block{Mass: flotation.WithGear * l.Mass, At: geometry.Point3{X: l.At.X, Z: l.At.Z}})
	}
	return out
}
