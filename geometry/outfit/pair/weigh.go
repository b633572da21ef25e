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
	_, lash := c.Worst()
	g := c.Boats[0].Frame.Gunwale
	round := 2 * (c.Beams.Width + c.Beams.Depth + g.Width + g.Height + SaddleBack)
	places := 4 * len(c.Beams.At)
	long := math.Ceil(float64(places) * (float64(Turns(lash))*round*frapped + tails) / 1000)
	k.Things = append(k.Things, kit.Thing{Group: group, Key: "beam-cord", Name: "braided cord of 4 mm for the beams' lashings", Amount: long, Unit: "m",
		How: fmt.Sprintf("%d lashings of %d turns, half as much again to frap them", places, Turns(lash)), Mass: long * cordMass, At: middle})
	return k
}

// A lashing is half as long again for the turns that draw it tight, and its tails
// are together so many mm; a metre of the cord weighs 11 g. Common practice, no
// source.
const (
	frapped  = 1.5
	tails    = 600.0
	cordMass = 0.011
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

// Saddle sits on a gunwale and bears a beam on its level top.
type Saddle struct {
	Name    string
	Boat    int // 0 or 1
	Beam    int // from aft, from 0
	Count   int
	Station float64
	Outline []geometry.Point // along the boat: x outboard and y up from the middle of the gunwale's upper face
	Right   float64          // x of its outer face
	Left    float64
	Top     float64 // y under the beam
}

// How the saddle sits, mm: wood beside the gunwale, and how far it reaches down beside it.
const (
	cheek     = 22.0
	cheekDown = 26.0
)

// Saddles returns one for each boat and beam; boats of one design share theirs.
func (c *Craft) Saddles() []Saddle {
	boats, count := 2, 2
	if c.Boats[1].Frame.Design == c.Boats[0].Frame.Design {
		boats, count = 1, 4
	}
	var out []Saddle
	for i := range boats {
		for k := range c.Beams.At {
			out = append(out, c.saddle(i, k, count))
		}
	}
	return out
}

func (c *Craft) saddle(boat, beam, count int) Saddle {
	s := Saddle{Name: fmt.Sprintf("Saddle %d", beam+1), Boat: boat, Beam: beam, Count: count, Station: c.Beams.At[beam]}
	if boat == 1 {
		s.Name += ", second boat"
	}
	inner, outer := c.Boats[boat].GunwaleTop(s.Station)
	mid := geometry.Point{X: (inner.Y + outer.Y) / 2, Y: (inner.Z + outer.Z) / 2}
	in := geometry.Point{X: inner.Y, Y: inner.Z}.Sub(mid)
	out := geometry.Point{X: outer.Y, Y: outer.Z}.Sub(mid)
	along := out.Sub(in).Unit()
	down := geometry.Point{X: along.Y, Y: -along.X}.Scale(cheekDown)
	inLow, outLow := in.Add(down), out.Add(down)
	s.Top = c.BeamsLie() - mid.Y - float64(boat)*c.Rise
	s.Left, s.Right = math.Min(in.X, inLow.X)-cheek, math.Max(out.X, outLow.X)+cheek
	s.Outline = []geometry.Point{{X: s.Left, Y: s.Top}, {X: s.Left, Y: inLow.Y}, inLow, in, out, outLow, {X: s.Right, Y: outLow.Y}, {X: s.Right, Y: s.Top}}
	return s
}
