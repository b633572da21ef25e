package lines

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// fine is how far a line may lie off its places, mm of drawing: a tenth of a dot on a screen
// that shows the boat 1000 dots long.
const fine = 0.02

// thinned is a line through as few of its places as keep it true to fine: half of what a
// page is told of a boat are places that nobody sees. (D. Douglas and T. Peucker, The
// Canadian Cartographer, 1973.)
func thinned(pts []geometry.Point) curve.Path {
	keep := make([]bool, len(pts))
	for _, i := range []int{0, len(pts) - 1} {
		if i >= 0 && i < len(keep) {
			keep[i] = true
		}
	}
	split(pts, keep, 0, len(pts)-1)
	var out []geometry.Point
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
		if d := beside(pts[i], pts[from], pts[to]); d > far {
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

// beside is how far a place lies from the stretch between two others.
func beside(p, a, b geometry.Point) float64 {
	along := b.Sub(a)
	s := along.Dot(along)
	if s == 0 {
		return p.Sub(a).Norm()
	}
	t := math.Min(1, math.Max(0, p.Sub(a).Dot(along)/s))
	return p.Sub(a.Lerp(b, t)).Norm()
}
