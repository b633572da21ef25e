package lines

import (
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// fine is how far a line may lie off its places, mm of drawing: a tenth of a dot on a screen
// that shows the boat 1000 dots long.
const fine = 0.02

// thinner makes lines of fewer places, one after the other, in one room.
type thinner struct {
	pts  []geometry.Point // of the line that is being made
	keep []bool
}

// room is for a line of so many places.
func (t *thinner) room(n int) []geometry.Point {
	t.pts = slices.Grow(t.pts[:0], n)[:n]
	return t.pts
}

// line goes through as few of the room's places as keep it true to fine: half of what a
// page is told of a boat are places that nobody sees. (D. Douglas and T. Peucker, The
// Canadian Cartographer, 1973.)
func (t *thinner) line() curve.Path {
	pts := t.pts
	t.keep = slices.Grow(t.keep[:0], len(pts))[:len(pts)]
	keep := t.keep
	clear(keep)
	for _, i := range []int{0, len(pts) - 1} {
		if i >= 0 && i < len(keep) {
			keep[i] = true
		}
	}
	split(pts, keep, 0, len(pts)-1)
	out := pts[:0]
	for i, p := range pts {
		if keep[i] {
			out = append(out, p)
		}
	}
	return curve.Polyline(out...)
}

// split keeps, of the places between two that are kept, the one that lies farthest from the
// line between them, and so on to both sides of it.
func split(pts []geometry.Point, keep []bool, from, to int) {
	far, at := fine, -1
	for i := from + 1; i < to; i++ {
		if d := pts[i].Off(pts[from], pts[to]); d > far {
			far, at = d, i
		}
	}
	if at < 0 {
		return
	}
	keep[at] = true
	split(pts, keep, from, at)
	split(pts, keep, at, to)
}
