package skin

import (
	"math"

	"ribwright/geometry"
)

// atEnd draws the section past the last rib on one side, 1 forward and -1 aft: the
// keel or the stem's outer edge, the stringers that have not yet landed on the stem,
// the gunwale or the stem's head. The keel's edge is taken bare, the gunwale's face
// moved straight out: at the last rib that is up to 0.2 mm off the covered corners.
func (c *Cloth) atEnd(x, side float64) []geometry.Point {
	e, last := c.ends[0], 0
	if side > 0 {
		e, last = c.ends[1], len(c.ribs)-1
	}
	u, from := x*side, c.ribs[last].Station*side
	out := make([]geometry.Point, len(c.off[last]))
	low, top := c.boat.Keel(x), geometry.Point{X: e.Siding / 2, Y: e.Top}
	if u >= e.Tip {
		low, top.X = math.Min(low, e.Top), 0
	}
	for i := range out {
		out[i].Y = low
	}
	out[len(out)-2], out[len(out)-1] = top, top
	if u >= e.Tip {
		return out
	}
	share := math.Min(1, (u-from)/(e.Toe-from))
	edge := geometry.Point{X: c.ribs[last].Corners[1].X*(1-share) + e.Siding/2*share, Y: low}
	out[1] = edge
	for i, land := range e.Landings {
		out[2+2*i], out[3+2*i] = edge, edge
		if u >= land {
			continue
		}
		mid, fade := c.boat.Stringer(i, x), 1-(u-from)/(land-from)
		for k := 2 + 2*i; k < 4+2*i; k++ {
			p := mid.Add(c.off[last][k].Scale(fade))
			if p.X = math.Max(0, p.X); p.Y > low {
				out[k] = p
			}
		}
	}
	if u <= e.Gunwale {
		out := out[len(out)-2:]
		for k, p := range c.boat.Gunwale(x) {
			out[k] = p.Add(geometry.Point{X: c.boat.Thickness()})
		}
	}
	return out
}
