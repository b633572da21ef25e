package pair

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/water/float"
)

// BeamMass is one beam's, kg.
func (c *Craft) BeamMass() float64 {
	return c.Beams.Long * c.Beams.Width * c.Beams.Depth * c.Beams.Wood.Density * 1e-9
}

// group is the entry of the list of weights.
const group = "Beams, half of them"

// Kit lists what the pair is made of besides its hulls: beams, saddles for both
// boats, lashings. Places are in the first boat's axes, on its middle line.
func (c *Craft) Kit() kit.Kit {
	middle := geometry.Point3{Z: c.BeamsLie() + c.Beams.Depth/2}
	k := kit.Kit{Name: "pair"}
	for i, x := range c.Beams.At {
		at := middle
		at.X = x
		k.Pieces = append(k.Pieces, kit.Piece{Group: group, Name: fmt.Sprintf("Beam %d", i+1), Count: 1, Form: kit.Beam, Wood: c.Beams.Wood.Name,
			Long: c.Beams.Long, Wide: math.Max(c.Beams.Depth, c.Beams.Width), Thick: math.Min(c.Beams.Depth, c.Beams.Width), Fill: 1, At: at})
	}
	for _, s := range c.Saddles() {
		p := kit.Piece{Group: group, Name: s.Name, Count: s.Count, Wood: c.Beams.Wood.Name, Thick: c.Beams.Width,
			At: geometry.Point3{X: s.Station, Z: c.BeamsLie()}}
		upright := make([]geometry.Point, len(s.Outline))
		for i, q := range s.Outline {
			upright[i] = geometry.Point{X: q.Y, Y: q.X}
		}
		p.Block(upright)
		p.Grain = "up and down as it sits, that its cheeks do not split off"
		k.Pieces = append(k.Pieces, p)
	}
	deep := c.BarDeep()
	for _, b := range c.Bars() {
		k.Pieces = append(k.Pieces, kit.Piece{Group: group, Name: b.Name, Count: b.Count, Form: kit.Beam, Wood: c.Beams.Wood.Name,
			Long: 2 * math.Max(b.Aft, b.Fore), Wide: c.Beams.Bar, Thick: deep, Fill: 1, At: geometry.Point3{X: b.Station, Z: c.BeamsLie() - SaddleBack - c.Boats[0].Frame.Gunwale.Height}})
	}
	_, lash := c.Worst()
	round := 2 * (c.Beams.Width + c.Beams.Depth + c.Boats[0].Frame.Gunwale.Height + SaddleBack + deep)
	places := 4 * len(c.Beams.At)
	long := math.Ceil((float64(places)*(float64(Turns(lash))*round*frapped+tails) + 4*(c.Diagonal()+tails)) / 1000)
	hide := float64(places) * (c.Beams.Width + 10) * leatherLong * 1e-6
	k.Things = append(k.Things, kit.Thing{Group: group, Key: "beam-cord", Name: "braided cord of 4 mm for the beams' lashings", Amount: long, Unit: "m",
		How: fmt.Sprintf("%d lashings of %d turns, half as much again to frap them; two crossed lines, doubled", places, Turns(lash)), Mass: long * cordMass, At: middle},
		kit.Thing{Group: group, Key: "leather", Name: "leather of 2 mm", Amount: hide, Unit: "m2", How: fmt.Sprintf("%d slots of saddles", places), Mass: hide * leatherMass, Dense: 900, At: middle})
	return k
}

// Diagonal is the length of each of the two crossed lines that keep the hulls from shifting,
// mm: from the first beam at one hull's inner gunwale to the last at the other's.
func (c *Craft) Diagonal() float64 {
	return math.Hypot(c.Spacing-c.grip(), c.Beams.At[len(c.Beams.At)-1]-c.Beams.At[0])
}

// A lashing is half as long again for the turns that draw it tight, and its tails
// are together so many mm; a metre of the cord weighs 11 g. Common practice, no
// source.
const (
	frapped  = 1.5
	tails    = 600.0
	cordMass = 0.011

	leatherLong = 130.0 // of a slot's lining, both cheeks and the floor
	leatherMass = 1.8   // kg a square metre
)

// added is all that the pair weighs besides its hulls.
func (c *Craft) added() (float.Load, error) {
	items, err := c.Kit().Items(c.Boats[0].Frame.Design)
	return weight.Sum(items), err
}

// Items lists what the pair adds to the first boat: half of beams, saddles and cord.
//
// Errors: a wood that is not known.
func (c *Craft) Items() ([]weight.Item, error) {
	l, err := c.added()
	l.Mass /= 2
	return []weight.Item{{Name: group, Loads: []float.Load{l}}}, err
}
