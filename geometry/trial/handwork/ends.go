package handwork

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/curve"
	"ribwright/geometry/equations"
	"ribwright/geometry/water/float"
)

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
		s.stringers = append(s.stringers[:0], e.lines.Stringers...)
		l := skin.Lines{Keel: e.lines.Keel + e.keel[pin]*off.keel, Stringers: s.stringers, Gunwale: e.lines.Gunwale, Off: e.lines.Off}
		if last && off.corners != nil {
			s.off = append(s.off[:0], l.Off...)
			l.Off = s.off
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
		s.room = s.boat.Cloth.Past(e.x, l, s.room)
		d, err := s.answer.Section(e.number, slices.Compact(s.room))
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
		units := make([][]curve.Batten, 0, len(lines))
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
			by := shares(units, x)
			e := end{number: k, x: x, bow: bow, first: first, past: math.Abs(x) > toe, lines: s.boat.Cloth.Lines(x), keel: by[0], rail: by[1], stringers: by[2:]}
			if e.past {
				clear(e.keel)
				e.keel[tail-first] = 1
			}
			s.ends = append(s.ends, e)
		}
	}
	return nil
}

// units are the splines of a line from aft to fore, near one end, for each of its pins
// there off by one: the first of them has that number.
func (s *sounding) units(aft, fore float64, first int) ([]curve.Batten, error) {
	var room [reach]float64
	x := room[:0]
	for k := first; k < min(first+reach, len(s.m.ribs)+2); k++ {
		switch {
		case k == 0:
			x = append(x, aft)
		case k > len(s.m.ribs):
			x = append(x, fore)
		default:
			x = append(x, s.m.ribs[k-1].at)
		}
	}
	return curve.UnitBattens(x)
}

// shares are how much a station takes of each pin's change, line by line.
func shares(lines [][]curve.Batten, x float64) [][]float64 {
	out := equations.Rows(len(lines), len(lines[0]))
	for i, units := range lines {
		for j := range units {
			out[i][j], _ = units[j].Rise(x)
		}
	}
	return out
}
