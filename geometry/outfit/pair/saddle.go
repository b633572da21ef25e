package pair

import (
	"fmt"
	"math"

	"ribwright/geometry"
)

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

// How the saddle sits, mm: wood beside the gunwale, and how far it reaches down
// beside it.
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
