package sizing

import (
	"math"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// Found is what drawing and floating a boat tells of it. mm, kg, radians, mm2;
// effort in kg mm/s2.
type Found map[string]float64

// foundNames is room for all of them.
const foundNames = 40

// put gives a run what was found; a name that a family does not know is left out.
func (f Found) put(r *formula.Run) error {
	for name, v := range f {
		if r.Knows(name) {
			if err := r.Set(name, formula.Num(v)); err != nil {
				return err
			}
		}
	}
	return nil
}

// seats are the stations of those who paddle.
type seats []float64

// asked is what of a boat afloat is worked out only where something rests on it, for it
// takes long: 0 where it is not. The effort wants the wetted skin.
type asked struct{ wetted, effort bool }

// floatSketch draws a design quickly and floats it, looked for near a plane unless that is
// nil; how it stands is asked for apart.
func (b *Brief) floatSketch(d *design.Design, at seats, near *float.Plane, woods densities, more asked) (Found, lying, error) {
	s, err := newSketch(d)
	if err != nil {
		return nil, lying{}, err
	}
	boat, err := s.weigh(woods)
	if err != nil {
		return nil, lying{}, err
	}
	f := make(Found, foundNames)
	people := weight.Sum(weight.Crew(s.hull, d, d.Crew))
	l := lying{hull: s.cloth.Hull, load: float.Total(people, weight.Sum(weight.Gear(s.hull, d.Gear)), boat), people: people.Mass, live: aboard.Live(d.Crew)}
	if err := b.afloat(f, &l, boat, near, more); err != nil {
		return nil, l, err
	}
	t := float64(d.Ribs.Thickness)
	ribs := make([]bent, len(s.ribs))
	for i, r := range s.ribs {
		girth := 2 * r.Half.Length()
		ribs[i] = bent{r.Station, girth, girth + 2*float64(d.Ribs.MortiseDepth-d.Ribs.TenonGap+d.Ribs.Trim), math.Inf(1)}
		for _, bend := range r.Half {
			if bend.Radius > 0 {
				ribs[i].tightest = math.Min(ribs[i].tightest, (bend.Radius-t/2)/t)
			}
		}
	}
	// The box round a stem piece, near enough: from its foot to its head.
	e := s.hull.Bow
	f.measure(s.rail.long(), s.cloth, at, ribs, e.TopZ-e.Toe.Y, e.Tip()-e.Toe.X+float64(d.Bow.Landing))
	return f, l, nil
}

// bent is a rib: its place, its length between the gunwales, that of its blank, mm,
// and its least inner radius over its thickness.
type bent struct{ station, girth, blank, tightest float64 }

// measure notes widths over the cloth, the lengths of sticks and the sides of a stem piece.
func (f Found) measure(gunwale float64, c *skin.Cloth, at seats, ribs []bent, tall, wide float64) {
	f["extreme_beam"] = c.Width(0)
	for i, x := range at {
		f[[]string{"seat_width", "partner_seat_width"}[i]] = c.Width(x)
	}
	f["gunwale_stick"] = gunwale
	f["tightest_rib"], f["rib_stick"] = math.Inf(1), 0
	near := math.Inf(1)
	for _, r := range ribs {
		f["tightest_rib"], f["rib_stick"] = math.Min(f["tightest_rib"], r.tightest), math.Max(f["rib_stick"], r.blank)
		if math.Abs(r.station) < near {
			near, f["girth"] = math.Abs(r.station), r.girth
		}
	}
	f["stem_length"], f["stem_width"] = math.Max(tall, wide), math.Min(tall, wide)
}

// afloat balances the boat with all aboard and notes the figures.
func (b *Brief) afloat(f Found, l *lying, boat float.Load, near *float.Plane, more asked) error {
	all := l.load
	p, _, err := l.hull.Balance(all, b.Density, 0, near)
	if err != nil {
		return err
	}
	u := l.hull.Resting(p, all, b.Density)
	if more.wetted || more.effort {
		u.Wetted = l.hull.Wetted(p)
	}
	l.rest = u
	f["draft"], f["freeboard"], f["gm"], f["km"] = u.Draft, u.Freeboard.Least, u.GM, u.GM+all.At.Z
	f["trim"], f["all_up"], f["boat_weight"], f["boat_center"] = u.Trim, all.Mass, boat.Mass, boat.At.Z
	f["waterline_length"], f["waterline_beam"], f["wetted"] = u.LWL, u.BWL, u.Wetted
	f["effort"] = 0
	if more.effort {
		f["effort"], err = b.effort(sketched(l.hull, u))
	}
	return err
}

// sketched is a hull at rest on a grid coarse enough for a search.
func sketched(h *float.Hull, u float.Hydrostatics) effort.Hull {
	const stations, lines = 41, 11
	z := u.Plane.Water(0)
	grid := effort.Sample(u.LWL, u.Draft, stations, lines, func(x, deep float64) float64 {
		return h.HalfBreadth(u.Aft+x, z-deep)
	})
	return effort.Hull{Length: u.LWL / 1000, Wetted: u.Wetted / 1e6, Grid: grid}
}

// effort is the resistance at the brief's speed, kg mm/s2.
func (b *Brief) effort(h effort.Hull) (float64, error) {
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		return 0, err
	}
	w.Density = b.Density
	return h.At(w, b.Speed/1000).Total * 1000, nil
}

// floatFrame floats a boat drawn in full as its cloth makes it.
func (b *Brief) floatFrame(boat aboard.Boat, at seats) (Found, float.Standing, error) {
	fr, f, stands := boat.Frame, Found{}, float.Standing{}
	d := fr.Design
	l := lying{hull: boat.Hull, load: boat.Load(), people: boat.Carried(), live: aboard.Live(d.Crew)}
	if err := b.afloat(f, &l, boat.Own(), nil, asked{wetted: true}); err != nil {
		return nil, stands, err
	}
	towed, err := afloat.Towed(boat.Hull, l.rest) // as it is told of afloat
	if err != nil {
		return nil, stands, err
	}
	if f["effort"], err = b.effort(towed); err != nil {
		return nil, stands, err
	}
	if stands, err = f.stand(l, b.Density, float.Fine); err != nil {
		return nil, stands, err
	}
	ribs := make([]bent, len(fr.Ribs))
	for i, r := range fr.Ribs {
		ribs[i] = bent{r.Station, 2 * r.Section.Half.Length(), r.Blank, r.Tightest}
	}
	box := fr.Bow.Outline.Bounds()
	aft, fore := fr.Hull.Gunwale.Ends()
	f.measure(fr.Hull.Gunwale.Length(fore)-fr.Hull.Gunwale.Length(aft), boat.Cloth, at, ribs, box.W(), box.H())
	return f, stands, nil
}
