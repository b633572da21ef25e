package tile

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// piece is one sheet-sized part of a pattern.
type piece struct {
	drawing  *layout.Drawing
	cell     geometry.Box // between joints, in the drawing's coordinates
	frame    geometry.Box // the cell and its laps: what is shown
	col, row int          // from the left and from the top, 0 first
	grid     *grid
}

// grid is how a pattern was divided.
type grid struct {
	x, y []float64 // joints; y from the bottom up
	used [][]bool  // [row from the top][column]: whether the tile holds anything
	ink  ink       // where the pattern has lines or letters
}

func (g *grid) cols() int { return len(g.x) - 1 }
func (g *grid) rows() int { return len(g.y) - 1 }

// whole reports whether the pattern was not divided at all.
func (g *grid) whole() bool { return g.cols() == 1 && g.rows() == 1 }

// has reports whether the tile at the column and row exists and is printed.
func (g *grid) has(col, row int) bool {
	return row >= 0 && row < g.rows() && col >= 0 && col < g.cols() && g.used[row][col]
}

// tileName names a tile: "" for a whole pattern, "3" for the third piece of a
// strip, "B2" for the second tile of the second row from the top.
func (g *grid) tileName(col, row int) string {
	switch {
	case g.whole():
		return ""
	case g.rows() == 1:
		return fmt.Sprint(col + 1)
	}
	return rowName(row) + fmt.Sprint(col+1)
}

// rowName counts A to Z, then AA, AB and so on.
func rowName(row int) string {
	if row < 26 {
		return string(rune('A' + row))
	}
	return rowName(row/26-1) + string(rune('A'+row%26))
}

// air is left round a pattern that has an edge of its own, mm.
const air = 2.0

// cut divides a drawing into pieces no larger than w by h mm, frames included,
// and leaves out those that would be empty.
func cut(d *layout.Drawing, w, h float64) []piece {
	b := d.Bounds()
	if b.Empty() {
		return nil
	}
	b = b.Grow(air)
	g := &grid{x: joints(b.Min.X, b.Max.X, w, d.Whole, d.Keep), y: joints(b.Min.Y, b.Max.Y, h, nil, nil)}
	g.ink = inkOf(d)
	var out []piece
	for row := range g.rows() {
		g.used = append(g.used, make([]bool, g.cols()))
		for col := range g.cols() {
			cell := g.cell(col, row)
			if g.used[row][col] = g.ink.touches(cell); g.used[row][col] {
				out = append(out, piece{d, cell, g.frame(col, row), col, row, g})
			}
		}
	}
	return out
}

// joints divides one direction; a joint costs a lap on both its sides.
func joints(lo, hi, room float64, must, should []layout.Span) []float64 {
	if hi-lo <= room+closeEnough {
		return []float64{lo, hi}
	}
	return Cuts(lo, hi, room-2*lap, must, should)
}

func (g *grid) cell(col, row int) geometry.Box {
	r := g.rows() - 1 - row
	return geometry.Box{
		Min: geometry.Point{X: g.x[col], Y: g.y[r]},
		Max: geometry.Point{X: g.x[col+1], Y: g.y[r+1]},
	}
}

// frame adds the laps, only where there is a joint.
func (g *grid) frame(col, row int) geometry.Box {
	f := g.cell(col, row)
	if col > 0 {
		f.Min.X -= lap
	}
	if col < g.cols()-1 {
		f.Max.X += lap
	}
	if row > 0 {
		f.Max.Y += lap
	}
	if row < g.rows()-1 {
		f.Min.Y -= lap
	}
	return f
}

func (p piece) name() string { return p.grid.tileName(p.col, p.row) }

// caption says in one line what a piece is and where it belongs.
func (p piece) caption(u measure.System) string {
	d := p.drawing
	parts := []string{d.Title}
	g := p.grid
	switch {
	case g.rows() > 1:
		parts = append(parts, fmt.Sprintf("tile %s of %s%d", p.name(), rowName(g.rows()-1), g.cols()), "figures at the edges in "+edgeUnit(u))
	case g.cols() > 1:
		parts = append(parts, fmt.Sprintf("piece %s of %d", p.name(), g.cols()),
			fmt.Sprintf("from %s to %s", lettered(p.cell.Min.X, u), lettered(p.cell.Max.X, u)))
	}
	if d.Make != "" {
		parts = append(parts, d.Make)
	}
	return strings.Join(parts, "  \u00B7  ")
}

// lettered writes a distance in the builder's system.
func lettered(mm float64, u measure.System) string {
	if u == measure.Imperial {
		return measure.Sixteenths(mm)
	}
	return measure.MM(mm, 1) + " mm"
}
