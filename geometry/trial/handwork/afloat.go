package handwork

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/curve"
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

// answers returns the change of trim and GM; of e, wide is still half.
func (w *water) answers(e effect) (trim, gm float64) {
	add := func(by [2]float64, times float64) { trim, gm = trim+times*by[0], gm+times*by[1] }
	for i := range w.wide {
		add(w.wide[i], e.wide[i])
		add(w.keel[i], e.keel[i])
	}
	add(w.ends[0], e.stern)
	add(w.ends[1], e.bow)
	return trim, gm
}

// newWater floats the boat and finds its answers; nil when it does not rest upright or
// nothing is carried.
//
// How: cloth is known at the ribs and at stations in the ends, so a rib that is off
// changes its own section and, in the ends, the lines that run on from it. Of the
// weights, people and gear ride on the floor; the boat's own parts hang between keel
// and gunwales and go with each by their share.
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
	s := sounding{m: m, boat: carried, answer: carried.Hull.Answer(p, l), mass: l.Mass, long: carried.Hull.Upright(p, l, fresh).LWL}
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
}

func (s *sounding) all() (*water, error) {
	f := s.m.b.Frame
	s.first = slices.Index(s.boat.Cloth.Stations(), f.Ribs[0].Station)
	if err := s.readEnds(); err != nil {
		return nil, err
	}
	s.rides = s.hang()
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
		var err error
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
	return s.per(c, units, by.Keel*s.rides.keel[i+1]), nil
}

// change is what more lies under water, and what more the cloth weighs.
type change struct {
	under float.Immersed
	cloth float.Load
}

// per returns trim and GM for one unit from a change of so many units, with all the
// weight so much higher for each, mm.
func (s *sounding) per(c change, units, up float64) [2]float64 {
	trim, gm := s.answer.To(c.under, geometry.Point3{Z: units * up}, c.cloth)
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
	corners := now.Corners(f.Design, rail)
	over := s.boat.Cloth.Over(corners)
	if c.under, err = s.answer.Section(s.first+i, slices.Compact(over)); err != nil {
		return c, err
	}
	c.cloth = s.cloth(i, skin.Rib{Station: r.Station, Corners: corners})
	off := lineOff{keel: units * by.Keel, stringers: offsOf(f.Design, was, now), rail: geometry.Point{X: units * by.HalfBreadth}}
	if i == 0 || i == len(f.Ribs)-1 {
		off.corners = make([]geometry.Point, len(over))
		for k, p := range s.boat.Cloth.Over(wood) {
			off.corners[k] = over[k].Sub(p).Sub(off.line(k))
		}
	}
	c.under, err = s.past(c.under, i+1, off)
	return c, err
}

// cloth is what more the cloth weighs at a rib whose corners have moved.
func (s *sounding) cloth(i int, now skin.Rib) float.Load {
	ribs, d := s.boat.Cloth.Ribs(), s.m.b.Frame.Design
	before, _ := ribs[i].Girth()
	after, middle := now.Girth()
	aft, fore := max(i-1, 0), min(i+1, len(ribs)-1)
	long := (ribs[fore].Station - ribs[aft].Station) / 2
	return float.Load{Mass: 2 * (after - before) * long * d.Skin.Mass * 1e-9 * (1 + weight.Lap), At: geometry.Point3{X: now.Station, Z: middle.Y}}
}

// offsOf returns how far each stringer's middle is moved at a rib.
func offsOf(d *design.Design, was, now hull.Section) []geometry.Point {
	out := make([]geometry.Point, len(d.Stringers.At))
	depth := float64(d.Ribs.Thickness+d.Stringers.Depth) / 2
	for k, share := range d.Stringers.At {
		out[k] = now.Face(share*now.Half.Length(), depth).Sub(was.Face(share*was.Half.Length(), depth))
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
	return s.per(change{under: more}, nudge, s.rides.keel[pin]+s.rides.rail[pin]), nil
}

// end is a station past the last rib: the lines of the cloth there, and how much of
// each pin's change they take.
type end struct {
	number    int
	x         float64
	bow       bool
	past      bool // the stem's edge, not the keel
	lines     skin.Lines
	first     int       // of the pins that count here: stern 0, ribs from aft, bow
	keel      []float64 // by pin from there
	rail      []float64
	stringers [][]float64
}

// lineOff is how far lines are off at one pin, mm.
type lineOff struct {
	keel, edge float64 // edge: of the stem on which they end
	stringers  []geometry.Point
	rail       geometry.Point
	corners    []geometry.Point // of the cloth at the last rib, off these lines; nil for none
}

// line is how far the line of a corner of the cloth is off.
func (o lineOff) line(corner int) geometry.Point {
	switch i := corner/2 - 1; {
	case i < 0:
		return geometry.Point{Y: o.keel}
	case i < len(o.stringers):
		return o.stringers[i]
	}
	return o.rail
}

// past adds what more lies under water past the last ribs when one pin is off.
func (s *sounding) past(more float.Immersed, pin int, off lineOff) (float.Immersed, error) {
	for _, e := range s.ends {
		last := !e.bow && pin == 1 || e.bow && pin == len(s.m.ribs)
		pin := pin - e.first
		if pin < 0 || pin >= len(e.keel) {
			continue
		}
		l := skin.Lines{Keel: e.lines.Keel + e.keel[pin]*off.keel, Stringers: slices.Clone(e.lines.Stringers), Gunwale: e.lines.Gunwale, Off: e.lines.Off}
		if last && off.corners != nil {
			l.Off = slices.Clone(l.Off)
			for k, p := range off.corners {
				l.Off[k] = l.Off[k].Add(p)
			}
		}
		if e.past {
			l.Keel = e.lines.Keel + e.keel[pin]*off.edge
		}
		for i := range l.Stringers {
			l.Stringers[i] = l.Stringers[i].Add(off.stringers[i].Scale(e.stringers[i][pin]))
		}
		for i := range l.Gunwale {
			l.Gunwale[i] = l.Gunwale[i].Add(off.rail.Scale(e.rail[pin]))
		}
		d, err := s.answer.Section(e.number, slices.Compact(s.boat.Cloth.Past(e.x, l)))
		if err != nil {
			return more, err
		}
		more = more.Plus(d, 1)
	}
	return more, nil
}

// reach is how many pins from an end a rib that is off still moves a line past the last
// one: a spline loses three quarters of it from pin to pin.
const reach = 7

// readEnds reads the lines at all stations past the last ribs.
func (s *sounding) readEnds() error {
	f, n := s.m.b.Frame, len(s.m.ribs)
	lines := [][2]float64{{-f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X}}
	add := func(aft, fore float64) { lines = append(lines, [2]float64{aft, fore}) }
	add(f.Gunwale.Line.Ends())
	for _, t := range f.Stringers {
		add(t.Line.Ends())
	}
	for _, bow := range [2]bool{false, true} {
		toe, first, tail := f.Hull.Stern.Toe.X, 0, 0
		if bow {
			toe, first, tail = f.Hull.Bow.Toe.X, max(0, n+2-reach), n+1
		}
		var units [][]*curve.Batten
		for _, l := range lines {
			u, err := s.units(l[0], l[1], first)
			if err != nil {
				return err
			}
			units = append(units, u)
		}
		for k, x := range s.boat.Cloth.Stations() {
			if bow && k < s.first+n || !bow && k >= s.first {
				continue
			}
			e := end{number: k, x: x, bow: bow, first: first, past: math.Abs(x) > toe, lines: s.boat.Cloth.Lines(x), keel: shares(units[0], x), rail: shares(units[1], x)}
			if e.past {
				clear(e.keel)
				e.keel[tail-first] = 1
			}
			for _, u := range units[2:] {
				e.stringers = append(e.stringers, shares(u, x))
			}
			s.ends = append(s.ends, e)
		}
	}
	return nil
}

// units are the splines of a line from aft to fore, near one end, for each of its pins
// there off by one: the first of them has that number.
func (s *sounding) units(aft, fore float64, first int) ([]*curve.Batten, error) {
	x := []float64{aft}
	for _, r := range s.m.ribs {
		x = append(x, r.at)
	}
	x = append(x, fore)
	x = x[first:min(first+reach, len(x))]
	out := make([]*curve.Batten, len(x))
	for j := range x {
		y := make([]float64, len(x))
		y[j] = 1
		var err error
		if out[j], err = curve.NewBatten(x, y); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func shares(units []*curve.Batten, x float64) []float64 {
	out := make([]float64, len(units))
	for j, u := range units {
		out[j], _ = u.Rise(x)
	}
	return out
}

// rides is by how much the weight of all rises for each mm at a pin: stern, ribs from
// aft, bow.
type rides struct{ keel, rail []float64 }

// hang works out what rides on what.
func (s *sounding) hang() rides {
	f, n := s.m.b.Frame, len(s.m.ribs)+2
	out := rides{make([]float64, n), make([]float64, n)}
	for _, item := range s.boat.Aboard() {
		for _, l := range item.Loads {
			for j, v := range shares(s.m.keel.units, l.At.X) {
				out.keel[j] += v * l.Mass / s.mass
			}
		}
	}
	x := []float64{-f.Hull.Stern.Toe.X}
	for _, r := range s.m.ribs {
		x = append(x, r.at)
	}
	x = append(x, f.Hull.Bow.Toe.X)
	for _, item := range s.boat.Parts {
		for _, l := range item.Loads {
			g, k := f.Gunwale.Line.Point(l.At.X).Z, s.boat.Frame.Hull
			z, _ := k.KeelZ(l.At.X)
			low := math.Max(0, math.Min(1, (g-l.At.Z)/(g-z)))
			i, t := between(x, l.At.X)
			for q, share := range [2]float64{1 - t, t} {
				out.keel[i+q] += share * low * l.Mass / s.mass
				out.rail[i+q] += share * (1 - low) * l.Mass / s.mass
			}
		}
	}
	return out
}

// between returns the step of x that holds v, and the share of the way through it; past
// the ends the nearer end.
func between(x []float64, v float64) (i int, share float64) {
	for i < len(x)-2 && v > x[i+1] {
		i++
	}
	return i, math.Max(0, math.Min(1, (v-x[i])/(x[i+1]-x[i])))
}
