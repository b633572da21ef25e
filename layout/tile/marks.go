package tile

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/label"
)

const (
	crossArm    = 5.0  // half the width of a registration cross, mm
	crossCircle = 2.0  // radius of the circle round its middle, mm
	midSide     = 60.0 // a joint this long gets a cross at its middle too, mm
)

type side struct {
	from, to         geometry.Point // what both tiles show of the joint, laps not included
	fromOpen, toOpen bool           // whether both tiles show a lap beyond that end
	other            string         // the neighbor's name
	trim             bool           // this tile is cut here and laid over the neighbor
}

// sides lists the joints a piece has with printed neighbors. The left and the
// upper edge are the ones to cut.
func (p piece) sides() []side {
	g := p.grid
	var out []side
	for _, way := range []struct {
		dc, dr int
		trim   bool
	}{{-1, 0, true}, {1, 0, false}, {0, -1, true}, {0, 1, false}} {
		col, row := p.col+way.dc, p.row+way.dr
		if !g.has(col, row) {
			continue
		}
		s := p.jointWith(col, row)
		s.other, s.trim = g.tileName(col, row), way.trim
		out = append(out, s)
	}
	return out
}

// jointWith returns what a piece and its neighbor both show of their joint; the
// neighbor finds the same.
func (p piece) jointWith(col, row int) side {
	g, a, b := p.grid, p.cell, p.grid.cells[row][col]
	if row == p.row {
		x := g.x[max(col, p.col)]
		return side{
			from: geometry.Point{X: x, Y: math.Max(a.Min.Y, b.Min.Y)}, to: geometry.Point{X: x, Y: math.Min(a.Max.Y, b.Max.Y)},
			fromOpen: g.has(p.col, row+1) && g.has(col, row+1), toOpen: g.has(p.col, row-1) && g.has(col, row-1)}
	}
	y := g.y[g.rows()-max(row, p.row)]
	return side{
		from: geometry.Point{X: math.Max(a.Min.X, b.Min.X), Y: y}, to: geometry.Point{X: math.Min(a.Max.X, b.Max.X), Y: y},
		fromOpen: g.has(col-1, p.row) && g.has(col-1, row), toOpen: g.has(col+1, p.row) && g.has(col+1, row)}
}

// crossPlaces returns where the registration crosses of a joint stand: at the
// corners where four tiles meet, else drawn in from its ends so that the cross
// is whole, and at the middle of a long joint.
func (s side) crossPlaces() []geometry.Point {
	long := s.to.Sub(s.from)
	in := long.Unit().Scale(math.Min(lap, long.Norm()/5))
	from, to := s.from, s.to
	if !s.fromOpen {
		from = from.Add(in)
	}
	if !s.toOpen {
		to = to.Sub(in)
	}
	out := []geometry.Point{from, to}
	if long.Norm() >= midSide {
		out = append(out, from.Lerp(to, 0.5))
	}
	return out
}

// dress draws what a piece needs to be put together, in the pattern's own coordinates, with
// the heading of a look.
func (p piece) dress(u measure.System, l look, m *known) layout.Sheet {
	s := m.joined(p, u)
	p.headed(&s, u, l)
	return s
}

// joined draws crosses, trim lines with the neighbors' names, and absolute distances for a
// grid.
func (p piece) joined(u measure.System) layout.Sheet {
	var s layout.Sheet
	for _, j := range p.sides() {
		for _, at := range j.crossPlaces() {
			s.Strokes = append(s.Strokes, crossAt(at)...)
		}
		p.drawJoint(&s, j)
	}
	if p.grid.rows() > 1 {
		p.drawScales(&s, u)
	}
	return s
}

func crossAt(at geometry.Point) []layout.Stroke {
	return []layout.Stroke{
		{Pen: layout.Tick, Path: curve.Polyline(at.Add(geometry.Point{X: -crossArm}), at.Add(geometry.Point{X: crossArm}))},
		{Pen: layout.Tick, Path: curve.Polyline(at.Add(geometry.Point{Y: -crossArm}), at.Add(geometry.Point{Y: crossArm}))},
		{Pen: layout.Tick, Path: curve.Circle(at, crossCircle)},
	}
}

// outWord follows the figures along a lower edge, which count out from the pattern's zero: else
// they would be read as those up the left one, where there is less room.
const outWord = " out"

// drawScales puts absolute distances along the lower and left edge of a tile, clear of
// all that is on it; along the left one only where they measure something, and along the lower
// one only where sticks have no tape of their own.
func (p piece) drawScales(s *layout.Sheet, u measure.System) {
	step, unit := 50.0, 1.0
	if u == measure.Imperial {
		step, unit = 50.8, 25.4
	}
	c := p.cell
	r := p.room(*s)
	tick := func(at, inward geometry.Point, i float64, way string) {
		if r.Strikes(at, at.Add(inward)) {
			return
		}
		s.Line(layout.Tick, at, at.Add(inward))
		r.Straight(at, at.Add(inward))
		if math.Mod(i, 2) == 0 {
			numberAt(s, &r, at, fmt.Sprint(math.Round(i*step/unit)+0)+way)
		}
	}
	taped := p.drawing.Stacked && p.row == p.grid.rows()-1
	for i := math.Ceil(c.Min.X/step + 0.1); i*step < c.Max.X-8 && !taped; i++ {
		tick(geometry.Point{X: i * step, Y: c.Min.Y}, geometry.Point{Y: 3}, i, outWord)
	}
	for i := math.Ceil(c.Min.Y/step + 0.1); i*step < c.Max.Y-8 && !p.drawing.Stacked; i++ {
		tick(geometry.Point{X: c.Min.X, Y: i * step}, geometry.Point{X: 3}, i, "")
	}
}

// numberAt letters a tick where nothing lies: to its upper right, its upper left or its
// lower right, higher where a line runs close along the edge.
func numberAt(s *layout.Sheet, r *label.Room, at geometry.Point, words string) {
	for _, off := range []float64{label.Off, label.Least} {
		for _, way := range []layout.Text{
			{At: geometry.Point{X: 1, Y: 1}}, {At: geometry.Point{X: -1, Y: 1}, Align: layout.Right}, {At: geometry.Point{X: 1, Y: -1 - small}},
			{At: geometry.Point{X: 1, Y: 2}}, {At: geometry.Point{X: -1, Y: 2}, Align: layout.Right},
		} {
			t := layout.Text{At: at.Add(way.At), Height: small, Align: way.Align, Words: words}
			if r.Fits(t, off) {
				s.Texts = append(s.Texts, t)
				r.Text(t)
				return
			}
		}
	}
}

// room is what a piece leaves for lettering between its joints: clear of the pattern's
// lines and of all that the piece is dressed with.
func (p piece) room(dressed layout.Sheet) label.Room {
	r := label.Room{Ground: p.grid.ink.ground(p.frame), Within: p.cell}
	r.Drawing(&layout.Drawing{Strokes: dressed.Strokes, Texts: dressed.Texts})
	return r
}

// letter letters a piece that is dressed. The pattern's words belong to the piece that
// their place lies on, and stand there whole: near a joint they are moved, and what finds
// no place near is dressed on with a thin line to its mark, beside the heading if need be.
// Words that find no place behind the others are set before them.
func (p piece) letter(dressed *layout.Sheet, l look) []layout.Text {
	var own []layout.Text
	for _, t := range p.drawing.Texts {
		if p.owns(t.At) {
			if l.turned {
				t = upright(t)
			}
			own = append(own, t)
		}
	}
	for front := 0; ; front++ {
		words, led, lost := p.set(own, front, *dressed, l)
		if lost < front { // all are set, or one has found no place though it was set early
			dressed.Texts, dressed.Strokes = append(dressed.Texts, led.Texts...), append(dressed.Strokes, led.Strokes...)
			dressed.Texts = append(dressed.Texts, p.again(words, *dressed, l)...)
			return words
		}
		t := own[lost]
		own = slices.Insert(slices.Delete(own, lost, lost+1), 0, t)
	}
}

// again sets the words that the pattern has anew on each piece, where none like them stand.
func (p piece) again(words []layout.Text, dressed layout.Sheet, l look) (out []layout.Text) {
	if len(p.drawing.Again) == 0 {
		return nil // as in most patterns
	}
	r, calm := p.room(dressed), p.calm()
	for _, t := range words {
		r.Text(t)
	}
	for _, t := range p.drawing.Again {
		if l.turned {
			t = upright(t)
		}
		like := func(o layout.Text) bool { return strings.HasPrefix(o.Words, t.Words) }
		if b := t.Bounds(); calm.Holds(b.Min) && calm.Holds(b.Max) && !slices.ContainsFunc(words, like) && !slices.ContainsFunc(out, like) && r.Fits(t, label.Off) {
			out = append(out, t)
		}
	}
	return out
}

// calm is what a piece keeps when it is cut along its joints by a hand that is off by a little.
func (p piece) calm() geometry.Box {
	const air = 4.0 // mm
	box := p.cell
	for _, s := range p.sides() {
		switch {
		case s.from.X == s.to.X && s.trim:
			box.Min.X += air
		case s.from.X == s.to.X:
			box.Max.X -= air
		case s.trim:
			box.Max.Y -= air
		default:
			box.Min.Y += air
		}
	}
	return box
}

// upright is a line of lettering turned end for end where it is, if it would stand on its head
// on a piece that lies turned by a quarter.
func upright(t layout.Text) layout.Text {
	if t.Angle <= math.Pi/4 {
		return t
	}
	t.At = t.At.Add(geometry.Polar(t.Height, t.Angle+math.Pi/2))
	t.Angle -= math.Pi
	t.Align = [...]layout.Align{layout.Left: layout.Right, layout.Middle: layout.Middle, layout.Right: layout.Left}[t.Align]
	return t
}

// crossAir is how far words keep off the arms of a registration cross, mm: nearer, an arm is read
// as a letter's stroke.
const crossAir = 0.8

// offCrosses keeps words off the crosses of a tile's joints; those of a strip stand at their
// tick or their mark.
func (p piece) offCrosses(r *label.Room) {
	if p.grid.rows() == 1 || p.drawing.Stacked {
		return
	}
	for _, j := range p.sides() {
		for _, at := range j.crossPlaces() {
			const long, thin = crossArm + crossAir, crossAir
			r.Block(label.Block{At: at.Sub(geometry.Pt(long, thin)), Wide: 2 * long, High: 2 * thin})
			r.Block(label.Block{At: at.Sub(geometry.Pt(thin, long)), Wide: 2 * thin, High: 2 * long})
		}
	}
}

// set sets words, some of them before all others, and returns what is set on the pattern,
// what is set beside the heading and the lines that lead to what was moved off, and which
// of the words found no place; -1 for none.
func (p piece) set(own []layout.Text, front int, dressed layout.Sheet, l look) (words []layout.Text, led layout.Sheet, lost int) {
	r := p.room(dressed)
	p.offCrosses(&r)
	switch f := p.frame; l.heads {
	case over:
		r.Beside = append(r.Beside, geometry.Rect(f.Min.X, f.Max.Y, f.Min.X+l.wide, f.Min.Y+l.high))
	case behind:
		r.Beside = append(r.Beside, geometry.Rect(f.Max.X, f.Min.Y, f.Min.X+l.wide, f.Min.Y+l.high))
	}
	lost = -1
	near := func(i int) {
		moved, leader, ok := r.Near(own[i])
		if !ok {
			lost = i
		}
		if leader != nil {
			led.Strokes = append(led.Strokes, layout.Stroke{Pen: layout.Tick, Path: leader})
		}
		if r.Within.Holds(moved[0].At) {
			words = append(words, moved...)
		} else {
			led.Texts = append(led.Texts, moved...)
		}
	}
	for i := range front {
		near(i)
	}
	var late []int
	var leader curve.Path
	calm := p.calm()
	for i := front; i < len(own); i++ {
		if t := own[i]; r.Fits(t, label.Least) {
			if p.drawing.Stacked { // a stick's words stand at their tick
				r.Text(t)
			} else if t, leader = r.Inside(t, calm); leader != nil {
				led.Strokes = append(led.Strokes, layout.Stroke{Pen: layout.Tick, Path: leader})
			}
			words = append(words, t)
		} else {
			late = append(late, i)
		}
	}
	for _, i := range late {
		near(i)
	}
	return words, led, lost
}

// owns reports whether a place lies on this piece and no other.
func (p piece) owns(at geometry.Point) bool {
	from := func(edges []float64, v float64) int {
		i := 0
		for i+2 < len(edges) && v >= edges[i+1] {
			i++
		}
		return i
	}
	g := p.grid
	return from(g.x, at.X) == p.col && g.rows()-1-from(g.y, at.Y) == p.row
}
