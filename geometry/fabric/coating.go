package fabric

import "math"

// Coating is a paint or resin by its can: what of it stays when it is dry.
type Coating struct {
	Solids  float64 // share of its volume that stays, 0 to 1
	Density float64 // of what stays, kg/L
	Film    float64 // dry film of each coat after the first, um
}

// Usual is a two-part polyurethane as it is brushed on boats. From memory: 70 % solids by
// volume, 1.1 kg/L, 60 um dry a coat. The maker's sheet says better.
func Usual() Coating { return Coating{Solids: 0.70, Density: 1.1, Film: 60} }

// Loss is the share of a coating that stays in tray, brush and roller: 10 to 20 %, as
// paint makers' calculators have it; the middle of it.
const Loss = 0.15

// Spread returns how far a liter goes at a dry film in um, m2/L, without losses:
//
//	solids in % x 10 / film
//
// A liter of pure solids 1 um thick covers 1000 m2. 0 solids cover nothing.
func Spread(solids, film float64) float64 { return solids * 1000 / film }

// FirstSpread is how far a liter of the first coat goes on bare cloth, m2/L, without
// losses: it fills the voids, wet.
func FirstSpread(f Fiber, cloth float64) float64 { return 1 / f.Voids(cloth) }

// Coats are so many coats on one cloth.
type Coats struct {
	Fiber Fiber
	Cloth float64 // bare, g/m2
	Count int
	Coating
}

// later is the coats over the first.
func (c Coats) later() float64 { return math.Max(0, float64(c.Count-1)) }

// First and Later are the liquid in the first coat and in each one over it, L/m2.
func (c Coats) First() float64 {
	if c.Count < 1 {
		return 0
	}
	return c.Fiber.Voids(c.Cloth)
}

// Later is 0 where there is no second coat.
func (c Coats) Later() float64 {
	if c.Count < 2 {
		return 0
	}
	return 1 / Spread(c.Solids, c.Film)
}

// Liquid is all coats together as they come out of the can and stay on the cloth, L/m2.
func (c Coats) Liquid() float64 { return c.First() + c.later()*c.Later() }

// Mass is the finished skin, cloth and dry coats, g/m2.
func (c Coats) Mass() float64 { return c.Cloth + c.Liquid()*c.Solids*c.Density*1000 }

// Thickness is the finished skin, mm: the first coat fills the cloth, the others lie on it.
func (c Coats) Thickness() float64 { return c.Fiber.Thickness(c.Cloth) + c.later()*c.Film/1000 }

// ClothUnder returns the bare cloth whose finished skin has a mass, g/m2: the reverse of
// Mass. 0 or less where the coats alone weigh that much.
func (c Coats) ClothUnder(mass float64) float64 {
	c.Cloth = 1000 // voids grow with the cloth, so one trial tells the slope
	films := c.later() * c.Later() * c.Solids * c.Density * 1000
	return (mass - films) / ((c.Mass() - films) / c.Cloth)
}

// Askew is how stiff the finished skin is against being drawn askew, N for each mm of its edge and
// each radian: bare weave slides, coats hold it. 0 without coats.
//
// From memory: coated polyester of roofs and tents has 6 to 25 N for each mm2, soft coats under 2.
// A boat's coats are brushed and thin, so the low end of roofs is likely. Nobody has published
// measured skins of boats.
func (c Coats) Askew() Range {
	if c.Count < 1 || c.Cloth <= 0 {
		return Range{}
	}
	t := c.Thickness()
	return Range{2 * t, 6 * t, 25 * t}
}
