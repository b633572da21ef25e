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
	cutting
	looks   []look // with its heading; the smallest first
	pattern int    // the number of its drawing
}

// air is left round a pattern that has an edge of its own, mm.
const air = 0.8

// cutting is how a pattern is divided.
type cutting struct {
	along, up wish
	turned    bool // for places in which its pieces lie turned
}

// cut divides a drawing into pieces no larger than w by h mm, frames included,
// and leaves out those that would be empty.
func cut(d *layout.Drawing, w, h float64, how cutting) []piece {
	k := inkOf(d)
	if k.box.Empty() {
		return nil
	}
	return cutAt(d, k, how, across(d, k.box, w, how.along), upward(d, k.box, h, how.up))
}

// across and upward are the joints of a drawing that fills a box, along x and up y.
func across(d *layout.Drawing, b geometry.Box, room float64, by wish) []float64 {
	return joints(b.Min.X-air, b.Max.X+air, room, d.Whole, d.Keep, by)
}

func upward(d *layout.Drawing, b geometry.Box, room float64, by wish) []float64 {
	return joints(b.Min.Y-air, b.Max.Y+air, room, nil, d.KeepUp, by)
}

// cutAt divides a drawing at joints, its ends included.
func cutAt(d *layout.Drawing, k ink, how cutting, x, y []float64) []piece {
	g := &grid{x: x, y: y, ink: k}
	g.settle()
	var out []piece
	for row := range g.rows() {
		for col := range g.cols() {
			if g.has(col, row) {
				out = append(out, piece{drawing: d, cell: g.cells[row][col], frame: g.frame(col, row), col: col, row: row, grid: g, cutting: how})
			}
		}
	}
	return out
}

// joints divides one direction; a joint costs a lap on both its sides.
func joints(lo, hi, room float64, must, should []layout.Span, by wish) []float64 {
	if hi-lo <= room+closeEnough {
		return []float64{lo, hi}
	}
	// The ends have no lap, so as much more may lie in the end pieces.
	out := Cuts(lo+lap, hi-lap, room-2*lap, must, should, by)
	out[0], out[len(out)-1] = lo, hi
	return out
}

func (p piece) name() string { return p.grid.tileName(p.col, p.row) }
