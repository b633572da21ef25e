package pair

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/wood/beam"
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
	Rises   float64 // of the gunwale from the saddle's after face to its forward one, to be planed into the slot's floor
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
	b := c.Boats[boat]
	inner, outer := b.GunwaleTop(s.Station)
	mid := inner.Add(outer).Scale(0.5)
	tilt := geometry.Pt(outer.Y-inner.Y, outer.Z-inner.Z).Unit() // across the gunwale
	up := geometry.Pt(-tilt.Y, tilt.X)
	// The slot takes all of the gunwale, cloth and outwale that the saddle reaches over.
	in, out, floor := math.Inf(1), math.Inf(-1), math.Inf(1)
	for _, x := range c.under(s.Station) {
		i, _ := b.GunwaleTop(x)
		o := b.Rail(x)
		a, z := geometry.Pt(i.Y-mid.Y, i.Z-mid.Z), geometry.Pt(o.Y-mid.Y, o.Z-mid.Z)
		in, out, floor = math.Min(in, a.Dot(tilt)), math.Max(out, z.Dot(tilt)), math.Min(floor, a.Dot(up))
	}
	fore, _ := b.GunwaleTop(s.Station + c.Beams.Width/2)
	aft, _ := b.GunwaleTop(s.Station - c.Beams.Width/2)
	s.Rises = fore.Z - aft.Z
	at := func(across, high float64) geometry.Point { return tilt.Scale(across).Add(up.Scale(high)) }
	in, out, floor = in-Leather, out+Leather, floor+Leather
	inLow, outLow := at(in, floor-cheekDown), at(out, floor-cheekDown)
	s.Top = c.BeamsLie() - mid.Z - float64(boat)*c.Rise
	s.Left, s.Right = math.Min(at(in, floor).X, inLow.X)-cheek, math.Max(at(out, floor).X, outLow.X)+cheek
	s.Outline = []geometry.Point{{X: s.Left, Y: s.Top}, {X: s.Left, Y: inLow.Y}, inLow, at(in, floor), at(out, floor), outLow, {X: s.Right, Y: outLow.Y}, {X: s.Right, Y: s.Top}}
	return s
}

// The bar that a beam is lashed to lies in the hull, under the inner edges of both
// gunwales: no cord can go round a gunwale, whose outer face is under the cloth. Our own
// way. Mm: along the boat, how far each end reaches under, what is left to the cloth, and
// how far inside the edge the cord lies.
const (
	leastBar = 45.0
	mostBar  = 90.0
	barLip   = 12.0
	barOff   = 6.0
	lashIn   = 28.0
)

// Bar lies under the gunwales of one hull.
type Bar struct {
	Name      string
	Boat      int
	Beam      int
	Count     int
	Station   float64
	Aft, Fore float64 // half of its length at its edges
	Lip       float64 // how far it reaches under
	Lash      float64 // the middle of its lashings from the middle line
}

// Bars returns one for each boat and beam; boats of one design share theirs.
func (c *Craft) Bars() []Bar {
	var out []Bar
	for _, s := range c.Saddles() {
		b := c.Boats[s.Boat]
		bar := Bar{Name: strings.Replace(s.Name, "Saddle", "Under bar", 1), Boat: s.Boat, Beam: s.Beam, Count: s.Count / 2, Station: s.Station, Lip: lip(b)}
		bar.Aft = underEdge(b, s.Station-c.Beams.Bar/2).Y + bar.Lip
		bar.Fore = underEdge(b, s.Station+c.Beams.Bar/2).Y + bar.Lip
		bar.Lash = underEdge(b, s.Station).Y - lashIn
		out = append(out, bar)
	}
	return out
}

// lip is how far a bar reaches under a boat's gunwales.
func lip(b aboard.Boat) float64 { return math.Min(barLip, b.Frame.Gunwale.Width-barOff) }

// underEdge is the inner lower edge of a boat's port gunwale at a station.
func underEdge(b aboard.Boat, x float64) geometry.Point3 {
	g := b.Frame.Gunwale
	return g.EdgeAt(x, -g.Width/2, 0)
}

// BarDeep is the depth of a bar that bears a pull on a lashing, in whole steps of 5 mm.
func (c *Craft) BarDeep() float64 {
	_, pull := c.Worst()
	return math.Max(25, math.Ceil(math.Sqrt(6*pull*(lashIn+barLip/2)/c.Beams.Bar/beam.Working(c.Beams.Wood))/5)*5)
}

// press is what the pull on a lashing puts on the wood of a gunwale under a bar's end, and what
// is asked of that wood, N/mm2: it stays dented at one and a half times as much, from memory.
func (c *Craft) press() (worst, asked float64) {
	_, pull := c.Worst()
	asked = math.Inf(1)
	for _, b := range c.Boats {
		wood, _ := b.Frame.Design.Wood(b.Frame.Design.Gunwale.Species)
		worst, asked = math.Max(worst, pull/(c.Beams.Bar*lip(b))), math.Min(asked, wood.Crush/1.5)
	}
	return worst, asked
}
