package float

import (
	"slices"

	"ribwright/geometry"
)

// Wetted returns the skin under water of an upright boat, mm2: both sides and,
// where the hull ends square, the ends.
//
// How: between two stations the skin is ruled from each outline to the next at
// equal shares of their wet girths, corners included, and measured as triangles;
// a piece that dives out of the water runs to the point where the keel does.
// Accuracy: exact for plane faces; 0.03 % low for a smooth hull of 21 stations
// and 11 waterlines.
func (h *Hull) Wetted(p Plane) float64 {
	sum := 0.0
	var last *ring
	for i := range h.sections {
		next := h.ring(i, p)
		switch {
		case next != nil && last != nil:
			sum += strip(*last, *next)
		case next != nil && i > 0:
			sum += strip(h.tip(i-1, i, p), *next)
		case next == nil && last != nil:
			sum += strip(*last, h.tip(i-1, i, p))
		}
		last = next
	}
	for _, s := range []*section{h.sections[0], h.sections[len(h.sections)-1]} {
		sum += s.clip(0, 1, p.Water(s.x)).area
	}
	return sum
}

// ring is the wet half outline of one station, from the keel to the water, with
// the share of its girth at each point.
type ring struct {
	x     float64
	pts   []geometry.Point
	share []float64
}

// ring cuts the half outline of a station at the water; nil when it is dry.
func (h *Hull) ring(i int, p Plane) *ring {
	s := h.sections[i]
	z := p.Water(s.x)
	if s.keel().Y >= z {
		return nil
	}
	r := &ring{x: s.x, pts: make([]geometry.Point, 0, len(s.half))}
	for k, q := range s.half {
		if q.Y > z {
			o := s.half[k-1]
			r.pts = append(r.pts, o.Lerp(q, (z-o.Y)/(q.Y-o.Y)))
			break
		}
		r.pts = append(r.pts, q)
	}
	r.share = make([]float64, len(r.pts))
	for k := 1; k < len(r.pts); k++ {
		r.share[k] = r.share[k-1] + r.pts[k].Sub(r.pts[k-1]).Norm()
	}
	girth := r.share[len(r.share)-1]
	for k := range r.share {
		if girth > 0 {
			r.share[k] /= girth
		}
	}
	r.share[len(r.share)-1] = 1 // a ring without girth has all its points at one place
	return r
}

// tip is where the keel leaves the water between a dry and a wet station.
func (h *Hull) tip(i, j int, p Plane) ring {
	x := h.keelCrossing(i, j, p)
	at := geometry.Point{Y: p.Water(x)}
	return ring{x, []geometry.Point{at, at}, []float64{0, 1}}
}

// keelCrossing returns the station between two sections at which the straight
// line between their keel points meets the water.
func (h *Hull) keelCrossing(i, j int, p Plane) float64 {
	a, b := h.sections[i], h.sections[j]
	up := p.Up()
	ha := up.X*a.x + up.Z*a.keel().Y - p.Rise
	hb := up.X*b.x + up.Z*b.keel().Y - p.Rise
	if ha == hb {
		return a.x
	}
	return a.x + (b.x-a.x)*ha/(ha-hb)
}

func (r *ring) at(share float64) geometry.Point {
	k, _ := slices.BinarySearch(r.share, share)
	if k == 0 {
		return r.pts[0]
	}
	if k >= len(r.pts) {
		return r.pts[len(r.pts)-1]
	}
	span := r.share[k] - r.share[k-1]
	if span <= 0 {
		return r.pts[k]
	}
	return r.pts[k-1].Lerp(r.pts[k], (share-r.share[k-1])/span)
}

// strip returns the area of both sides between two rings, each quadrangle as
// the mean of its two ways of being cut in triangles.
func strip(a, b ring) float64 {
	shares := slices.Concat(a.share, b.share)
	slices.Sort(shares)
	sum := 0.0
	place := func(r *ring, t float64) geometry.Point3 {
		q := r.at(t)
		return geometry.Point3{X: r.x, Y: q.X, Z: q.Y}
	}
	a0, b0 := place(&a, 0), place(&b, 0)
	for _, t := range shares {
		a1, b1 := place(&a, t), place(&b, t)
		sum += triangle(a0, b0, a1) + triangle(b0, b1, a1) + triangle(a0, b0, b1) + triangle(a0, b1, a1)
		a0, b0 = a1, b1
	}
	return sum // two sides, two cuts
}

func triangle(a, b, c geometry.Point3) float64 {
	u, v := b.Sub(a), c.Sub(a)
	return geometry.Point3{X: u.Y*v.Z - u.Z*v.Y, Y: u.Z*v.X - u.X*v.Z, Z: u.X*v.Y - u.Y*v.X}.Norm() / 2
}
