// Package fanboard draws the board from which all builders of a course mark ribs and
// gunwales: a lane for each pair of ribs, each with its fan of straight rays over a scale of
// readings.
package fanboard

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/fan"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	small = 2.5 // mm of capitals
	name  = 4.5
	row   = 4.2 // between lines of small lettering, mm

	// How high a millimeter of reading stands, mm: an eye holds a straightedge to a third of
	// a millimeter, and that moves half a rib by half a millimeter, a mortise as much.
	ribHigh     = 0.3
	mortiseHigh = 0.5
	least       = 24.0 // of a lane, mm: where readings lie close it is drawn higher

	tickLong = 3.0  // of the scale, mm
	apart    = 9.0  // between lanes, mm
	before   = 26.0 // room for the scale and a lane's name before zero, mm
)

// Ribs draws the rays that are read at the length of the midship rib: half of every rib, x
// from its middle.
func Ribs(b *fan.Board, of string, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "fan-ribs", Title: "Fan board, ribs", Family: "Fan board",
		Make: of + "; your reading is the length of your midship rib: hold a straightedge level through it on both scales, lay the rib's edge there, its middle at 0, and mark where rays cross; turn over at 0; B bend, S stringer, L shoulder" + net(b, false)}
	s := scale{on: b.Rib, units: units}
	s.high = math.Max(least, ribHigh*(b.Rib.To-b.Rib.From))
	s.end = s.reach(b, func(r fan.Ray) bool { return r.Kind != fan.Mortise }) + 4
	y := 0.0
	for rib := 0; ; rib++ {
		l := s.lane(b, func(r fan.Ray) bool { return r.Kind != fan.Mortise && r.Rib == rib }, rib)
		if l == nil {
			break
		}
		y = s.draw(&d, l, short(rib), y)
	}
	return d
}

// Mortises draws the rays that are read at half the length of the boat: the middles of the
// mortises, x from midship along the gunwale's straight stock.
func Mortises(b *fan.Board, of string, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "fan-mortises", Title: "Fan board, mortises", Family: "Fan board",
		Make: of + "; your reading is half the length of your boat: hold a straightedge level through it on both scales, lay the gunwale's edge there, midship at 0, and mark the middle of each mortise where its ray crosses; turn over at 0" + net(b, true)}
	s := scale{on: b.Half, units: units}
	s.high = math.Max(least, mortiseHigh*(b.Half.To-b.Half.From))
	mortise := func(r fan.Ray) bool { return r.Kind == fan.Mortise }
	s.end = s.reach(b, mortise) + 4
	s.draw(&d, s.lane(b, mortise, -1), "", 0)
	return d
}

// net says how two rays of one mark are read, where a board has such.
func net(b *fan.Board, mortises bool) string {
	if !slices.ContainsFunc(b.Rays, func(r fan.Ray) bool { return r.Net && (r.Kind == fan.Mortise) == mortises }) {
		return ""
	}
	return "; where a mark has two rays go your share of the way from the solid one to the broken one, as the course book says"
}

// scale is how readings stand on a lane.
type scale struct {
	on        fan.Scale
	units     measure.System
	high, end float64 // mm
}

// reach is how far out the rays go, mm.
func (s scale) reach(b *fan.Board, which func(fan.Ray) bool) (out float64) {
	for _, r := range b.Rays {
		if which(r) {
			out = max(out, slices.Max(append(r.Ends[0][:], r.Ends[1][:]...)))
		}
	}
	return out
}

// steps are the readings that have a level line, and every which of them is lettered.
func (s scale) steps() (at []float64, every int, write func(float64) string) {
	steps, every := []float64{2, 5, 10, 20, 50}, 2
	write = func(v float64) string { return fmt.Sprintf("%.0f", v) }
	if s.units == measure.Imperial {
		steps, every = []float64{25.4 / 16, 25.4 / 8, 25.4 / 4, 25.4 / 2, 25.4, 2 * 25.4}, 2
		write = func(v float64) string { return measure.Sixteenths(v) }
	}
	long := s.on.To - s.on.From
	step := steps[len(steps)-1]
	for _, one := range steps {
		if one*s.high >= 2.9*long {
			step = one
			break
		}
	}
	for i := math.Ceil(s.on.From/step - 1e-9); i*step <= s.on.To+1e-9; i++ {
		at = append(at, i*step)
	}
	return at, every, write
}

// up is how far up a lane a reading lies, mm.
func (s scale) up(reading float64) float64 {
	if s.on.To == s.on.From {
		return 0
	}
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
func (s scale) lane(b *fan.Board, which func(fan.Ray) bool, rib int) lane {
	var out lane
	for _, r := range b.Rays {
		if which(r) {
			low, high := r.Ends[0][1], r.Ends[1][1]
			out = append(out, labeled{Ray: r, left: min(low, high), right: max(low, high), words: words(r)})
		}
	}
	slices.SortStableFunc(out, func(a, b labeled) int { return cmp.Compare(b.right, a.right) })
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
	d.KeepUp = append(d.KeepUp, layout.Span{From: foot - apart/2, To: top + apart/2})
	d.Whole = append(d.Whole, layout.Span{From: -before - 1, To: 6}, layout.Span{From: s.end - 1, To: s.end + 18})
	return foot - apart
}

// level draws the scale at both ends and a level line through each of its steps.
func (s scale) level(d *layout.Drawing, foot float64) {
	at, every, write := s.steps()
	for _, y := range []float64{foot, foot + s.high} {
		d.Straight(layout.Guide, 0, y, s.end, y)
	}
	for i, v := range at {
		y := foot + s.up(v)
		d.Straight(layout.Tick, -tickLong, y, s.end+tickLong, y)
		if i%every == 0 {
			d.Write(-tickLong-1, y-small/2, small, layout.Right, write(v))
			d.Write(s.end+tickLong+1, y-small/2, small, layout.Left, write(v))
		}
	}
}

// ray draws a mark's ray, or the two of a net under one bracket, with its label.
func (s scale) ray(d *layout.Drawing, a labeled, foot float64) {
	edge := foot + s.high
	up := edge + 1.4 + float64(a.row)*row
	d.Straight(layout.Mark, a.Ends[0][0], foot, a.Ends[0][1], edge)
	if a.Net {
		d.Straight(layout.Long, a.Ends[1][0], foot, a.Ends[1][1], edge)
		d.Straight(layout.Tick, a.left, edge, a.left, up)
		d.Straight(layout.Tick, a.left, up, a.right, up)
	}
	d.Straight(layout.Tick, a.right, edge, a.right, up+small)
	d.Write(a.right+1.2, up, small, layout.Left, a.words)
	d.Keep = append(d.Keep, layout.Span{From: a.left - 3, To: a.right + 3 + lettering.Width(a.words, small)})
}
