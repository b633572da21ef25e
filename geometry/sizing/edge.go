package sizing

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
)

// edge is one end of the boat with its outer edge as a row of points, which is
// quicker to ask than its arcs.
type edge struct {
	hull.End
	pts      []geometry.Point // from the toe up, as if it were the bow
	siding   float64          // of the stem, mm
	landings []geometry.Point // of the stringers on it
}

// edgeSteps leaves under half a millimetre between a forefoot of 230 mm and its
// chords.
const edgeSteps = 32

func newEdge(e hull.End, s design.Stem, d *design.Design) edge {
	out := edge{End: e, pts: make([]geometry.Point, edgeSteps+1), siding: float64(s.Siding),
		landings: e.Landings(d.Stringers.At, float64(d.Skin.Thickness+d.Stringers.Depth))}
	length := e.Outer.Length()
	for i := range out.pts {
		out.pts[i], _ = e.Point(length * float64(i) / edgeSteps)
	}
	return out
}

// at returns the distance of the outer edge from midship at the height z.
func (e edge) at(z float64) float64 {
	for i := 1; i < len(e.pts); i++ {
		if a, b := e.pts[i-1], e.pts[i]; z <= b.Y {
			return a.X + (b.X-a.X)*max(0, z-a.Y)/max(1e-9, b.Y-a.Y)
		}
	}
	return e.pts[edgeSteps].X
}

// over returns the height of the outer edge at the distance u from midship.
func (e edge) over(u float64) float64 {
	for i := 1; i < len(e.pts); i++ {
		if a, b := e.pts[i-1], e.pts[i]; u <= b.X {
			return a.Y + (b.Y-a.Y)*max(0, u-a.X)/max(1e-9, b.X-a.X)
		}
	}
	return e.pts[edgeSteps].Y
}
