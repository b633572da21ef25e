package sizing

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water"
	"ribwright/geometry/water/effort"
	"ribwright/geometry/water/float"
)

// Found is what drawing and floating a boat tells of it. mm, kg, radians, mm2;
// effort in kg mm/s2.
type Found map[string]float64

// put gives a run what was found; a name that a family does not know is left out.
func (f Found) put(r *formula.Run) error {
	for name, v := range f {
		if !r.Knows(name) {
			continue
		}
		if err := r.Set(name, formula.Num(v)); err != nil {
			return err
		}
	}
	return nil
}

// seats are the stations of those who paddle.
type seats []float64

// floatSketch draws a design quickly and floats it.
func (b *Brief) floatSketch(d *design.Design, at seats, woods densities, withEffort bool) (Found, error) {
	s, err := newSketch(d)
	if err != nil {
		return nil, err
	}
	boat, err := s.weigh(woods)
	if err != nil {
		return nil, err
	}
	f := Found{}
	if err := b.afloat(f, s.float, boat, aboard(d, s.hull), withEffort); err != nil {
		return nil, err
	}
	f.lengths(s.hull)
	f["extreme_beam"] = f.width(s.rail, 0)
	f["tightest_rib"], f["rib_stick"] = math.Inf(1), 0
	t := float64(d.Ribs.Thickness)
	for _, r := range s.ribs {
		blank := 2*r.Half.Length() + 2*float64(d.Ribs.MortiseDepth-d.Ribs.TenonGap+d.Ribs.Trim)
		f["rib_stick"] = math.Max(f["rib_stick"], blank)
		for _, bend := range r.Half {
			if bend.Radius > 0 {
				f["tightest_rib"] = math.Min(f["tightest_rib"], (bend.Radius-t/2)/t)
			}
		}
	}
	f["girth"] = 2 * s.middle().Half.Length()
	f["stem_length"], f["stem_width"] = s.stemSize()
	for i, x := range at {
		f[[]string{"seat_width", "partner_seat_width"}[i]] = f.width(s.rail, x)
	}
	return f, nil
}

// middle is the rib nearest to midship.
func (s *sketch) middle() hull.Section {
	best := s.ribs[0]
	for _, r := range s.ribs {
		if math.Abs(r.Station) < math.Abs(best.Station) {
			best = r
		}
	}
	return best
}

// stemSize is the box round a stem piece, near enough: from its foot to its head.
func (s *sketch) stemSize() (long, short float64) {
	e, st := s.hull.Bow, s.d.Bow
	tall := e.TopZ - e.Toe.Y
	wide := s.bow.at(e.TopZ) - e.Toe.X + float64(st.Landing)
	return math.Max(tall, wide), math.Min(tall, wide)
}

// width is the greatest width outside the rail at a station.
func (f Found) width(rail func(x float64) []geometry.Point, x float64) float64 {
	w := 0.0
	for _, p := range rail(x) {
		w = math.Max(w, 2*p.X)
	}
	return w
}

// lengths measures sticks.
func (f Found) lengths(h *hull.Hull) {
	aft, fore := h.Gunwale.Ends()
	f["gunwale_stick"] = h.Gunwale.Length(fore) - h.Gunwale.Length(aft)
}

// usualGear is the height of gear over the floor where a design does not say, mm,
// as the list of weights of a finished frame has it.
const usualGear = 150

// aboard lists people and gear where the design has them.
func aboard(d *design.Design, h *hull.Hull) []float.Load {
	floor := func(x float64) float64 {
		z, _ := h.KeelZ(x)
		return z + float64(d.Skin.Thickness+d.Keel.Depth+d.Ribs.Thickness)
	}
	var out []float.Load
	for _, p := range d.Crew {
		x := float64(p.At)
		out = append(out, float.Load{Mass: p.Mass, At: geometry.Point3{X: x, Z: floor(x) + weight.Height(p)}})
	}
	for _, g := range d.Gear {
		x, high := float64(g.At), float64(g.Height)
		if high == 0 {
			high = usualGear
		}
		out = append(out, float.Load{Mass: g.Mass, At: geometry.Point3{X: x, Z: floor(x) + high}})
	}
	return out
}

// afloat balances the boat with its load and notes the figures.
func (b *Brief) afloat(f Found, h *float.Hull, boat float.Load, loads []float.Load, withEffort bool) error {
	all := float.Total(append(loads, boat)...)
	p, _, err := h.Balance(all, b.Density, 0, nil)
	if err != nil {
		return err
	}
	u := h.Upright(p, all, b.Density)
	f["draft"], f["freeboard"], f["gm"], f["km"] = u.Draft, u.Freeboard.Least, u.GM, u.GM+all.At.Z
	f["trim"], f["all_up"], f["boat_weight"], f["boat_center"] = u.Trim, all.Mass, boat.Mass, boat.At.Z
	f["waterline_length"], f["waterline_beam"], f["wetted"] = u.LWL, u.BWL, u.Wetted
	f["effort"] = 0
	if withEffort {
		f["effort"], err = b.effort(h, u)
	}
	return err
}

// effort is the resistance at the brief's speed, kg mm/s2.
func (b *Brief) effort(h *float.Hull, u float.Hydrostatics) (float64, error) {
	const stations, lines = 41, 11
	z := u.Plane.Water(0)
	grid := effort.Sample(u.LWL, u.Draft, stations, lines, func(x, deep float64) float64 {
		return h.HalfBreadth(u.Aft+x, z-deep)
	})
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		return 0, err
	}
	w.Density = b.Density
	at := effort.Hull{Length: u.LWL / 1000, Wetted: u.Wetted / 1e6, Grid: grid}.At(w, b.Speed/1000)
	return at.Total * 1000, nil
}

// floatFrame draws a boat in full and floats it as its cloth makes it.
func (b *Brief) floatFrame(fr *frame.Frame, at seats, withEffort bool) (Found, error) {
	d := fr.Design
	h, err := skin.Hull(fr)
	if err != nil {
		return nil, err
	}
	items, err := weight.Boat(fr)
	if err != nil {
		return nil, err
	}
	loads := []float.Load{weight.Sum(weight.Crew(fr, d.Crew)), weight.Sum(weight.Gear(fr, d.Gear))}
	f := Found{}
	if err := b.afloat(f, h, weight.Sum(items), loads, withEffort); err != nil {
		return nil, err
	}
	f.lengths(fr.Hull)
	rail := func(x float64) []geometry.Point {
		var out []geometry.Point
		for _, up := range []float64{0, fr.Gunwale.Height} {
			p := fr.Gunwale.EdgeAt(x, fr.Gunwale.Width/2, up)
			out = append(out, geometry.Point{X: p.Y + float64(d.Skin.Thickness), Y: p.Z})
		}
		return out
	}
	f["extreme_beam"] = f.width(rail, 0)
	for i, x := range at {
		f[[]string{"seat_width", "partner_seat_width"}[i]] = f.width(rail, x)
	}
	f["tightest_rib"], f["rib_stick"], f["girth"] = math.Inf(1), 0, 0
	near := math.Inf(1)
	for _, r := range fr.Ribs {
		f["rib_stick"] = math.Max(f["rib_stick"], r.Blank)
		f["tightest_rib"] = math.Min(f["tightest_rib"], r.Tightest)
		if math.Abs(r.Station) < near {
			near, f["girth"] = math.Abs(r.Station), 2*r.Section.Half.Length()
		}
	}
	box := fr.Bow.Outline.Bounds()
	f["stem_length"], f["stem_width"] = math.Max(box.W(), box.H()), math.Min(box.W(), box.H())
	return f, nil
}
