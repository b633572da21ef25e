package rig

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/float"
	"ribwright/geometry/mass"
)

// taper is the share of a parallel stick that a tapered spar weighs. Common
// practice, no source.
const taper = 0.8

// The boards' measures, mm. The step is as old canoes had it, some 130 mm square and
// 38 thick, drawn out to lie on two ribs. Common practice, no source.
const (
	StepThick   = 38.0
	StepWide    = 127.0
	PartnerWide = 130.0
	BracketBar  = 60.0 // the bar across the gunwales that holds the leeboard: along the boat
	BracketHigh = 32.0
)

// StepLong is the step's length along the boat, mm: over two ribs.
func (f *Fit) StepLong() float64 {
	d := f.Boat.Frame.Design.Ribs
	return math.Ceil(float64(d.Pitch+d.Width)/10)*10 + 30
}

// StepAcross is the step's breadth, mm: wood enough beside each hole.
func (f *Fit) StepAcross() float64 {
	if f.Sail.Rig != design.Vee {
		return math.Max(StepWide, math.Ceil(f.Mast.Diameter)+64)
	}
	return math.Ceil(2*(f.Spread(f.Mast.StepZ+StepThick)+f.Mast.Diameter/2)) + 50
}

// Items lists what the rig weighs, sail up.
//
// Errors: a wood that is not known.
func (f *Fit) Items() ([]mass.Item, error) {
	d := f.Boat.Frame.Design
	spars, err := d.Wood(f.Sail.Spars)
	if err != nil {
		return nil, err
	}
	boards, err := d.Wood(f.Sail.Boards)
	if err != nil {
		return nil, err
	}
	stick := func(length, diameter float64) float64 {
		return taper * length * math.Pi * diameter * diameter / 4 * spars.Density * 1e-9
	}
	rig := f.weighSpars(stick)
	center := f.Plan.Center()
	const sewn = 1.25 // hems, patches, lines
	sail := float.Load{Mass: f.Plan.Area() * f.Sail.Cloth / 1000 * sewn, At: at(f.Mast.At+center.X, f.Tack+center.Y)}
	if f.Sail.Rig == design.Vee {
		sail.At.X = f.Mast.At
	}
	wood := boards.Density * 1e-9
	_, outer := f.Boat.GunwaleTop(f.Mast.At)
	fit := []float.Load{
		{Mass: (2*outer.Y + 80) * PartnerWide * PartnerThick * wood, At: at(f.Mast.At, f.Mast.PartnerZ)},
		{Mass: f.StepLong() * f.StepAcross() * StepThick * wood, At: at(f.Mast.At, f.Mast.StepZ+StepThick/2)},
	}
	if b := f.Board; b.Area > 0 {
		_, o := f.Boat.GunwaleTop(f.boardStation())
		thick := math.Max(b.Thick, 16)
		fit = append(fit, float.Load{Mass: 0.9*b.Long*b.Chord*thick*wood + (2*o.Y+120)*BracketBar*BracketHigh*wood + 0.5, At: at(f.boardStation(), o.Z-b.Long/4)})
	}
	return []mass.Item{
		{Name: "Mast and spars", Loads: rig}, {Name: "Sail", Loads: []float.Load{sail}}, {Name: "Step, partner, leeboard", Loads: fit},
	}, nil
}

// weighSpars weighs mast and spars; stick is the mass of one by length and diameter.
func (f *Fit) weighSpars(stick func(length, diameter float64) float64) []float.Load {
	var out []float.Load
	if f.Mast.Long > 0 {
		out = append(out, float.Load{Mass: stick(f.Mast.Long, f.Mast.Diameter), At: at(f.Mast.At, f.Mast.StepZ+0.45*f.Mast.Long)})
	}
	for _, s := range f.Plan.Spars {
		x, mid := f.Mast.At, s.From.Lerp(s.To, 0.5)
		if f.Sail.Rig != design.Vee {
			x += mid.X
		}
		diameter := s.Diameter
		if diameter == 0 {
			diameter = leastSpar
		}
		out = append(out, float.Load{Mass: stick(s.Length(), diameter), At: at(x, f.Tack+mid.Y)})
	}
	return out
}

// at is a place on the middle line.
func at(x, z float64) geometry.Point3 { return geometry.Point3{X: x, Z: z} }
