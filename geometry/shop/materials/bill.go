// Package materials counts what a boat takes besides its sticks: glue by area, cloth by
// shape, coating by area and coats, cord by lashings, fasteners by places.
package materials

import (
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/outfit/kit"
	"ribwright/geometry/shop/cutlist"
)

// Item is one thing to buy.
type Item struct {
	Key    string  // as price tables name it
	Name   string  // in words
	Amount float64 // in units
	Unit   string  // "kg", "L", "m", "m2", "m3", "each", "lot"
	How    string  // how the amount is worked out
}

// Allowances and rates. Common practice, no source, unless said otherwise.
const (
	GluePerArea  = 0.30  // kg/m2 of glue line, both faces wetted
	glueWaste    = 1.5   // mixed and not used
	GripEach     = 100.0 // mm of cloth beyond the gunwale's top on each side, to pull by
	GripLength   = 400.0 // mm of cloth beyond the boat, both ends together
	CoatPerArea  = 0.40  // L/m2 of two-part coating, all coats together; from memory, 0.3 to 0.5
	Coats        = 3
	OilCoats     = 2
	oilPerLitre  = 10.0 // m2 of wood and coat
	PegsPerRib   = 2    // one in each head
	tackPitch    = 30.0 // mm along each gunwale
	endLashings  = 6.0  // m of cord at each end: stem to keel, gunwales, breasthook
	threadPerEnd = 4.0  // m for sewing one end
)

// Cloth is the sheet for the skin, mm.
type Cloth struct {
	Length, Width float64
	Area          float64 // of the boat's outside, mm2
	EndGirth      float64 // round the last rib on each end, mm; what the cloth has too much there is gathered
}

// Needs is everything counted for one boat.
type Needs struct {
	Items     []Item
	Cloth     Cloth
	Lashings  Lashings
	GlueArea  float64 // mm2
	WoodFaces float64 // mm2 of wood to oil
	Pegs      int
	Tacks     int
}

// Count works out the needs of a frame with its cloth and its outfits, whose sticks are
// sawn by the plan.
func Count(f *frame.Frame, c *skin.Cloth, p *cutlist.Plan, kits ...kit.Kit) *Needs {
	n := &Needs{Lashings: lashings(f), GlueArea: glueArea(p), Cloth: sheet(f, c)}
	for _, s := range p.Sticks {
		n.WoodFaces += 2 * (s.Width + s.Thickness) * s.Length
	}
	n.Pegs = PegsPerRib * len(f.Ribs)
	for _, t := range f.Thwarts {
		n.Pegs += len(t.Holes)
	}
	n.Tacks = 2 * int(math.Ceil((f.Gunwale.Fore-f.Gunwale.Aft)/tackPitch))
	n.list(f, p)
	n.outfits(kits)
	return n
}

// sheet is the cloth to buy: over the greatest girth and the longest line, with
// what is needed to grip it.
func sheet(f *frame.Frame, c *skin.Cloth) Cloth {
	long := math.Max(f.Hull.Length, f.Gunwale.Fore-f.Gunwale.Aft)
	girth, last := f.Skin.Girth, math.Inf(1)
	ribs := c.Ribs()
	for i, r := range ribs {
		half, _ := r.Girth()
		round := 2 * half
		girth = math.Max(girth, round)
		if i == 0 || i == len(ribs)-1 {
			last = math.Min(last, round)
		}
	}
	return Cloth{Length: long + GripLength, Width: girth + 2*GripEach, Area: c.Area(), EndGirth: last}
}

// glueArea is every glue line: between plies, and in scarfs.
func glueArea(p *cutlist.Plan) float64 {
	sum := 0.0
	members := map[string]int{}
	for i, s := range p.Sticks {
		for _, j := range p.Cuttings[i].Joints {
			sum += s.Width * math.Hypot(j.Length, s.Thickness)
		}
		if m := s.Member; m != "" {
			wide := s.Width
			if s.Edge {
				wide = s.Thickness
			}
			if members[m]++; members[m] > 1 {
				sum += wide * s.Length
			}
		}
	}
	return sum
}
