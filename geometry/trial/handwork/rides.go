package handwork

import (
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/water/float"
)

// rides is what of the weight goes with what of the shape.
type rides struct {
	frame *frame.Frame
	cloth *skin.Cloth
	floor []float64  // people, gear and the keel: kg for each pin of the keel, stern, ribs from aft, bow
	ends  [2]float64 // stems, with the ends of gunwales and stringers on them, kg

	perRib, perStringer, perCloth float64 // kg for each mm of a rib, each mm of a pair of stringers, each mm2
}

// hang works out what rides on what.
//
// Errors: a wood that is not known.
func (s *sounding) hang() (rides, error) {
	f, d := s.m.b.Frame, s.m.b.Frame.Design
	out := rides{frame: f, cloth: s.boat.Cloth, floor: make([]float64, len(s.m.ribs)+2), perCloth: d.Skin.Mass() * 1e-9 * (1 + weight.Lap)}
	var perKeel, perGunwale float64
	for _, stick := range []struct {
		per     *float64
		species string
		section float64
	}{
		{&out.perRib, d.Ribs.Species, float64(d.Ribs.Width * d.Ribs.Thickness)},
		{&out.perStringer, d.Stringers.Species, 2 * float64(d.Stringers.Width*d.Stringers.Depth)},
		{&perKeel, d.Keel.Species, float64(d.Keel.Width * d.Keel.Depth)},
		{&perGunwale, d.Gunwale.Species, 2 * float64(d.Gunwale.Width*d.Gunwale.Height)},
	} {
		wood, err := d.Wood(stick.species)
		if err != nil {
			return out, err
		}
		*stick.per = stick.section * wood.Density * 1e-9 * (1 + weight.Lashing)
	}
	stands := func(x, kg float64) {
		for j := range s.m.keel.units {
			v, _ := s.m.keel.units[j].Rise(x)
			out.floor[j] += v * kg
		}
	}
	for i, item := range s.boat.Crew {
		at := item.Load().At.X
		if on, ok := d.SeatOf(s.boat.People[i]); ok {
			at = float64(on.At)
		}
		stands(at, item.Load().Mass)
	}
	for _, item := range s.boat.Gear {
		stands(item.Load().At.X, item.Load().Mass)
	}
	for _, one := range s.boat.Seats { // set by their height over the floor, hung ones too
		for _, item := range s.boat.Parts {
			if item.Name == one.Name {
				stands(one.At, item.Load().Mass)
			}
		}
	}
	out.keel(perKeel)
	for _, item := range s.boat.Parts {
		for _, l := range item.Loads {
			if strings.HasPrefix(item.Name, "Stems") {
				out.ends[side(l.At.X)] += l.Mass * (1 + weight.Lashing)
			}
		}
	}
	out.sticks(perGunwale)
	return out, nil
}

// side is 0 for the stern and 1 for the bow.
func side(x float64) int {
	if x < 0 {
		return 0
	}
	return 1
}

// keel adds the keel's stick, which goes in straight pieces from pin to pin.
func (r *rides) keel(per float64) {
	last := -r.frame.Hull.Stern.Toe.X
	for i := range r.floor[1:] {
		at := r.frame.Hull.Bow.Toe.X
		if i < len(r.frame.Ribs) {
			at = r.frame.Ribs[i].Station
		}
		r.floor[i] += per * (at - last) / 2
		r.floor[i+1] += per * (at - last) / 2
		last = at
	}
}

// sticks adds the halves of gunwales and stringers past the last ribs to the ends.
func (r *rides) sticks(gunwale float64) {
	ribs := r.frame.Ribs
	add := func(per, aft, fore float64) {
		r.ends[0] += per * (ribs[0].Station - aft) / 2
		r.ends[1] += per * (fore - ribs[len(ribs)-1].Station) / 2
	}
	aft, fore := r.frame.Gunwale.Line.Ends()
	add(gunwale, aft, fore)
	for _, t := range r.frame.Stringers {
		aft, fore := t.Line.Ends()
		add(r.perStringer, aft, fore)
	}
}

// at returns what more the cloth weighs at rib i, whose section, corners and stringers
// have moved, and what of the weight there has been lifted, kg mm.
func (r rides) at(i int, now hull.Section, corners skin.Rib, stringers []geometry.Point) (cloth float.Load, lifted float64) {
	rib := r.frame.Ribs[i]
	const parts = 6
	was, is := rib.Section.Half.Length(), now.Half.Length()
	for k := range parts {
		at := (float64(k) + 0.5) / parts
		lifted += r.perRib * rib.Length / parts * (now.Face(at*is, 0).Y - rib.Section.Face(at*was, 0).Y)
	}
	before, low := r.cloth.Ribs()[i].Girth()
	after, middle := corners.Girth()
	for k, p := range stringers {
		aft, fore := r.frame.Stringers[k].Line.Ends()
		lifted += r.perStringer * r.stands(i, aft, fore, 0.5) * p.Y
	}
	stern, bow := r.cloth.Ends()
	const girths = 0.75 // as the cloth is weighed in the ends
	wide := 2 * r.perCloth * r.stands(i, -stern.Gunwale, bow.Gunwale, girths)
	lifted += wide * before * (middle.Y - low.Y)
	return float.Load{Mass: wide * (after - before), At: geometry.Point3{X: rib.Station, Z: middle.Y}}, lifted
}

// stands is the length that rib i stands for, mm, with a share of what lies past the
// last ribs to the ends.
func (r rides) stands(i int, aft, fore, past float64) float64 {
	ribs := r.frame.Ribs
	sum := 0.0
	if i == 0 {
		sum += past * (ribs[0].Station - aft)
	} else {
		sum += (ribs[i].Station - ribs[i-1].Station) / 2
	}
	if i == len(ribs)-1 {
		return sum + past*(fore-ribs[i].Station)
	}
	return sum + (ribs[i+1].Station-ribs[i].Station)/2
}
