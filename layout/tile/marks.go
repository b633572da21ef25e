package tile

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
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

// dress draws what a piece needs to be put together: caption, crosses, trim
// lines with the neighbors' names, and absolute distances for a grid. room is
// how wide a sheet is for patterns, mm.
func (p piece) dress(s *layout.Sheet, m geometry.Affine, u measure.System, room float64) {
	f := m.Apply(geometry.Point{X: p.frame.Min.X, Y: p.frame.Max.Y})
	s.Write(f.Add(geometry.Point{Y: 1.2}), small, layout.Left, lettering.Clip(p.caption(u), small, p.wide(room)))
	for _, j := range p.sides() {
		for _, at := range j.crossPlaces() {
			drawCross(s, m.Apply(at))
		}
		p.drawJoint(s, m, j)
	}
	if p.grid.rows() > 1 {
		p.drawScales(s, m, u)
	}
}

func drawCross(s *layout.Sheet, at geometry.Point) {
	s.Line(layout.Tick, at.Add(geometry.Point{X: -crossArm}), at.Add(geometry.Point{X: crossArm}))
	s.Line(layout.Tick, at.Add(geometry.Point{Y: -crossArm}), at.Add(geometry.Point{Y: crossArm}))
	s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Circle(at, crossCircle)})
}

// drawJoint letters the joint with a code that stands at the same place on both
// pieces, and draws the line to cut where this piece is cut.
func (p piece) drawJoint(s *layout.Sheet, m geometry.Affine, j side) {
	a, b := j.from, j.to
	if j.trim {
		s.Line(layout.Guide, m.Apply(a), m.Apply(b))
	}
	first, second := p.name(), j.other
	if j.trim {
		first, second = second, first
	}
	code := p.codeAt(a, b, first+"-"+second)
	code.At = m.Apply(code.At) // pieces are never turned
	s.Texts = append(s.Texts, code)
}

// codeAt finds a place for a joint's code beside the joint from a to b that is
// free of the pattern's own ink, the same from both its pieces; the first place
// tried when none is free.
func (p piece) codeAt(a, b geometry.Point, words string) layout.Text {
	var first layout.Text
	for i, share := range []float64{0.62, 0.58, 0.66, 0.7, 0.54, 0.5, 0.46, 0.42, 0.38, 0.34, 0.3, 0.25, 0.75, 0.8, 0.86, 0.2, 0.14} {
		t := layout.Text{Height: small, Align: layout.Middle, Words: words}
		if a.X == b.X { // to the right of an upright joint
			t.At, t.Angle = a.Lerp(b, share).Add(geometry.Point{X: 1.2 + small}), math.Pi/2
		} else { // under a level one
			t.At = a.Lerp(b, share).Sub(geometry.Point{Y: 1.2 + small})
		}
		if i == 0 {
			first = t
		}
		if !p.grid.ink.touches(t.Bounds()) && !nearEnds(t, a, b) {
			return t
		}
	}
	return first
}

// nearEnds reports whether a text lies on the cross near either end of a joint.
func nearEnds(t layout.Text, a, b geometry.Point) bool {
	in := b.Sub(a).Unit().Scale(math.Min(lap, b.Sub(a).Norm()/5))
	return slices.ContainsFunc([]geometry.Point{a, a.Add(in), b.Sub(in), b}, func(at geometry.Point) bool {
		return t.Bounds().Overlaps(geometry.Around(at).Grow(crossCircle))
	})
}

// drawScales puts absolute distances along the lower and left edge of a tile.
func (p piece) drawScales(s *layout.Sheet, m geometry.Affine, u measure.System) {
	step, unit := 50.0, 1.0
	if u == measure.Imperial {
		step, unit = 50.8, 25.4
	}
	c := p.cell
	tick := func(at, inward geometry.Point, i float64) {
		s.Line(layout.Tick, m.Apply(at), m.Apply(at.Add(inward)))
		if math.Mod(i, 2) == 0 {
			p.number(s, m, at, fmt.Sprint(math.Round(i*step/unit)+0))
		}
	}
	for i := math.Ceil(c.Min.X/step + 0.1); i*step < c.Max.X-8; i++ {
		tick(geometry.Point{X: i * step, Y: c.Min.Y}, geometry.Point{Y: 3}, i)
	}
	for i := math.Ceil(c.Min.Y/step + 0.1); i*step < c.Max.Y-8; i++ {
		tick(geometry.Point{X: c.Min.X, Y: i * step}, geometry.Point{X: 3}, i)
	}
}

// number letters a tick where neither ink nor letters lie, and away from crosses
// where that can be: to its upper right, its upper left or its lower right.
func (p piece) number(s *layout.Sheet, m geometry.Affine, at geometry.Point, words string) {
	var found *layout.Text
	for _, way := range []layout.Text{
		{At: geometry.Point{X: 1, Y: 1}}, {At: geometry.Point{X: -1, Y: 1}, Align: layout.Right}, {At: geometry.Point{X: 1, Y: -1 - small}},
	} {
		t := layout.Text{At: at.Add(way.At), Height: small, Align: way.Align, Words: words}
		box, onSheet := t.Bounds(), t
		onSheet.At = m.Apply(t.At)
		if !p.frame.Holds(box.Min) || !p.frame.Holds(box.Max) || p.grid.ink.touches(box) || slices.ContainsFunc(s.Texts, func(o layout.Text) bool { return o.Bounds().Overlaps(onSheet.Bounds()) }) {
			continue
		}
		clear := !p.onCross(box)
		if found == nil || clear {
			found = &onSheet
		}
		if clear {
			break
		}
	}
	if found != nil {
		s.Texts = append(s.Texts, *found)
	}
}

// onCross reports whether a box of the pattern lies on a registration cross.
func (p piece) onCross(box geometry.Box) bool {
	return slices.ContainsFunc(p.sides(), func(j side) bool {
		return slices.ContainsFunc(j.crossPlaces(), func(at geometry.Point) bool { return box.Overlaps(geometry.Around(at).Grow(crossArm)) })
	})
}
