// Package weight weighs a framed boat and what it carries: each part by its volume
// and density, people by their mass and how they sit.
package weight

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/water/float"
)

// Item is one entry of the list of weights.
type Item struct {
	Name  string
	Loads []float.Load // its pieces; places in mm
}

// Load returns the whole of the item.
func (i Item) Load() float.Load { return float.Total(i.Loads...) }

// Sum returns the whole of a list.
func Sum(items []Item) float.Load {
	var all []float.Load
	for _, i := range items {
		all = append(all, i.Loads...)
	}
	return float.Total(all...)
}

// Allowances for what the volumes of the parts leave out. Common practice, no source.
const (
	Lashing = 0.05 // cord, pegs, glue and oil, as a share of the wood's mass
	Lap     = 0.08 // cloth beyond the bare outside, as a share of it: hems, seams, the turn over the gunwales
)

// cubic is the mass in kg of a volume in mm3 at a density in kg/m3.
func cubic(volume, density float64) float64 { return volume * density * 1e-9 }

// Boat lists the parts of the empty boat, with the cloth over its frame. Seats, floor
// slats and footrests are not in a design and are not counted; stems are counted as
// the wood of the breasthooks.
//
// Errors: a wood that is not known.
func Boat(f *frame.Frame, cloth *skin.Cloth) ([]Item, error) {
	w := weigher{f: f}
	items := []Item{
		{"Gunwales", w.gunwales()}, {"Ribs", w.ribs()}, {"Keel", w.keel()}, {"Stringers", w.stringers()},
		{"Stems and breasthooks", w.ends()}, {"Thwarts, yoke, seat bars", w.thwarts()},
	}
	wood := Sum(items)
	items = append(items, Item{"Cord, pegs, oil (estimate)", []float.Load{{Mass: Lashing * wood.Mass, At: wood.At}}})
	return append(items, Item{"Cloth and coating", Cloth(cloth, f.Design.Skin.Mass)}), w.err
}

// weigher weighs parts and keeps the first wood that is not known.
type weigher struct {
	f   *frame.Frame
	err error
}

func (w *weigher) density(species string) float64 {
	s, err := w.f.Design.Wood(species)
	if err != nil && w.err == nil {
		w.err = err
	}
	return s.Density
}

// pair returns a piece and its mirror, kg each.
func pair(mass float64, at geometry.Point3) []float.Load {
	other := at
	other.Y = -at.Y
	return []float.Load{{Mass: mass, At: at}, {Mass: mass, At: other}}
}
