package sizing

import (
	"cmp"

	"ribwright/geometry"
	"ribwright/geometry/boat/fittings"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/outside"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/timber"
)

// weigh adds up the boat's own weight by the volumes of its parts, with the allowances
// of the list of weights of a finished frame.
func (s *sketch) weigh(woods densities) (float.Load, error) {
	w := weigher{woods: woods, loads: make([]float.Load, 0, 160)}
	d := s.d
	high := (s.hull.Sheer.MidZ*2+s.hull.Sheer.BowZ)/3 + float64(d.Gunwale.Height)/2
	stick := s.rail.long()
	w.add(d.Gunwale.Species, 2*stick*float64(d.Gunwale.Width*d.Gunwale.Height), high)
	s.weighRibs(&w)
	keel := float64(d.Keel.Depth) / 2
	w.add(d.Keel.Species, (s.hull.Bow.Toe.X+s.hull.Stern.Toe.X)*float64(d.Keel.Width*d.Keel.Depth), keel)
	s.weighStringers(&w)
	for _, end := range []float64{1, -1} {
		e, st := s.hull.Bow, d.Bow
		if end < 0 {
			e, st = s.hull.Stern, d.After()
		}
		w.add(d.StemWood(), (e.Outer.Length()+float64(st.Landing))*float64(st.Moulded*st.Siding)*0.9, e.TopZ*0.45)
		hook := float64(d.Breasthook.Length)
		w.add(d.Breasthook.Species, 0.25*hook*hook*float64(d.Breasthook.Thickness), e.TopZ)
	}
	for _, t := range d.Thwarts {
		p := s.hull.Gunwale.Point(float64(t.At))
		w.put(t.Species, 2*p.Y*float64((t.Width+t.Waist)/2*t.Thickness), geometry.Point3{X: p.X, Z: p.Z - float64(t.Thickness)/2})
	}
	timbers := float.Total(w.loads...)
	if err := s.weighFittings(&w); err != nil {
		return float.Load{}, err
	}
	volume, bought := outside.Roughly(d, stick, s.hull.Bow.Toe.X+s.hull.Stern.Toe.X, len(s.ribs))
	w.add(d.OutsideWood(), volume, high)
	dry := float.Total(w.loads...).Mass // of wood and of what is bought for fittings
	cloth, cord := weight.Cloth(s.cloth, d.Skin.Mass()), weight.Lashing*timbers.Mass
	cover := float.Total(cloth...).Mass
	solid := w.solid.Plus(weight.SolidOf(cover, weight.SkinDensity(d.Skin))).Plus(weight.SolidOf(cord, weight.Corded))
	own := weight.Item{Loads: []float.Load{{Mass: dry + cover + cord}}, Solid: solid}
	all := append(w.loads, float.Load{Mass: cord, At: timbers.At}, float.Load{Mass: bought, At: geometry.Point3{Z: high}},
		float.Load{Mass: flotation.Roughly(d, own), At: geometry.Point3{Z: 0.6 * high}})
	return float.Total(append(all, cloth...)...), w.err
}

// densities remembers woods by name: to look one up takes longer than to weigh a part.
type densities map[string]*wood

// wood is one with the room that a kilogram takes up.
type wood struct {
	timber.Species
	kilogram weight.Solid
}

type weigher struct {
	woods densities
	loads []float.Load
	solid weight.Solid // of the wood
	err   error
}

// add weighs a volume, mm3, that is spread alike fore and aft, at a height, mm.
func (w *weigher) add(species string, volume, z float64) {
	w.put(species, volume, geometry.Point3{Z: z})
}

// put weighs a volume, mm3, with its middle at a place.
func (w *weigher) put(species string, volume float64, at geometry.Point3) {
	of := w.woods[species]
	if of == nil {
		found, err := timber.Lookup(species)
		if err != nil {
			w.err = cmp.Or(w.err, err)
			return
		}
		of = &wood{found, weight.SolidWood(1, found)}
		w.woods[species] = of
	}
	l := float.Load{Mass: volume * of.Density * 1e-9, At: at}
	w.loads, w.solid = append(w.loads, l), w.solid.Plus(of.kilogram.Times(l.Mass))
}

func (s *sketch) weighRibs(w *weigher) {
	d := s.d
	tenons := 2 * float64(d.Ribs.MortiseDepth-d.Ribs.TenonGap)
	length, moment := 0.0, 0.0
	for _, r := range s.ribs {
		l := 2*r.Half.Length() + tenons
		length += l
		moment += l * (r.KeelZ + 0.36*r.Depth) // the middle of a half section's length lies that high, near enough
	}
	w.add(d.Ribs.Species, length*float64(d.Ribs.Width*d.Ribs.Thickness), moment/length)
}

func (s *sketch) weighStringers(w *weigher) {
	d := s.d
	section := float64(d.Stringers.Width * d.Stringers.Depth)
	for _, share := range d.Stringers.At {
		mid := s.ribs[len(s.ribs)/2]
		p, _ := mid.Half.At(share * mid.Half.Length())
		// From stem to stem a stringer is longer than the keel and shorter than the gunwale.
		length := (s.hull.Bow.Toe.X+s.hull.Stern.Toe.X)*(1-share) + (s.hull.Bow.GunwaleX+s.hull.Stern.GunwaleX)*share
		w.add(d.Stringers.Species, 2*1.015*length*section, mid.KeelZ+p.Y+20)
	}
}

// weighFittings adds seats and what is inside, which are worked out as those of a
// finished frame.
func (s *sketch) weighFittings(w *weigher) error {
	in := s.fitted()
	seats, err := seat.All(in)
	if err != nil {
		return err
	}
	boat := inside.Boat{Design: s.d, Hull: s.hull, Gunwale: in.Gunwale, Seats: seats, Ribs: make([]inside.Rib, len(s.ribs))}
	for i, r := range s.ribs {
		boat.Ribs[i].Section = r
	}
	kits := make([]kit.Kit, 0, 1+len(seats))
	kits = append(kits, boat.Fit().Kit(s.hull, s.d))
	for _, one := range seats {
		kits = append(kits, fittings.Seat(one))
	}
	for _, k := range kits {
		for _, p := range k.Pieces {
			w.put(p.Wood, float64(p.Count)*p.Volume(), p.At)
		}
		for _, t := range k.Things {
			w.loads, w.solid = append(w.loads, float.Load{Mass: t.Mass, At: t.At}), w.solid.Plus(t.Solid())
		}
	}
	return nil
}
