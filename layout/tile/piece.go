package tile

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// piece is one sheet-sized part of a pattern.
type piece struct {
	drawing  *layout.Drawing
	cell     geometry.Box // between joints, in the drawing's coordinates; drawn in to its lines where there is no joint
	frame    geometry.Box // the cell and its laps: what is shown
	col, row int          // from the left and from the top, 0 first
	grid     *grid
}

// air is left round a pattern that has an edge of its own, mm.
const air = 2.0

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
				out = append(out, piece{d, g.cells[row][col], g.frame(col, row), col, row, g})
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

// wide returns the room that a piece takes beside others, so that the first
// words of its caption have theirs; at most the whole room.
func (p piece) wide(room float64) float64 {
	need := lettering.Width(p.shortCaption(), small)
	return max(p.frame.W(), min(need, room))
}

// shortCaption is what a piece must be known by.
func (p piece) shortCaption() string {
	d, g := p.drawing, p.grid
	switch {
	case g.rows() > 1:
		return fmt.Sprintf("%s%stile %s of %s%d", d.Title, dot, p.name(), rowName(g.rows()-1), g.cols())
	case g.cols() > 1:
		return fmt.Sprintf("%s%spiece %s of %d", d.Title, dot, p.name(), g.cols())
	case d.Make != "":
		return d.Title + dot + d.Make
	}
	return d.Title
}

// dot parts the words of a caption.
const dot = "  \u00B7  "

func (p piece) caption(u measure.System) string {
	parts := []string{p.shortCaption()}
	switch g := p.grid; {
	case g.rows() > 1:
		unit := map[measure.System]string{measure.Metric: "mm", measure.Imperial: "inches"}[u]
		parts = append(parts, "figures at the edges in "+unit, p.drawing.Make)
	case g.cols() > 1:
		parts = append(parts, fmt.Sprintf("from %s to %s", u.Tape(p.cell.Min.X), u.Tape(p.cell.Max.X)), p.drawing.Make)
	}
	if parts[len(parts)-1] == "" {
		parts = parts[:len(parts)-1]
	}
	return strings.Join(parts, dot)
}
