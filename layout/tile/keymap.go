package tile

import (
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	// leastKey is the least side of a tile in a key map that is drawn tile by tile, mm: with
	// smaller ones the map would be all line.
	leastKey   = 1.5
	keyWide    = columnWide - 1
	keyBetween = 3.0 // mm between two key maps
)

// keyMaps draws a key map of each pattern that a sheet has tiles of, one under the other. Those
// that the column has no room for are left out; the pieces' headings have it.
func (p plan) keyMaps(set Set, s *layout.Sheet, sheet int) {
	tiles := map[*layout.Drawing][]piece{}
	var order []*layout.Drawing
	for i, k := range p.pieces {
		if p.spots[i].sheet != sheet || k.grid.rows() < 2 {
			continue
		}
		if tiles[k.drawing] == nil {
			order = append(order, k.drawing)
		}
		tiles[k.drawing] = append(tiles[k.drawing], k)
	}
	f, area := footOf(set, p.sheet, most, most), p.sheet.Area
	top, low := area.Max.Y, area.Min.Y+f.high()+barUp+barLong+layout.BarOver
	if f.up != "" {
		low += lettering.Width(f.up, small) + keyBetween
	}
	for i, d := range order {
		high := keyMapHigh(tiles[d])
		if whole := high + 1.5 + lettering.Width(d.Title, small); i == 0 || top-whole >= low {
			top = keyMap(s, geometry.Point{X: area.Max.X, Y: top}, low, tiles[d]) - keyBetween
		}
	}
}

// keyStep is the side of a tile in a grid's key map, mm.
func keyStep(g *grid) float64 {
	return min(keyWide/float64(g.cols()), 4.5, keyHigh/2/float64(g.rows()))
}

// names lists what tiles of one pattern are called.
func names(tiles []piece) string {
	var out []string
	for _, k := range tiles {
		out = append(out, k.name())
	}
	return strings.Join(out, " ")
}

// keyMapHigh is how much of the column a key map takes without its pattern's name, mm.
func keyMapHigh(tiles []piece) float64 {
	g := tiles[0].grid
	return keyStep(g)*float64(g.rows()) + 1 + lettering.Width(names(tiles), small)
}

// keyMap draws the grid of a pattern's tiles in small, those of this sheet filled and named,
// the ones without ink struck out; of a grid of many tiles the rim alone. Under it stands
// whose tiles they are, unless that name reaches under low. It returns how far down it all
// reaches.
func keyMap(s *layout.Sheet, corner geometry.Point, low float64, tiles []piece) float64 {
	g := tiles[0].grid
	step := keyStep(g)
	inset := min(step*0.22, 0.25)
	in := max(layout.Tick.Width(), layout.Cut.Width()-2*inset) / 2 // so that no line stands half on the margin
	origin := corner.Sub(geometry.Point{X: keyWide + in, Y: in})
	box := func(col, row int) geometry.Box {
		a := origin.Add(geometry.Point{X: float64(col) * step, Y: -float64(row+1) * step})
		return geometry.Box{Min: a, Max: a.Add(geometry.Point{X: step, Y: step})}
	}
	for row := range g.rows() {
		for col := range g.cols() {
			b := box(col, row)
			switch {
			case step < leastKey:
				rim(s, g, col, row, b)
			case g.has(col, row):
				s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Rectangle(b)})
			default:
				s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Rectangle(b)})
				s.Line(layout.Tick, b.Min, b.Max)
			}
		}
	}
	for _, k := range tiles {
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Cut, Path: curve.Rectangle(box(k.col, k.row).Grow(-inset))})
	}
	under := geometry.Point{X: corner.X - wordsBy, Y: origin.Y - float64(g.rows())*step - 1}
	write := func(words string) {
		s.Texts = append(s.Texts, layout.Text{At: under, Height: small, Angle: math.Pi / 2, Align: layout.Right, Words: words})
		under.Y -= lettering.Width(words, small) + 1.5
	}
	write(names(tiles))
	if title := tiles[0].drawing.Title; lettering.Width(title, small) < under.Y-low {
		write(title)
	}
	return under.Y
}

// rim draws the sides of a tile in a key map beyond which none is printed.
func rim(s *layout.Sheet, g *grid, col, row int, b geometry.Box) {
	if !g.has(col, row) {
		return
	}
	upper, lower := geometry.Point{X: b.Min.X, Y: b.Max.Y}, geometry.Point{X: b.Max.X, Y: b.Min.Y}
	for _, side := range []struct {
		col, row int
		from, to geometry.Point
	}{{col - 1, row, b.Min, upper}, {col + 1, row, lower, b.Max}, {col, row - 1, upper, b.Max}, {col, row + 1, b.Min, lower}} {
		if !g.has(side.col, side.row) {
			s.Line(layout.Tick, side.from, side.to)
		}
	}
}
