// Package fanboard draws the board from which all builders of a course mark ribs and
// gunwales: a lane for each pair of ribs, each with its fan of straight rays over a scale of
// readings.
package fanboard

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/fan"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	small = lettering.MinHeight // of capitals, mm
	name  = 4.5
	row   = 4.2 // between lines of small lettering, mm

	// How high a millimeter of reading stands, mm: an eye holds a straightedge to a third of
	// a millimeter, and that moves half a rib by half a millimeter, a mortise as much.
	ribHigh     = 0.3
	mortiseHigh = 0.5
	least       = 24.0 // of a lane, mm: where readings lie close it is drawn higher

	tickLong = 3.0  // of the scale, mm
	cross    = 18.0 // room on either side for the crosses of a joint and its code, mm
	apart    = 9.0  // between lanes, mm
	joint    = 9.0  // room below a lane, where joints are named
	before   = 26.0 // room for the scale and a lane's name before zero, mm
)

// onRibs reports whether a ray is read on a rib.
func onRibs(r fan.Ray) bool { return r.Kind != fan.Mortise }

// Sheets draws a board for paper: each lane by itself, so that no joint goes along one.
func Sheets(b *fan.Board, of string, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	s := ribScale(b, units)
	for rib, l := range s.lanes(b) {
		d := layout.Drawing{Name: fmt.Sprintf("fan-%d", rib), Title: "Fan board " + short(rib), Family: "Fan board, ribs",
			Make: of + "; read level at your midship rib's length; turn over at 0" + net(l)}
		s.caption(&d, s.draw(&d, l, short(rib), 0), "the scale is the length of your midship rib")
		out = append(out, d)
	}
	return append(out, Mortises(b, of, units))
}

// Ribs draws the rays that are read at the length of the midship rib, a lane for each pair
// of ribs, in one piece for a cutter: half of every rib, x from its middle.
func Ribs(b *fan.Board, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "fan-ribs", Title: "Fan board, ribs"}
	s, y := ribScale(b, units), 0.0
	for rib, l := range s.lanes(b) {
		y = s.draw(&d, l, short(rib), y)
	}
	return d
}

func ribScale(b *fan.Board, units measure.System) scale {
	s := newScale(b.Rib, ribHigh, units)
	s.end = s.reach(b, onRibs) + 4
	return s
}

// lanes are those of all ribs, midship first.
func (s scale) lanes(b *fan.Board) (out []lane) {
	for rib := 0; ; rib++ {
		l := s.lane(b, func(r fan.Ray) bool { return onRibs(r) && r.Rib == rib })
		if l == nil {
			return out
		}
		out = append(out, l)
	}
}

// Mortises draws the rays that are read at half the length of the boat: the middles of the
// mortises, x from midship along the gunwale's straight stock.
func Mortises(b *fan.Board, of string, units measure.System) layout.Drawing {
	s := newScale(b.Half, mortiseHigh, units)
	mortise := func(r fan.Ray) bool { return !onRibs(r) }
	s.end = s.reach(b, mortise) + 4
	l := s.lane(b, mortise)
	d := layout.Drawing{Name: "fan-mortises", Title: "Fan board, mortises", Make: of + "; read level at half the length of your boat; rays are middles of mortises from midship; turn over at 0" + net(l)}
	s.caption(&d, s.draw(&d, l, "", 0), "the scale is half the length of your boat")
	return d
}

// caption says under a lane what its scale is, in a band with a line under it, along which
// there is room on every piece for the names of joints.
func (s scale) caption(d *layout.Drawing, under float64, words string) {
	foot := under + apart
	d.Write(1.2, foot-joint+2, small, layout.Left, words)
	d.Straight(layout.Tick, -before, foot-joint, s.end+before/2, foot-joint)
}

// net says how two rays of one mark are read, where a lane has such.
func net(l lane) string {
	if !slices.ContainsFunc(l, func(a labeled) bool { return a.Net }) {
		return ""
	}
	return "; two rays under a bracket: go your share of the way from the solid one to the broken one"
}

// scale is how readings stand on a lane.
type scale struct {
	read      fan.Scale // of the board
	on        fan.Scale // to whole steps beyond it
	step      float64   // between level lines; every second one is lettered
	units     measure.System
	high, end float64 // mm
}

// newScale draws a board's readings so many times as high as they are apart, or higher
// where they lie close, with level lines at whole steps that an eye can part.
func newScale(read fan.Scale, times float64, units measure.System) scale {
	const part = 2.9 // mm between two level lines, at least
	s := scale{read: read, units: units}
	steps := []float64{2, 5, 10, 20, 50}
	if units == measure.Imperial {
		steps = []float64{25.4 / 16, 25.4 / 8, 25.4 / 4, 25.4 / 2, 25.4, 2 * 25.4}
	}
	for _, s.step = range steps {
		s.on.From, s.on.To = s.step*math.Floor(read.From/s.step+1e-9), s.step*math.Ceil(read.To/s.step-1e-9)
		if s.on.To-s.on.From < s.step {
			s.on.To = s.on.From + s.step
		}
		if s.high = math.Max(least, times*(s.on.To-s.on.From)); s.high*s.step >= part*(s.on.To-s.on.From) {
			break
		}
	}
	return s
}

// write letters a reading.
func (s scale) write(v float64) string {
	if s.units == measure.Imperial {
		return measure.Sixteenths(v)
	}
	return fmt.Sprintf("%.0f", v)
}

// ends are where a ray lies at the least and the most reading of the scale, drawn straight
// on past those of the board; beam is 0 for the ray of the narrowest boats, 1 for the other.
func (s scale) ends(r fan.Ray, beam int) (low, high float64) {
	e, long := r.Ends[beam], s.read.To-s.read.From
	if long == 0 {
		return e[0], e[0]
	}
	slope := (e[1] - e[0]) / long
	return e[0] + slope*(s.on.From-s.read.From), e[1] + slope*(s.on.To-s.read.To)
}

// reach is how far out the rays go, mm.
func (s scale) reach(b *fan.Board, which func(fan.Ray) bool) (out float64) {
	for _, r := range b.Rays {
		for beam := range 2 {
			if low, high := s.ends(r, beam); which(r) {
				out = max(out, low, high)
			}
		}
	}
	return out
}

// up is how far up a lane a reading lies, mm.
func (s scale) up(reading float64) float64 {
	return s.high * (reading - s.on.From) / (s.on.To - s.on.From)
}

// lane are the rays of one lane with their labels over it, the last one first.
type lane []labeled

type labeled struct {
	fan.Ray
	left, right float64 // of its rays at the upper edge, mm
	words       string
	row         int
}

// lane gathers the rays of a lane and gives each label the lowest row in which it is clear
// of the leaders beside it; nil where there are none.
func (s scale) lane(b *fan.Board, which func(fan.Ray) bool) lane {
	var out lane
	for _, r := range b.Rays {
		if which(r) {
			_, narrow := s.ends(r, 0)
			_, wide := s.ends(r, 1)
			out = append(out, labeled{Ray: r, left: min(narrow, wide), right: max(narrow, wide), words: words(r)})
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].right > out[j].right })
	for i := range out {
		a := &out[i]
		for _, o := range out[:i] {
			if o.left < a.right+1.2+lettering.Width(a.words, small)+3 {
				a.row = max(a.row, o.row+1)
			}
		}
	}
	return out
}

// short names a pair of ribs.
func short(rib int) string {
	if rib == 0 {
		return "M"
	}
	return fmt.Sprintf("F%d A%d", rib, rib)
}

// words letter a ray.
func words(r fan.Ray) string {
	short := short(r.Rib)
	switch r.Kind {
	case fan.Bend:
		return fmt.Sprintf("%s B%d", short, r.Number+1)
	case fan.Stringer:
		return fmt.Sprintf("%s S%d", short, r.Number+1)
	case fan.Length:
		return short + " L"
	}
	return short
}

// draw draws a lane under a height and returns where the next one begins.
func (s scale) draw(d *layout.Drawing, l lane, called string, top float64) float64 {
	rows := 1
	for _, a := range l {
		rows = max(rows, a.row+1)
	}
	edge := top - float64(rows)*row - 1
	foot := edge - s.high
	s.level(d, foot)
	for _, a := range l {
		s.ray(d, a, foot)
	}
	d.Straight(layout.Center, 0, foot-2, 0, edge+row)
	d.Write(1.2, edge+1.4, small, layout.Left, "0")
	if called != "" {
		d.Write(-before, edge+2.6, name, layout.Left, called)
	}
	d.Whole = append(d.Whole, layout.Span{From: -before - 1, To: 6}, layout.Span{From: s.end - 1, To: s.end + 18})
	return foot - apart
}

// level draws the scale at both ends and a level line through each of its steps.
func (s scale) level(d *layout.Drawing, foot float64) {
	for i := 0; ; i++ {
		v := s.on.From + float64(i)*s.step
		if v > s.on.To+1e-6 {
			break
		}
		y := foot + s.up(v)
		d.Straight(layout.Tick, -tickLong, y, s.end+tickLong, y)
		if i%2 == 0 {
			d.Write(-tickLong-1, y-small/2, small, layout.Right, s.write(v))
			d.Write(s.end+tickLong+1, y-small/2, small, layout.Left, s.write(v))
		}
	}
}

// ray draws a mark's ray, or the two of a net under one bracket, with its label.
func (s scale) ray(d *layout.Drawing, a labeled, foot float64) {
	edge := foot + s.high
	up := edge + 1.4 + float64(a.row)*row
	low, high := s.ends(a.Ray, 0)
	d.Straight(layout.Mark, low, foot, high, edge)
	if a.Net {
		low, high = s.ends(a.Ray, 1)
		d.Straight(layout.Long, low, foot, high, edge)
		d.Straight(layout.Tick, a.left, edge, a.left, up)
		d.Straight(layout.Tick, a.left, up, a.right, up)
	}
	d.Straight(layout.Tick, a.right, edge, a.right, up+small)
	d.Write(a.right+1.2, up, small, layout.Left, a.words)
	// A joint there would push the label off its ray.
	d.Whole = append(d.Whole, layout.Span{From: a.right - cross, To: a.right + cross + lettering.Width(a.words, small)})
}
