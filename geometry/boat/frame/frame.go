// Package frame turns a hull into the sticks a builder makes: gunwales with
// their mortises, ribs, stems, keel, stringers, thwarts and breasthooks, each
// with the lengths and marks of its straight or flat stock.
package frame

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/seat"
	"ribwright/geometry/boat/stringer"
	"ribwright/geometry/design"
	"ribwright/geometry/sidebyside"
)

// Frame is every part of one boat. Nothing in it changes after Build.
type Frame struct {
	Design             *design.Design
	Hull               *hull.Hull
	Gunwale            Gunwale
	Ribs               []Rib   // from aft forward
	RibGroups          []Group // ribs that share one marking strip, from midship outward
	Bow, Stern         Stem
	Keel               Batten
	Stringers          []Stringer // on one side, from the keel up
	Thwarts            []Thwart
	Seats              []seat.Seat
	BowHook, SternHook Breasthook
	Gauges             []Gauge // one for each group of ribs, of the shape in the boat
	Skin               Skin

	courses *stringer.Courses
	rails   func() map[float64][2]geometry.Point // the gunwale's outer face at every rib, by its station
}

// Build works out every part of a checked design.
//
// Errors: the first rib whose section cannot be made, a mortise, scarf or
// thwart in another's way, a stem without room for its own joints. Each names
// the part, the place, the cause and a cure.
func Build(d *design.Design) (*Frame, error) {
	h, err := hull.New(d)
	if err != nil {
		return nil, err
	}
	f := &Frame{Design: d, Hull: h}
	if err := sidebyside.InTurn(f.makeRibs, f.makeGunwale, f.makeStems); err != nil {
		return nil, err
	}
	f.railed()
	// What closes the ends, what runs along the ribs and what lies across the boat know
	// nothing of one another.
	var hooks, along, across error
	sidebyside.All(
		func() { along = f.makeBattens() },
		func() { hooks = f.makeHooks() },
		func() { across = sidebyside.InTurn(f.makeCrossPieces, f.makeSeats) },
	)
	if err := cmp.Or(hooks, f.checkLandings(), along, across); err != nil {
		return nil, err
	}
	f.Skin = newSkin(f)
	return f, nil
}

func (f *Frame) makeRibs() (err error) {
	if f.Ribs, f.courses, err = newRibs(f.Design, f.Hull); err != nil {
		return err
	}
	f.RibGroups = groupRibs(f.Ribs, float64(f.Design.Ribs.Tolerance))
	for _, g := range f.RibGroups {
		gauge, err := NewGauge(g, g.Rib.Section.Half)
		if err != nil {
			return err
		}
		f.Gauges = append(f.Gauges, gauge)
	}
	return nil
}

func (f *Frame) makeGunwale() (err error) {
	if f.Gunwale, err = newGunwale(f.Design, f.Hull, f.Ribs); err == nil {
		err = f.placeScarfs()
	}
	if err != nil {
		return fmt.Errorf("gunwale: %w", err)
	}
	return nil
}

func (f *Frame) makeStems() (err error) {
	d, h := f.Design, f.Hull
	if f.Bow, err = newStem("bow", d, d.Bow, h.Bow, h.Sheer.BowSet.EndSlope()); err != nil {
		return err
	}
	f.Stern, err = newStem("stern", d, d.After(), h.Stern, h.Sheer.SternSet.EndSlope())
	return err
}

func (f *Frame) makeHooks() (err error) {
	d, h := f.Design, f.Hull
	if f.BowHook, err = newBreasthook("bow", d, h, f.Gunwale, 1); err != nil {
		return err
	}
	f.SternHook, err = newBreasthook("stern", d, h, f.Gunwale, -1)
	return err
}

func (f *Frame) makeBattens() (err error) {
	if f.Keel, err = newKeel(f.Design, f.Hull, f.Ribs); err != nil {
		return err
	}
	if err := stringersApart(f.Design, f.Ribs); err != nil {
		return err
	}
	f.Bow.Landings, f.Stern.Landings = f.courses.Bow, f.courses.Stern
	f.Stringers, err = newStringers(f.Design, f.courses, f.Ribs)
	return err
}

func (f *Frame) makeCrossPieces() (err error) {
	if f.Thwarts, err = newThwarts(f.Design, f.Gunwale); err != nil {
		return err
	}
	for i := range f.Thwarts {
		t := &f.Thwarts[i]
		t.Under = t.Thickness * math.Max(0, f.skinLean(t.At))
	}
	return nil
}

func (f *Frame) makeSeats() (err error) {
	b := seat.Boat{Design: f.Design, Hull: f.Hull, Gunwale: &f.Gunwale, Stock: seat.Span{From: f.Gunwale.Aft, To: f.Gunwale.Fore}}
	for _, m := range f.Gunwale.Mortises {
		lo, hi := m.Ends()
		b.Mortises = append(b.Mortises, seat.Span{From: lo, To: hi})
	}
	b.Crosses = seat.Under(f.Design.Thwarts, f.Gunwale.OnStock)
	f.Seats, err = seat.All(b)
	return err
}

// checkLandings keeps the feet of the stems clear of the end ribs, which pass
// between keel and stem.
func (f *Frame) checkLandings() error {
	half := float64(f.Design.Ribs.Width) / 2
	for _, e := range []struct {
		stem Stem
		rib  Rib
		u    float64
	}{
		{f.Bow, f.Ribs[len(f.Ribs)-1], f.Ribs[len(f.Ribs)-1].Station},
		{f.Stern, f.Ribs[0], -f.Ribs[0].Station},
	} {
		if room := e.stem.FootX - e.u - half; room < 0 {
			return fmt.Errorf("%s: its foot reaches %.0f mm from midship, under rib %s at %.0f mm; shorten %s.landing by %.0f mm or move the last rib in",
				e.stem.End, e.stem.FootX, e.rib.Name, e.u, e.stem.End, -room+0.5)
		}
	}
	return nil
}

// Skin is the cloth as a builder orders it, measured over the wood. Its shape is in
// the package skin.
type Skin struct {
	Girth  float64 // midship, gunwale top to gunwale top around the outside, mm
	Length float64 // along the keel and both stems, head to head, mm
}

func newSkin(f *Frame) Skin {
	bow, stern := f.Hull.Bow, f.Hull.Stern
	keel := f.Keel.Fore - f.Keel.Aft + keelMiddle(f.Design)*(bow.Heading+stern.Heading) // a bend's outer side is longer
	s := Skin{Length: keel + bow.Outer.Length() + stern.Outer.Length()}
	pts := f.Corners(f.Nearest(0))
	for i := 1; i < len(pts); i++ {
		s.Girth += 2 * pts[i].Sub(pts[i-1]).Norm()
	}
	return s
}

// Stations returns where the ribs stand, from aft forward, mm.
func (f *Frame) Stations() []float64 {
	out := make([]float64, len(f.Ribs))
	for i, r := range f.Ribs {
		out[i] = r.Station
	}
	return out
}

// Nearest returns the rib nearest to the station x, mm.
func (f *Frame) Nearest(x float64) Rib {
	return slices.MinFunc(f.Ribs, func(a, b Rib) int { return cmp.Compare(math.Abs(a.Station-x), math.Abs(b.Station-x)) })
}

// skinLean returns how far the skin falls inward under the gunwale for each mm of
// depth, at the rib nearest to the station x.
func (f *Frame) skinLean(x float64) float64 {
	pts := f.Corners(f.Nearest(x))
	low, under := pts[len(pts)-2], pts[len(pts)-3]
	return (low.X - under.X) / (low.Y - under.Y)
}

// Corners returns the outer corners of the wood at a rib, on which the cloth lies:
// those of keel, stringers and gunwale, from the middle of the keel out to the
// gunwale's upper edge. X is the half-breadth, Y the height above the baseline, mm.
func (f *Frame) Corners(r Rib) []geometry.Point {
	rail, ok := f.rails()[r.Station]
	if !ok { // no rib of this frame
		rail = f.Gunwale.Outer(r.Station)
	}
	return r.Section.Corners(f.Design, r.Stringers, rail)
}

// railed readies the outer face of the gunwale at the ribs, which all that is laid over them
// asks for.
func (f *Frame) railed() {
	g, stations := f.Gunwale, f.Stations()
	f.rails = sync.OnceValue(func() map[float64][2]geometry.Point {
		out := make(map[float64][2]geometry.Point, len(stations))
		for _, x := range stations {
			out[x] = g.Outer(x)
		}
		return out
	})
}
