package tile

import (
	"ribwright/geometry"
	"ribwright/layout"
)

// piece is one sheet-sized part of a pattern.
type piece struct {
	drawing  *layout.Drawing
	cell     geometry.Box // between joints, in the drawing's coordinates; drawn in to its lines where there is no joint
	frame    geometry.Box // the cell and its laps: what is shown
	col, row int          // from the left and from the top, 0 first
	grid     *grid
	turned   bool   // cut for a place in which it lies turned
	looks    []look // with its heading; the smallest first
	pattern  int    // the number of its drawing
}

// air is left round a pattern that has an edge of its own, mm.
const air = 0.8

// cut divides a drawing into pieces no larger than w by h mm, frames included,
// and leaves out those that would be empty. Pieces are even, or as long as can be.
func cut(d *layout.Drawing, w, h float64, long bool) []piece {
	b := d.Bounds()
	if b.Empty() {
		return nil
	}
	b = b.Grow(air)
	return cutAt(d, joints(b.Min.X, b.Max.X, w, d.Whole, d.Keep, long), joints(b.Min.Y, b.Max.Y, h, nil, d.KeepUp, long))
}

// cutAt divides a drawing at joints, its ends included.
func cutAt(d *layout.Drawing, x, y []float64) []piece {
	g := &grid{x: x, y: y, ink: inkOf(d)}
	g.settle()
	var out []piece
	for row := range g.rows() {
		for col := range g.cols() {
			if g.has(col, row) {
				out = append(out, piece{drawing: d, cell: g.cells[row][col], frame: g.frame(col, row), col: col, row: row, grid: g})
			}
		}
	}
	return out
}

// joints divides one direction; a joint costs a lap on both its sides.
func joints(lo, hi, room float64, must, should []layout.Span, long bool) []float64 {
	if hi-lo <= room+closeEnough {
		return []float64{lo, hi}
	}
	// The ends have no lap, so as much more may lie in the end pieces.
	out := Cuts(lo+lap, hi-lap, room-2*lap, must, should, long)
	out[0], out[len(out)-1] = lo, hi
	return out
}

func (p piece) name() string { return p.grid.tileName(p.col, p.row) }
