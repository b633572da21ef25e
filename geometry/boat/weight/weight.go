// Package weight weighs a framed boat and what it carries: each part by its volume
// and density, people by their mass and how they sit.
package weight

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/curve"
	"ribwright/geometry/water/float"
)

// Item is one entry of the list of weights.
type Item struct {
	Name  string
	Loads []float.Load // its pieces; places in mm
	Solid Solid        // of the boat's own; the zero Solid of people and gear
}

// Load returns the whole of the item.
func (i Item) Load() float.Load { return float.Total(i.Loads...) }

// Sum returns the whole of a list.
func Sum(items []Item) float.Load {
	all := make([]float.Load, len(items))
	for k, i := range items {
		all[k] = i.Load()
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

// Boat lists the parts of the empty boat, with the cloth over its frame. Seats and
// other fittings have lists of their own.
//
// Errors: a wood that is not known.
func Boat(f *frame.Frame, cloth *skin.Cloth) ([]Item, error) {
	w := weigher{f: f, known: map[string]float64{}}
	d := f.Design
	var crosses []string
	for _, t := range d.Thwarts {
		crosses = append(crosses, t.Species)
	}
	items := []Item{
		w.item("Gunwales", w.gunwales(), d.Gunwale.Species), w.item("Ribs", w.ribs(), d.Ribs.Species),
		w.item("Keel", w.keel(), d.Keel.Species), w.item("Stringers", w.stringers(), d.Stringers.Species),
		w.item("Stems and breasthooks", w.ends(), d.StemWood(), d.Breasthook.Species), w.item("Cross pieces", w.thwarts(), crosses...),
	}
	wood := Sum(items)
	cord := float.Load{Mass: Lashing * wood.Mass, At: wood.At}
	items = append(items, Item{"Cord, pegs, oil (estimate)", []float.Load{cord}, SolidOf(cord.Mass, Corded)})
	skin := Item{Name: "Cloth and coating", Loads: Cloth(cloth, d.Skin.Mass())}
	skin.Solid = SolidOf(skin.Load().Mass, SkinDensity(d.Skin))
	return append(items, skin), w.err
}

// item is wood of one kind, or a kind for each load.
func (w *weigher) item(name string, loads []float.Load, species ...string) Item {
	out := Item{Name: name, Loads: loads}
	woods := make([]soaking, min(len(species), len(loads)))
	for k := range woods {
		if s, err := w.f.Design.Wood(species[k]); err == nil { // one that is not known has been found before
			woods[k] = soakingOf(s)
		}
	}
	for i, l := range loads {
		if k := woods[i%len(woods)]; k != (soaking{}) {
			out.Solid = out.Solid.Plus(k.solid(l.Mass))
		}
	}
	return out
}

// weigher weighs parts and keeps the first wood that is not known.
type weigher struct {
	f     *frame.Frame
	known map[string]float64 // densities that were looked up
	err   error
}

func (w *weigher) density(species string) float64 {
	if kg, ok := w.known[species]; ok {
		return kg
	}
	s, err := w.f.Design.Wood(species)
	if err != nil && w.err == nil {
		w.err = err
	}
	w.known[species] = s.Density
	return s.Density
}

// pair adds a load and its mirror to a list.
func pair(to []float.Load, mass float64, at geometry.Point3) []float.Load {
	other := at
	other.Y = -at.Y
	return append(to, float.Load{Mass: mass, At: at}, float.Load{Mass: mass, At: other})
}

// pieces is how many lengths a long part is weighed in.
const pieces = 40

// along weighs both of a pair of long parts of even section, mm2, in pieces,
// each at the middle of its length moved by the step.
func along(t *curve.Track, section, density float64, step geometry.Point3) []float.Load {
	return alongToo(make([]float.Load, 0, 2*pieces), t, section, density, step)
}

// alongToo adds such a pair to a list.
func alongToo(out []float.Load, t *curve.Track, section, density float64, step geometry.Point3) []float.Load {
	a, b := t.Ends()
	x0, s0 := a, t.Length(a)
	for i := range pieces {
		x1 := a + (b-a)*float64(i+1)/pieces
		s1 := t.Length(x1)
		out = pair(out, cubic(section*(s1-s0), density), t.Point((x0+x1)/2).Add(step))
		x0, s0 = x1, s1
	}
	return out
}

func (w *weigher) gunwales() []float.Load {
	g, d := w.f.Gunwale, w.f.Design
	sin, cos := math.Sincos(g.Tilt)
	up := geometry.Point3{Y: g.Height / 2 * sin, Z: g.Height / 2 * cos}
	// The tenons fill the mortises: what is cut out comes back with the ribs.
	holes := 0.0
	for _, m := range g.Mortises {
		holes += m.Length * m.Width * m.Depth
	}
	section := g.Width*g.Height - holes/(g.Fore-g.Aft)
	return along(g.Line, section, w.density(d.Gunwale.Species), up)
}

func (w *weigher) stringers() []float.Load {
	s := w.f.Design.Stringers
	out := make([]float.Load, 0, 2*pieces*len(w.f.Stringers))
	for _, line := range w.f.Stringers {
		out = alongToo(out, line.Line, float64(s.Width*s.Depth), w.density(s.Species), geometry.Point3{})
	}
	return out
}

func (w *weigher) keel() []float.Load {
	k := w.f.Design.Keel
	return along(w.f.Keel.Line, float64(k.Width*k.Depth)/2, w.density(k.Species), geometry.Point3{})
}

func (w *weigher) ribs() []float.Load {
	d := w.f.Design
	section := float64(d.Ribs.Width * d.Ribs.Thickness)
	density := w.density(d.Ribs.Species)
	const parts = 12
	out := make([]float.Load, 0, len(w.f.Ribs)*2*(parts+1))
	for _, r := range w.f.Ribs {
		half, face := r.Section.Half.Length(), r.Section.Faces()
		for i := range parts {
			p := face(half*(float64(i)+0.5)/parts, 0)
			out = pair(out, cubic(section*r.Length/2/parts, density), geometry.Point3{X: r.Station, Y: p.X, Z: p.Y})
		}
		head := face(half, 0)
		out = pair(out, cubic(section*r.Tenon, density), geometry.Point3{X: r.Station, Y: head.X, Z: head.Y + r.Tenon/2})
	}
	return out
}

// ends weighs stems and breasthooks. A stem's outline is drawn as the bow's, so
// the stern's lies the other way.
func (w *weigher) ends() []float.Load {
	f := w.f
	density, stems := w.density(f.Design.Breasthook.Species), w.density(f.Design.StemWood())
	var out []float.Load
	for _, e := range []struct {
		stem frame.Stem
		hook frame.Breasthook
		end  hull.End
		side float64
	}{{f.Bow, f.BowHook, f.Hull.Bow, 1}, {f.Stern, f.SternHook, f.Hull.Stern, -1}} {
		area, mid := plate(e.stem.Outline)
		out = append(out, float.Load{Mass: cubic(area*e.stem.Thickness, stems), At: geometry.Point3{X: e.side * mid.X, Z: mid.Y}})
		area, mid = plate(e.hook.Outline) // x from the gunwale ends inward, negative
		out = append(out, float.Load{
			Mass: cubic(area*e.hook.Thickness, density),
			At:   geometry.Point3{X: e.side * (e.end.GunwaleX + mid.X), Z: e.end.TopZ + mid.X*e.hook.Slope - e.hook.Thickness/2},
		})
	}
	return out
}

func (w *weigher) thwarts() []float.Load {
	var out []float.Load
	for i, t := range w.f.Thwarts {
		area, _ := plate(t.Outline)
		z := w.f.Gunwale.Line.Point(t.At).Z - t.Thickness/2
		out = append(out, float.Load{Mass: cubic(area*t.Thickness, w.density(w.f.Design.Thwarts[i].Species)), At: geometry.Point3{X: t.At, Z: z}})
	}
	return out
}

// plate returns the area inside a closed outline and its center.
func plate(outline curve.Path) (area float64, center geometry.Point) {
	pts := outline.Flatten(0.05)
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		cross := p.Cross(q)
		area += cross / 2
		center = center.Add(p.Add(q).Scale(cross / 6))
	}
	return math.Abs(area), center.Scale(1 / area)
}

// Cloth weighs the cloth of a boat with its coating, mass g/m2, by the whole outside.
// It is spread along the boat by the girths of the ribs, and in the ends by the last
// rib's.
func Cloth(c *skin.Cloth, mass float64) []float.Load {
	ribs := c.Ribs()
	out := make([]float.Load, 0, 2*(len(ribs)+1))
	spread := 0.0
	add := func(x, area float64, at geometry.Point) {
		spread += 2 * area
		out = pair(out, area, geometry.Point3{X: x, Y: at.X, Z: at.Y})
	}
	girths, mids := make([]float64, len(ribs)), make([]geometry.Point, len(ribs))
	for i, r := range ribs {
		girths[i], mids[i] = r.Girth()
	}
	for i := 1; i < len(ribs); i++ {
		a, b := ribs[i-1].Station, ribs[i].Station
		add((a+b)/2, (girths[i-1]+girths[i])/2*(b-a), mids[i-1].Lerp(mids[i], 0.5))
	}
	// In the ends the girth falls towards the forefoot and the sides close in.
	stern, bow := c.Ends()
	for _, e := range []struct {
		i         int
		tip, side float64
	}{{0, stern.Gunwale, -1}, {len(ribs) - 1, bow.Gunwale, 1}} {
		from := ribs[e.i].Station * e.side
		add(e.side*(from+(e.tip-from)*0.45), girths[e.i]*0.75*(e.tip-from), geometry.Point{X: mids[e.i].X / 2, Y: mids[e.i].Y})
	}
	area := c.Area()
	for i := range out {
		out[i].Mass *= area / spread * mass * 1e-9 * (1 + Lap)
	}
	return out
}
