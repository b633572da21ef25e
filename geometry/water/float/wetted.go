package float

import (
	"math"

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
	var last, next ring // empty where dry
	for i := range h.sections {
		next.cut(h.sections[i], p)
		switch {
		case next.wet() && last.wet():
			sum += strip(&last, &next)
		case next.wet() && i > 0:
			sum += strip(h.tip(i-1, i, p), &next)
		case !next.wet() && last.wet():
			sum += strip(&last, h.tip(i-1, i, p))
		}
		last, next = next, last
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

// wet reports whether anything of the station is under water.
func (r *ring) wet() bool { return len(r.pts) > 0 }

// cut cuts the half outline of a station at the water, in the room that the ring has.
func (r *ring) cut(s *section, p Plane) {
	r.x, r.pts, r.share = s.x, r.pts[:0], r.share[:0]
	z := p.Water(s.x)
	if s.keel().Y >= z {
		return
	}
	for k, q := range s.half {
		if q.Y > z {
			o := s.half[k-1]
			r.pts = append(r.pts, o.Lerp(q, (z-o.Y)/(q.Y-o.Y)))
			break
		}
		r.pts = append(r.pts, q)
	}
	girth := 0.0
	for k, q := range r.pts {
		if k > 0 {
			side := q.Sub(r.pts[k-1])
			girth += math.Sqrt(side.Dot(side))
		}
		r.share = append(r.share, girth)
	}
	for k := range r.share {
		if girth > 0 {
			r.share[k] /= girth
		}
	}
	r.share[len(r.share)-1] = 1 // a ring without girth has all its points at one place
}

// tip is where the keel leaves the water between a dry and a wet station.
func (h *Hull) tip(i, j int, p Plane) *ring {
	x := h.keelCrossing(i, j, p)
	at := geometry.Point{Y: p.Water(x)}
	return &ring{x, []geometry.Point{at, at}, []float64{0, 1}}
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

// at returns the place at a share, which is not over that of the point k and over that of
// the one before.
func (r *ring) at(k int, share float64) geometry.Point {
	if k == 0 || share == r.share[k] {
		return r.pts[k]
	}
	return r.pts[k-1].Lerp(r.pts[k], (share-r.share[k-1])/(r.share[k]-r.share[k-1]))
}

// after is the first point from k on whose share is over t; t is less than 1.
func (r *ring) after(k int, t float64) int {
	for r.share[k] <= t {
		k++
	}
	return k
}

// strip returns the area of both sides between two rings, each quadrangle as
// the mean of its two ways of being cut in triangles.
func strip(a, b *ring) float64 {
	sum, i, j, apart := 0.0, 0, 0, b.x-a.x
	a0, b0 := a.at(0, 0), b.at(0, 0)
	for { // from share to share of both, each once
		t := min(a.share[i], b.share[j])
		a1, b1 := a.at(i, t), b.at(j, t)
		sum += quadrangle(a1.Sub(a0), b1.Sub(b0), b0.Sub(a0), apart)
		if t >= 1 {
			return sum // two sides, two cuts
		}
		a0, b0 = a1, b1
		i, j = a.after(i, t), b.after(j, t)
	}
}

// quadrangle returns the area of the four triangles that two sides make, each with either end
// of the other: u in one section, v in another so far apart, whose start lies w from that of u.
func quadrangle(u, v, w geometry.Point, apart float64) float64 {
	uv, uw, vw := u.Cross(v), u.Cross(w), v.Cross(w)
	return (triangles(u, apart, uw, uw+uv) + triangles(v, apart, vw, vw+uv)) / 2
}

// triangles returns twice the area of two with one side in a section and the third corner in
// another, each given by the side's cross product with the way to it.
func triangles(side geometry.Point, apart, one, other float64) float64 {
	square := apart * apart * side.Dot(side)
	return math.Sqrt(square+one*one) + math.Sqrt(square+other*other)
}
