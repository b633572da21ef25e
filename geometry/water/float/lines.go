package float

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// The lines of a hull run straight from each of its stations to the next.

// around returns the stations on either side of x and the share of the way from the
// one to the other; beyond the hull the last two and the nearer end.
func (h *Hull) around(x float64) (a, b *section, share float64) {
	i := 1
	for i < len(h.sections)-1 && x > h.sections[i].x {
		i++
	}
	a, b = h.sections[i-1], h.sections[i]
	return a, b, math.Min(1, math.Max(0, (x-a.x)/(b.x-a.x)))
}

// Heights returns the heights of keel and sheer at a station, mm.
func (h *Hull) Heights(x float64) (keel, sheer float64) {
	a, b, t := h.around(x)
	between := func(p, q geometry.Point) float64 { return p.Y + t*(q.Y-p.Y) }
	return between(a.keel(), b.keel()), between(a.sheer(), b.sheer())
}

// Bottom returns the half-breadth of the keel's underside at a station, mm: straight from
// that of one station to that of the next, however far the keel rises between them.
func (h *Hull) Bottom(x float64) float64 {
	const up = 0.1 // mm over the lowest point: a flat underside is there at its whole breadth
	a, b, t := h.around(x)
	return (1-t)*a.breadth(a.keel().Y+up) + t*b.breadth(b.keel().Y+up)
}

// Side returns the half-breadth at a station and a height, mm: as HalfBreadth, but
// where the sheer rises from one station to the next the side runs straight on over
// the lower one to the sheer.
func (h *Hull) Side(x, z float64) float64 {
	a, b, t := h.around(x)
	low := math.Min(a.sheer().Y, b.sheer().Y) - 1e-6
	if z <= low {
		return h.HalfBreadth(x, z)
	}
	_, sheer := h.Heights(x)
	top := (1-t)*h.HalfBreadth(a.x, a.sheer().Y-1e-6) + t*h.HalfBreadth(b.x, b.sheer().Y-1e-6)
	if sheer-low < 1e-6 {
		return top
	}
	under := h.HalfBreadth(x, low)
	return under + (top-under)*math.Min(1, (z-low)/(sheer-low))
}

// ButtockHeight returns where the side at a station first is y from the middle, from
// the keel up, mm; false where it is narrower all the way. Good to 1e-6 mm.
func (h *Hull) ButtockHeight(x, y float64) (z float64, ok bool) {
	keel, sheer := h.Heights(x)
	const n = 400
	last := keel
	for i := 1; i <= n; i++ {
		z := keel + (sheer-keel)*float64(i)/n
		if h.Side(x, z) < y {
			last = z
			continue
		}
		return curve.Bisect(last, z, func(z float64) bool { return h.Side(x, z) < y }), true
	}
	return 0, false
}

// Half returns the half section at a station from the middle of the keel up to the
// sheer, X the half-breadth and Y the height, mm.
func (h *Hull) Half(x float64) []geometry.Point {
	keel, sheer := h.Heights(x)
	const n = 240
	out := []geometry.Point{{Y: keel}}
	for i := range n + 1 {
		z := keel + (sheer-keel)*float64(i)/n
		out = append(out, geometry.Pt(h.Side(x, z), z))
	}
	return out
}

// Beam returns the greatest breadth of the hull over the baseline, mm, read at 201
// stations and 61 heights.
func (h *Hull) Beam() float64 {
	aft, fore := h.Ends()
	wide := 0.0
	for i := range 201 {
		x := aft + (fore-aft)*float64(i)/200
		_, sheer := h.Heights(x)
		for j := range 61 {
			wide = math.Max(wide, h.Side(x, sheer*float64(j)/60))
		}
	}
	return 2 * wide
}

// WetOffsets reads the half-breadths under water: on every station that is wet
// and at both ends of the waterline, from aft forward, at even depths from the
// water down to the draft, mm.
func (h *Hull) WetOffsets(p Plane, lines int) (x, depth []float64, half [][]float64) {
	aft, fore := h.waterEnds(p)
	deep := 0.0
	for _, s := range h.sections {
		deep = math.Max(deep, p.Water(s.x)-s.low)
	}
	for j := range lines {
		depth = append(depth, deep*float64(j)/float64(lines-1))
	}
	const apart = 1.0 // mm: nearer to an end a station adds nothing but a steep step
	read := func(s *section, at float64) {
		row := make([]float64, lines)
		for j := range row {
			if s != nil {
				row[j] = s.breadth(p.Water(at) - depth[j])
			}
		}
		x, half = append(x, at), append(half, row)
	}
	end := func(at float64) {
		s := h.nearest(at)
		if s.x != at {
			s = nil
		}
		read(s, at)
	}
	end(aft)
	for _, s := range h.sections {
		if s.x > aft+apart && s.x < fore-apart {
			read(s, s.x)
		}
	}
	end(fore)
	return x, depth, half
}

// Profile returns the keel and the sheer of every station, mm: x, height of the
// keel, height of the sheer.
func (h *Hull) Profile() [][3]float64 {
	out := make([][3]float64, len(h.sections))
	for i, s := range h.sections {
		out[i] = [3]float64{s.x, s.keel().Y, s.sheer().Y}
	}
	return out
}

// Outline returns the half section at a station from the keel out to the sheer, X
// the half-breadth and Y the height: between two stations the one nearer, for
// drawing.
func (h *Hull) Outline(x float64) []geometry.Point {
	return slices.Clone(h.nearest(x).half)
}

func (h *Hull) nearest(x float64) *section {
	return slices.MinFunc(h.sections, func(a, b *section) int { return cmp.Compare(math.Abs(a.x-x), math.Abs(b.x-x)) })
}
