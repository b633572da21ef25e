// Package weight weighs a framed boat and what it carries: each part by its volume
// and density, people by their mass and how they sit.
package weight

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
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

// Extras are what the frame's own volumes leave out. Common practice, no source.
const (
	// Lashing is cord, pegs, glue and oil as a share of the wood's mass.
	Lashing = 0.05
	// Lap is the cloth beyond the bare surface: hems, seams and the turn over
	// the gunwales, as a share of it.
	Lap = 0.08
)

// cubic is the mass in kg of a volume in mm3 at a density in kg/m3.
func cubic(volume, density float64) float64 { return volume * density * 1e-9 }

// Boat lists the parts of the empty boat. Seats, floor slats and footrests are
// not in a design and are not counted; stems are counted as the wood of the
// breasthooks.
//
// Errors: a wood that is not known or an outside that cannot be drawn, which a
// frame that was built has not.
func Boat(f *frame.Frame) ([]Item, error) {
	outside, err := skin.Hull(f)
	if err != nil {
		return nil, err
	}
	return Covered(f, outside)
}

// Covered is Boat for a frame whose outside has been drawn already.
func Covered(f *frame.Frame, outside *float.Hull) ([]Item, error) {
	w := weigher{f: f}
	items := []Item{
		{"Gunwales", w.gunwales()}, {"Ribs", w.ribs()}, {"Keel", w.keel()}, {"Stringers", w.stringers()},
		{"Stems and breasthooks", w.ends()}, {"Thwarts, yoke, seat bars", w.thwarts()},
	}
	wood := Sum(items)
	items = append(items, Item{"Cord, pegs, oil (estimate)", []float.Load{{Mass: Lashing * wood.Mass, At: wood.At}}})
	return append(items, Item{"Cloth and coating", w.skin(outside)}), w.err
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

// FloorZ returns the height of the floor at a station: the upper face of the ribs
// over the keel.
func FloorZ(f *frame.Frame, x float64) float64 {
	skin, _ := f.Hull.KeelZ(x)
	d := f.Design
	return skin + float64(d.Skin.Thickness+d.Keel.Depth+d.Ribs.Thickness)
}

// Crew lists the people of the design, each at the center of their weight.
func Crew(f *frame.Frame, crew []design.Person) []Item {
	var out []Item
	for _, p := range crew {
		at := geometry.Point3{X: float64(p.At), Z: FloorZ(f, float64(p.At)) + Height(p)}
		out = append(out, Item{p.Name, []float.Load{{Mass: p.Mass, At: at}}})
	}
	return out
}

// Gear lists what is carried.
func Gear(f *frame.Frame, gear []design.Gear) []Item {
	const usual = 150 // mm over the floor, a pack lying down; common practice, no source
	var out []Item
	for _, g := range gear {
		high := float64(g.Height)
		if high == 0 {
			high = usual
		}
		at := geometry.Point3{X: float64(g.At), Z: FloorZ(f, float64(g.At)) + high}
		out = append(out, Item{g.Name, []float.Load{{Mass: g.Mass, At: at}}})
	}
	return out
}
