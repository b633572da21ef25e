// Package kit lists what is fitted to a frame, a seat as well as a sail: pieces of wood
// with their size and place, things to buy, sewing and other work. One list serves the
// weight, the boards, the shopping and the hours. Units: mm, kg.
package kit

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// Form is how a piece is worked.
type Form int

// The forms.
const (
	Board Form = iota // sawn to an outline
	Spar              // planed round along its length
	Beam              // planed square
)

// Piece is a kind of piece of wood.
type Piece struct {
	Group             string // the entry of the list of weights that it is counted in, and can be left ashore by
	Name              string // as its pattern has it
	Count             int
	Form              Form
	Wood              string
	Long, Wide, Thick float64         // of the block that it fills, grain along Long
	Grain             string          // "" for along Long
	Fill              float64         // share of the block that is left in the end
	At                geometry.Point3 // the middle of all of them
	Scarf             float64         // slope at which a long stick may be scarfed; 0 when it must be one piece
}

// Volume returns the wood of one finished piece, mm3.
func (p Piece) Volume() float64 { return p.Long * p.Wide * p.Thick * p.Fill }

// Block takes the block from the outline that is sawn, its X along the grain.
func (p *Piece) Block(outline []geometry.Point) {
	b := geometry.Around(outline...)
	p.Long, p.Wide = b.W(), b.H()
	p.Fill = math.Abs(curve.Area(outline)) / (p.Long * p.Wide)
}

// Thing is bought.
type Thing struct {
	Group  string
	Key    string // as price tables name it
	Name   string
	Amount float64
	Unit   string // "m", "m2", "each"
	How    string // how the amount is worked out
	Mass   float64
	Dense  float64 // kg/m3 of what it is made of; metal when 0
	At     geometry.Point3
}

// metal is taken for things that say nothing else, kg/m3: steel and bronze, which lift
// least.
const metal = 8000.0

// Solid is the room that all of it takes up in water.
func (t Thing) Solid() weight.Solid { return weight.SolidOf(t.Mass, cmp.Or(t.Dense, metal)) }

// Work is an operation besides sawing, shaping and sewing.
type Work struct {
	Name    string
	Count   float64
	Unit    string  // what is counted
	Minutes float64 // for one, by an experienced woodworker
	Bare    bool    // done on the bare frame, before it is oiled and covered
}

// Kit is all of an outfit, or of what belongs to the finished boat itself.
type Kit struct {
	Name    string // of the outfit, "sail", or of the boat's own, "seats"
	Own     bool   // the boat is not ready for the water without it
	Pieces  []Piece
	Things  []Thing
	Sewing  float64 // seams and hems, m
	Corners int     // of a sail, to be patched
	Works   []Work  // besides
}

// Items lists what the kit weighs, one item a group, in the order of the pieces.
//
// Errors: a wood that is not known.
func (k Kit) Items(d *design.Design) ([]weight.Item, error) {
	var out []weight.Item
	add := func(group string, l float.Load, s weight.Solid) {
		i := slices.IndexFunc(out, func(v weight.Item) bool { return v.Name == group })
		if i < 0 {
			i, out = len(out), append(out, weight.Item{Name: group})
		}
		out[i].Loads, out[i].Solid = append(out[i].Loads, l), out[i].Solid.Plus(s)
	}
	for _, p := range k.Pieces {
		s, err := d.Wood(p.Wood)
		if err != nil {
			return nil, err
		}
		l := float.Load{Mass: float64(p.Count) * p.Volume() * s.Density * 1e-9, At: p.At}
		add(p.Group, l, weight.SolidWood(l.Mass, s))
	}
	for _, t := range k.Things {
		if t.Mass > 0 {
			add(t.Group, float.Load{Mass: t.Mass, At: t.At}, t.Solid())
		}
	}
	return out, nil
}

// Without returns the kit without what is counted in those groups. The work on it stays.
func (k Kit) Without(groups []string) Kit {
	k.Pieces = slices.DeleteFunc(slices.Clone(k.Pieces), func(p Piece) bool { return slices.Contains(groups, p.Group) })
	k.Things = slices.DeleteFunc(slices.Clone(k.Things), func(t Thing) bool { return slices.Contains(groups, t.Group) })
	return k
}

// Round is the share of a square block that a parallel round stick is.
const Round = math.Pi / 4

// The clip that holds a bar to a gunwale, mm: a hook under its inner edge. How much
// wood stands inboard, how far the lip reaches under the gunwale, how thick lip and
// board are. Common practice, no source.
const (
	ClipWide  = 44.0
	ClipLip   = 10.0
	LipThick  = 16.0
	ClipThick = 18.0
)

// ClipOutline returns the clip seen along the boat: x outboard, y up, zero at the
// gunwale's upper inner edge, where the bar's lower face lies.
func ClipOutline(g frame.Gunwale) []geometry.Point {
	sin, cos := math.Sincos(g.Tilt)
	foot := geometry.Point{X: -sin * g.Height, Y: -cos * g.Height}          // of the inner face
	lip := geometry.Point{X: foot.X + ClipLip*cos, Y: foot.Y - ClipLip*sin} // under the gunwale
	low := math.Min(lip.Y, foot.Y) - LipThick
	back := math.Min(-ClipWide, foot.X-ClipWide+10)
	return []geometry.Point{{X: back}, {X: back, Y: low + 12}, {X: back + 12, Y: low}, {X: lip.X - 4, Y: low}, {X: lip.X, Y: low + 4}, lip, foot, {}}
}

// Clip returns so many clips for a gunwale, with their bolts' weight left to things.
func Clip(g frame.Gunwale, group, wood string, count int, middle geometry.Point3) Piece {
	p := Piece{Group: group, Name: "Clip", Count: count, Wood: wood, Thick: ClipThick, At: middle}
	p.Block(ClipOutline(g))
	return p
}

// Bolts returns what holds the fittings together.
func Bolts(group string, count int, how string, middle geometry.Point3) Thing {
	return Thing{Group: group, Key: "bolt", Name: "bolts of 8 mm with washers and wing nuts, that do not rust", Amount: float64(count), Unit: "each",
		How: how, Mass: boltMass * float64(count), At: middle}
}

// boltMass is one bolt's with its nut and washers, kg. Estimate.
const boltMass = 0.06

// Webbing returns so many meters of what straps and loops inside the boat are made of.
func Webbing(group string, long float64, how string, middle geometry.Point3) Thing {
	return Thing{Group: group, Key: "strap", Name: "webbing of 25 mm with buckles", Amount: long, Unit: "m",
		How: how, Mass: long * WebbingMass, Dense: webbingDense, At: middle}
}

// Webbing of 25 mm with its share of buckles, kg a meter, and polypropylene, kg/m3.
// Estimates.
const (
	WebbingMass  = 0.022
	webbingDense = 950.0
)

// What saddles and footbraces are screwed with: bronze or stainless, 3.5 by 30 mm. The
// mass is an estimate, kg.
const (
	ScrewKey  = "fit-screw"
	ScrewName = "screws of 3.5 mm for fittings, bronze or stainless"
	ScrewMass = 0.0018
)
