package stow

import (
	"sort"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// rail is one long corner of a bent gunwale as points in order of x.
type rail []geometry.Point3

// railStep is how far apart points on a gunwale are taken, mm. Between them a
// gunwale bent to 3 m leaves its chord by less than 0.02 mm.
const railStep = 15.0

// newRail follows the corner across mm outboard of the middle of the gunwale's
// underside and up mm above it, a little past both ends, which are cut across
// the boat.
func newRail(g *frame.Gunwale, across, up float64) rail {
	aft, fore := g.Line.Ends()
	aft, fore = aft-g.Width, fore+g.Width
	n := int((fore-aft)/railStep) + 1
	out := make(rail, n+1)
	for i := range out {
		out[i] = g.At(aft+(fore-aft)*float64(i)/float64(n), across, up)
	}
	return out
}

// at returns the corner at the station x.
func (r rail) at(x float64) geometry.Point3 {
	i := sort.Search(len(r), func(i int) bool { return r[i].X > x })
	i = min(max(i, 1), len(r)-1)
	a, b := r[i-1], r[i]
	return along(a, b, (x-a.X)/(b.X-a.X))
}

// flat returns it as a place in the section.
func (r rail) flat(x float64) geometry.Point {
	p := r.at(x)
	return geometry.Point{X: p.Y, Y: p.Z}
}
