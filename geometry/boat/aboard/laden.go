// Package aboard is a boat made ready to be loaded: its hull for floating, its own
// weight, and its people and gear apart, so that an outfit can seat them anew.
package aboard

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wording"
)

// Boat is the boat and what is aboard.
type Boat struct {
	Frame  *frame.Frame
	Hull   *float.Hull
	Empty  float.Load
	Fitted []weight.Item // other outfits that are aboard, by weight
	Crew   []weight.Item
	Gear   []weight.Item
}

// New weighs the boat of a frame with the people and gear given.
//
// Errors: an outside that cannot be drawn, or a wood that is not known.
func New(f *frame.Frame, crew []design.Person, gear []design.Gear) (Boat, error) {
	hull, err := skin.Hull(f)
	if err != nil {
		return Boat{}, err
	}
	parts, err := weight.Covered(f, hull)
	if err != nil {
		return Boat{}, err
	}
	return Boat{Frame: f, Hull: hull, Empty: weight.Sum(parts), Crew: weight.Crew(f, crew), Gear: weight.Gear(f, gear)}, nil
}

// Usual is a person whose mass nobody gave, kg: as small-craft standards take one.
const Usual = 75.0

// Manned returns the crew of a design, or one usual person kneeling amidships when
// it has none.
func Manned(d *design.Design) []design.Person {
	if len(d.Crew) > 0 {
		return d.Crew
	}
	return []design.Person{{Name: "Paddler (assumed)", Mass: Usual}}
}

// Light returns the boat with its other outfits, without people and gear.
func (b Boat) Light() float.Load { return float.Total(b.Empty, weight.Sum(b.Fitted)) }

// Load returns boat, outfits, crew and gear with whatever else is given.
func (b Boat) Load(more ...float.Load) float.Load {
	all := append([]float.Load{b.Light(), weight.Sum(b.Crew), weight.Sum(b.Gear)}, more...)
	return float.Total(all...)
}

// SayFitted tells of the other outfits' weight, where there is some.
func (b Boat) SayFitted(n *finding.List) {
	if l := weight.Sum(b.Fitted); l.Mass > 0 {
		n.Say("aboard", finding.Arithmetic, "the other outfits of %s, %.1f kg, are counted as weight", wording.OneLine(b.Frame.Design.Title), l.Mass)
	}
}

// Crosses names the cross pieces of the frame, with their stations, whose middles lie
// from one station to another, mm.
func (b Boat) Crosses(from, to float64) []string {
	var out []string
	for _, t := range b.Frame.Thwarts {
		if t.At >= from && t.At <= to {
			out = append(out, fmt.Sprintf("%s at %.0f mm", wording.OneLine(wording.Clip(t.Name, 40)), t.At))
		}
	}
	return out
}

// GunwaleTop returns the inner and the outer upper edge of the port gunwale at a
// station.
func (b Boat) GunwaleTop(x float64) (inner, outer geometry.Point3) {
	g := b.Frame.Gunwale
	return g.EdgeAt(x, -g.Width/2, g.Height), g.EdgeAt(x, g.Width/2, g.Height)
}

// Floor returns the height of the floor, the ribs' upper face, at a station.
func (b Boat) Floor(x float64) float64 { return weight.FloorZ(b.Frame, x) }
