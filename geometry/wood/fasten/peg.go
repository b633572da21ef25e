package fasten

import (
	"math"

	"ribwright/geometry/wood/timber"
)

// Peg is a wooden peg across a joint.
type Peg struct {
	Diameter float64 // mm
	Wood     timber.Species
}

// PegFor returns the diameter of the peg for a joint whose thinner piece is so thick, mm:
// a share of it, in half millimeters as drills come, none under least and none over most.
func (u Usual) PegFor(thinner, least, most float64) float64 {
	d := math.Floor(2*thinner*u.PegShare) / 2
	return math.Min(math.Max(d, least), most)
}

// Shears returns the mean load, N, that shears the peg through one plane in the wood.
func (u Usual) Shears(p Peg, in timber.Species) float64 {
	stress := u.PegShear * math.Pow(p.Wood.Gravity(), u.PegPower) * math.Pow(in.Gravity(), u.WoodPower) * psi
	return stress * math.Pi / 4 * p.Diameter * p.Diameter
}

// CrushesAcross returns the load, N, at which the peg begins to dent a wall of the wood,
// pushing across its grain over so many mm.
func (p Peg) CrushesAcross(in timber.Species, length float64) float64 {
	return p.Diameter * length * in.Crush
}

// CrushesAlong is the same along the grain.
func (p Peg) CrushesAlong(in timber.Species, length float64) float64 {
	return p.Diameter * length * in.CrushAlong
}

// TearsOut returns the load, N, at which the peg shears out a plug of wood as long as the
// way from it to the end, along two planes of the thickness.
func TearsOut(in timber.Species, end, thickness float64) float64 {
	return 2 * end * thickness * in.Shear
}
