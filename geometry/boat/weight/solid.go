package weight

import (
	"ribwright/geometry/design"
	"ribwright/geometry/fabric"
	"ribwright/geometry/wood/timber"
)

// Solid is the room that wood, cloth and metal take up in the water they lie in, and what
// a day in it does to the wood.
type Solid struct {
	Volume float64 // dry, mm3
	Swells float64 // more when soaked, mm3
	Drinks float64 // kg of water more
}

// Plus returns both together.
func (s Solid) Plus(o Solid) Solid {
	return Solid{s.Volume + o.Volume, s.Swells + o.Swells, s.Drinks + o.Drinks}
}

// Times returns so many of it.
func (s Solid) Times(n float64) Solid {
	return Solid{n * s.Volume, n * s.Swells, n * s.Drinks}
}

// SolidWood is so much wood of a kind, mass in kg at 12 % of moisture.
func SolidWood(mass float64, s timber.Species) Solid { return soakingOf(s).solid(mass) }

// soaking is what is to be known of a wood for that: its density, kg/m3, and how many times
// its dry volume and mass it soaks to.
type soaking struct{ density, swollen, wet float64 }

func soakingOf(s timber.Species) soaking {
	swollen, wet := s.Soaked()
	return soaking{s.Density, swollen, wet}
}

func (k soaking) solid(mass float64) Solid {
	if mass == 0 {
		return Solid{}
	}
	volume := mass / k.density * 1e9
	return Solid{volume, volume * (k.swollen - 1), mass * (k.wet - 1)}
}

// SolidOf is what does not soak, of a density in kg/m3: metal, cord, cloth.
func SolidOf(mass, density float64) Solid {
	if mass == 0 {
		return Solid{}
	}
	return Solid{Volume: mass / density * 1e9}
}

// Corded is the density of cord, glue and oil together, kg/m3. Estimate.
const Corded = 1100.0

// SkinDensity is that of cloth with its coats, the gaps filled, kg/m3.
func SkinDensity(s design.Skin) float64 {
	c := s.Coated()
	thick := c.Cloth/1000/fabric.Fiber(s.Fiber).Density() + c.Liquid()*c.Solids
	if thick == 0 {
		return Corded
	}
	return c.Mass() / thick
}
