package eyes

import (
	"math"

	"ribwright/render/rendertest"
)

// Rule draws lines of a weight in mm by the distance of each dot from them. It
// knows no file format and shares nothing with what draws the sheets. Loose ends
// are square, corners round.
func (r *Raster) Rule(lines []Line, weight float64) {
	for _, l := range lines {
		pieces := l.pieces()
		for i, piece := range pieces {
			r.inkPiece(piece[0], piece[1], weight, !l.Closed && i == 0, !l.Closed && i == len(pieces)-1)
		}
	}
}

// inkPiece draws one straight piece; its first or its last end may be loose.
func (r *Raster) inkPiece(a, b rendertest.Point, weight float64, first, last bool) {
	around := rendertest.Around(a, b).Grow(weight)
	for row := int(math.Floor(rowOf(around.Y1))); row <= int(math.Ceil(rowOf(around.Y0))); row++ {
		for col := int(math.Floor(colOf(around.X0))); col <= int(math.Ceil(colOf(around.X1))); col++ {
			i, j := col-r.Left, row-r.Top
			if i < 0 || j < 0 || i >= r.W || j >= r.H {
				continue
			}
			at := rendertest.Point{X: gridX(float64(col) + 0.5), Y: gridY(float64(row) + 0.5)}
			off, along := fromPiece(at, a, b)
			if first && along < 0 || last && along > 1 {
				continue
			}
			share := (weight/2-off)*perMM + 0.5
			ink := uint8(255 * math.Min(1, math.Max(0, share)))
			r.Ink[j*r.W+i] = max(r.Ink[j*r.W+i], ink)
		}
	}
}

// fromPiece returns the distance of a point from a straight piece, mm, and how
// far along the piece it lies: 0 at a, 1 at b, less or more beyond them.
func fromPiece(p, a, b rendertest.Point) (off, along float64) {
	dx, dy := b.X-a.X, b.Y-a.Y
	along = ((p.X-a.X)*dx + (p.Y-a.Y)*dy) / (dx*dx + dy*dy)
	t := math.Min(1, math.Max(0, along))
	return p.To(rendertest.Point{X: a.X + t*dx, Y: a.Y + t*dy}), along
}
