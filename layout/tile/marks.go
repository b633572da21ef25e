package tile

import (
	"fmt"
	"math"

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

// side is one joint of a tile, in the drawing's coordinates.
type side struct {
	from, to geometry.Point // along the joint, laps not included
	other    string         // the neighbour's name
	trim     bool           // this tile is cut here and laid over the neighbour
}

// sides lists the joints a piece has with printed neighbours. The left and the
// upper edge are the ones to cut.
func (p piece) sides() []side {
	g, c := p.grid, p.cell
	var out []side
	add := func(dc, dr int, from, to geometry.Point, trim bool) {
		if g.has(p.col+dc, p.row+dr) {
			out = append(out, side{from, to, g.tileName(p.col+dc, p.row+dr), trim})
		}
	}
	ul, lr := geometry.Point{X: c.Min.X, Y: c.Max.Y}, geometry.Point{X: c.Max.X, Y: c.Min.Y}
	add(-1, 0, c.Min, ul, true)
	add(1, 0, lr, c.Max, false)
	add(0, -1, ul, c.Max, true)
	add(0, 1, c.Min, lr, false)
	return out
}

// crossPlaces returns where the registration crosses of a joint stand: near
// both ends (at the corner where four tiles meet) and at the middle of a long
// one. Both neighbours work them out alike.
func (p piece) crossPlaces(s side) []geometry.Point {
	long := s.to.Sub(s.from)
	in := long.Unit().Scale(math.Min(lap, long.Norm()/5))
	from, to := s.from, s.to
	// An end at the pattern's own edge is drawn in, so that the cross is whole.
	if p.atEdge(from) {
		from = from.Add(in)
	}
	if p.atEdge(to) {
		to = to.Sub(in)
	}
	out := []geometry.Point{from, to}
	if long.Norm() >= midSide {
		out = append(out, from.Lerp(to, 0.5))
	}
	return out
}

// atEdge reports whether an end of a joint lies on the outer edge of the whole
// pattern, where no joint crosses it.
func (p piece) atEdge(q geometry.Point) bool {
	g := p.grid
	outerX := q.X == g.x[0] || q.X == g.x[len(g.x)-1]
	outerY := q.Y == g.y[0] || q.Y == g.y[len(g.y)-1]
	return outerX || outerY
}

// dress draws what a piece needs to be put together: caption, crosses, trim
// lines with the neighbours' names, and absolute distances for a grid. right is
// where the sheet's own furniture begins, mm.
func (p piece) dress(s *layout.Sheet, m geometry.Affine, u measure.System, right float64) {
	f := m.Apply(geometry.Point{X: p.frame.Min.X, Y: p.frame.Max.Y})
	write(s, f.Add(geometry.Point{Y: 1.2}), small, layout.Left, lettering.Clip(p.caption(u), small, right-f.X))
	for _, j := range p.sides() {
		for _, at := range p.crossPlaces(j) {
			drawCross(s, m.Apply(at))
		}
		p.drawJoint(s, m, j)
	}
	if p.grid.rows() > 1 {
		p.drawScales(s, m, u)
	}
}

func drawCross(s *layout.Sheet, at geometry.Point) {
	line(s, layout.Tick, at.Add(geometry.Point{X: -crossArm}), at.Add(geometry.Point{X: crossArm}))
	line(s, layout.Tick, at.Add(geometry.Point{Y: -crossArm}), at.Add(geometry.Point{Y: crossArm}))
	s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Circle(at, crossCircle)})
}

// drawJoint letters the joint with a code that stands at the same place on both
// pieces, and draws the line to cut where this piece is cut.
func (p piece) drawJoint(s *layout.Sheet, m geometry.Affine, j side) {
	a, b := j.from, j.to
	if j.trim {
		line(s, layout.Guide, m.Apply(a), m.Apply(b))
	}
	first, second := p.name(), j.other
	if j.trim {
		first, second = second, first
	}
	s.Texts = append(s.Texts, moved(p.codeAt(a, b, first+"-"+second), m))
}

// codeAt finds a place for a joint's code beside the joint from a to b that is
// free of the pattern's own ink, the same from both its pieces; the first place
// tried when none is free.
func (p piece) codeAt(a, b geometry.Point, words string) layout.Text {
	var first layout.Text
	for i, share := range []float64{0.62, 0.58, 0.25, 0.38, 0.75, 0.86, 0.14} {
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
	for _, at := range []geometry.Point{a, a.Add(in), b.Sub(in), b} {
		if t.Bounds().Overlaps(geometry.Around(at).Grow(crossCircle)) {
			return true
		}
	}
	return false
}

// moved carries a text of the pattern to the sheet; pieces are never turned.
func moved(t layout.Text, m geometry.Affine) layout.Text {
	t.At = m.Apply(t.At)
	return t
}

// drawScales puts absolute distances along the lower and left edge of a tile.
func (p piece) drawScales(s *layout.Sheet, m geometry.Affine, u measure.System) {
	step, unit := 50.0, 1.0
	if u == measure.Imperial {
		step, unit = 50.8, 25.4
	}
	c := p.cell
	number := func(at geometry.Point, i float64) {
		t := layout.Text{At: at.Add(geometry.Point{X: 1, Y: 1}), Height: small, Words: fmt.Sprint(math.Round(i*step/unit) + 0)}
		if math.Mod(i, 2) == 0 && !p.grid.ink.touches(t.Bounds()) {
			s.Texts = append(s.Texts, moved(t, m))
		}
	}
	for i := math.Ceil(c.Min.X/step + 0.1); i*step < c.Max.X-8; i++ {
		at := geometry.Point{X: i * step, Y: c.Min.Y}
		line(s, layout.Tick, m.Apply(at), m.Apply(at.Add(geometry.Point{Y: 3})))
		number(at, i)
	}
	for i := math.Ceil(c.Min.Y/step + 0.1); i*step < c.Max.Y-8; i++ {
		at := geometry.Point{X: c.Min.X, Y: i * step}
		line(s, layout.Tick, m.Apply(at), m.Apply(at.Add(geometry.Point{X: 3})))
		number(at, i)
	}
}

// edgeUnit names the unit of the distances along a tile's edges.
func edgeUnit(u measure.System) string {
	if u == measure.Imperial {
		return "inches"
	}
	return "mm"
}
