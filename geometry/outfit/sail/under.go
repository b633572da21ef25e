package sail

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// Profile is what resists sideways under water, seen from the side.
type Profile struct {
	Area   float64        // m2
	Center geometry.Point // X the station, Y the height over the baseline, mm
}

// profile adds up the hull's under water, in straight lines between stations.
func profile(h *float.Hull, p float.Plane) Profile {
	var area, mx, mz float64
	rows := h.Profile()
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		ta, tb := math.Max(0, p.Water(a[0])-a[1]), math.Max(0, p.Water(b[0])-b[1])
		w := b[0] - a[0]
		part := w * (ta + tb) / 2
		if part == 0 {
			continue
		}
		area += part
		mx += w * (a[0]*(2*ta+tb) + b[0]*(ta+2*tb)) / 6
		mid := (p.Water(a[0]) + p.Water(b[0])) / 2
		mz += part*mid - w*(ta*ta+ta*tb+tb*tb)/6
	}
	return Profile{area / 1e6, geometry.Point{X: mx / area, Y: mz / area}}
}

// with adds a second piece.
func (p Profile) with(q Profile) Profile {
	a := p.Area + q.Area
	if a == 0 {
		return p
	}
	return Profile{a, p.Center.Scale(p.Area / a).Add(q.Center.Scale(q.Area / a))}
}

// Board is the leeboard.
type Board struct {
	Area     float64    // under water, m2
	Chord    float64    // mm
	Deep     float64    // under water, mm
	Long     float64    // whole, mm
	At       float64    // station of its middle, mm, for the middle of the lead
	Range    [2]float64 // stations for the greatest and the least lead, mm
	Depth    float64    // of its middle under the water, mm
	Thick    float64    // mm
	Load     float64    // N, sideways
	Moment   float64    // N m, at the gunwale
	Cheeks   float64    // N/mm2, in both cheeks beside the bar's hole
	Working  float64    // N/mm2, that their wood is asked to carry
	Pinch    float64    // N, the couple on the bracket over the gunwales' width
	OfSail   float64    // its area over the sail's, %
	AllUnder float64    // all the profile under water over the sail's area, %
}

// The leeboard: its share of the sail's area (4 is seen, a board that pierces the
// surface needs 5 to 8; forum grade), its length over its chord, and the lead of the
// sail's center before the lateral resistance as a share of the waterline (books: 5
// to 12 for small boats, 4 to 17 over all; from memory).
const (
	boardShare  = 0.06
	boardAspect = 2.6
	leadLow     = 0.05
	leadHigh    = 0.10
)

// place returns the station of a piece of area b that brings the middle of the
// resistance of hull and board to a station.
func place(hull Profile, b, want float64) float64 {
	return (want*(hull.Area+b) - hull.Area*hull.Center.X) / b
}
