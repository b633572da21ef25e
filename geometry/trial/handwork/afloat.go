package handwork

import (
	"errors"
	"fmt"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// fresh is the density of the water, kg/m3. Trim and GM hardly know salt from fresh.
const fresh = 1000.0

// water is how trim and GM answer the shape, by a millimeter at every rib.
type water struct {
	wide, keel [][2]float64  // half-breadth more and keel higher, its head where it was: trim over the waterline and GM, mm
	ends       [2][2]float64 // the stern and the bow stem higher, all ribs where they were
}

// answers returns the change of trim and GM, with the keel so high at every rib; of e, wide
// is still half.
func (w *water) answers(e effect, keel []float64) (trim, gm float64) {
	add := func(by [2]float64, times float64) { trim, gm = trim+times*by[0], gm+times*by[1] }
	for i := range w.wide {
		add(w.wide[i], e.wide[i])
		add(w.keel[i], keel[i])
	}
	add(w.ends[0], e.stern)
	add(w.ends[1], e.bow)
	return trim, gm
}

// newWater floats the boat and finds its answers; nil when it does not rest upright or
// nothing is carried.
//
// How: cloth is known at the ribs and at stations in the ends, so a rib that is off
// changes its own section and, in the ends, the lines that run on from it. The weights
// ride on it too (see rides.go).
func newWater(m *model, carried *aboard.Boat) (*water, error) {
	if carried == nil {
		return nil, nil
	}
	l := carried.Load()
	p, _, err := carried.Hull.Settle(l, fresh)
	var fault *float.Fault
	if errors.As(err, &fault) {
		return nil, nil
	}
	if err != nil || p.Heel != 0 {
		return nil, err
	}
	s := sounding{m: m, boat: carried, answer: carried.Hull.Answer(p, l), mass: l.Mass, long: carried.Hull.LWL(p)}
	return s.all()
}

// sounding finds the answers one by one.
type sounding struct {
	m      *model
	boat   *aboard.Boat
	answer *float.Answer
	mass   float64 // of all that floats, kg
	long   float64 // waterline, mm

	first int // number of the after rib's section
	ends  []end
	rides rides
	room  []geometry.Point // for one outline

	stringers, off []geometry.Point // room for the lines of one
}

func (s *sounding) all() (*water, error) {
	f := s.m.b.Frame
	s.first = slices.Index(s.boat.Cloth.Stations(), f.Ribs[0].Station)
	if err := s.readEnds(); err != nil {
		return nil, err
	}
	var err error
	if s.rides, err = s.hang(); err != nil {
		return nil, err
	}
	w := &water{}
	for i, r := range f.Ribs {
		wide, err := s.rib(i, r, frame.Off{HalfBreadth: 1})
		if err != nil {
			return nil, err
		}
		keel, err := s.rib(i, r, frame.Off{Depth: -1, Keel: 1})
		if err != nil {
			return nil, err
		}
		w.wide, w.keel = append(w.wide, wide), append(w.keel, keel)
	}
	for k := range w.ends {
		if w.ends[k], err = s.stem(k); err != nil {
			return nil, err
		}
	}
	return w, nil
}

// nudge is how far a rib or a stem is moved, mm: sections are polygons, so the answer
// is the slope to 1 part in 10,000.
const nudge = 0.01

// rib returns what a rib that is off by one unit does.
func (s *sounding) rib(i int, r frame.Rib, by frame.Off) ([2]float64, error) {
	units := nudge
	c, err := s.moved(i, r, by, units)
	if err != nil { // at the limit of its shape a rib goes the other way alone
		units = -nudge
		if c, err = s.moved(i, r, by, units); err != nil {
			return [2]float64{}, fmt.Errorf("rib %s: %w", r.Name, err)
		}
	}
	c.lifted += units * by.Keel * s.rides.floor[i+1]
	return s.per(c, units), nil
}

// change is what more lies under water, what more the cloth weighs, and what the weight
// that was there has been lifted, kg mm.
type change struct {
	under  float.Immersed
	cloth  float.Load
	lifted float64
}

// per returns trim and GM for one unit from a change of so many units.
func (s *sounding) per(c change, units float64) [2]float64 {
	trim, gm := s.answer.To(c.under, geometry.Point3{Z: c.lifted / s.mass}, c.cloth)
	return [2]float64{trim / units * s.long, gm / units}
}

// moved returns what changes when a rib is off so many units.
func (s *sounding) moved(i int, r frame.Rib, by frame.Off, units float64) (c change, err error) {
	f := s.m.b.Frame
	was := r.Section
	now, err := hull.Solve(was.HalfBreadth+units*by.HalfBreadth, was.Depth+units*by.Depth, was.Shape)
	if err != nil {
		return c, err
	}
	now.Station, now.KeelZ = was.Station, was.KeelZ+units*by.Keel
	wood := s.boat.Cloth.Ribs()[i].Corners
	rail := [2]geometry.Point(wood[len(wood)-2:])
	for k := range rail {
		rail[k].X += units * by.HalfBreadth
	}
	corners := now.Corners(f.Design, r.StringersOn(now), rail)
	over := s.boat.Cloth.Over(corners)
	if c.under, err = s.answer.Section(s.first+i, slices.Compact(over)); err != nil {
		return c, err
	}
	off := lineOff{keel: units * by.Keel, stringers: offsOf(f.Design, r, now), rail: geometry.Point{X: units * by.HalfBreadth}}
	c.cloth, c.lifted = s.rides.at(i, now, skin.Rib{Station: r.Station, Corners: corners}, off.stringers)
	if i == 0 || i == len(f.Ribs)-1 {
		off.corners = make([]geometry.Point, len(over))
		for k, p := range s.boat.Cloth.Over(wood) {
			off.corners[k] = over[k].Sub(p).Sub(off.line(k))
		}
	}
	c.under, err = s.past(c.under, i+1, off)
	return c, err
}

// offsOf returns how far each stringer's middle is moved at a rib.
func offsOf(d *design.Design, r frame.Rib, now hull.Section) []geometry.Point {
	out := make([]geometry.Point, len(r.Stringers))
	depth := float64(d.Ribs.Thickness+d.Stringers.Depth) / 2
	for k, along := range r.StringersOn(now) {
		out[k] = now.Face(along, depth).Sub(r.Face(r.Stringers[k], depth))
	}
	return out
}

// stem returns what a stem a millimeter higher does with all ribs held: the stern's for
// 0, the bow's for 1.
func (s *sounding) stem(k int) ([2]float64, error) {
	n := len(s.m.ribs)
	pin := k * (n + 1)
	up := lineOff{keel: nudge, stringers: make([]geometry.Point, len(s.m.b.Frame.Stringers)), rail: geometry.Point{Y: nudge}, edge: nudge}
	for i := range up.stringers {
		up.stringers[i].Y = nudge
	}
	more, err := s.past(float.Immersed{}, pin, up)
	if err != nil {
		return [2]float64{}, err
	}
	return s.per(change{under: more, lifted: nudge * (s.rides.floor[pin] + s.rides.ends[k])}, nudge), nil
}
