package float

import (
	"math"

	"ribwright/geometry"
)

// WetOffsets reads the half-breadths under water: on every station that is wet
// and at both ends of the waterline, from aft forward, at even depths from the
// water down to the draft, mm.
func (h *Hull) WetOffsets(p Plane, lines int) (x, depth []float64, half [][]float64) {
	aft, fore := h.waterEnds(p)
	deep := 0.0
	for i := range h.sections {
		deep = math.Max(deep, p.Water(h.sections[i].x)-h.sections[i].low)
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
	ends := func(at float64) *section {
		for i := range h.sections {
			if h.sections[i].x == at {
				return &h.sections[i]
			}
		}
		return nil
	}
	read(ends(aft), aft)
	for i := range h.sections {
		if s := &h.sections[i]; s.x > aft+apart && s.x < fore-apart {
			read(s, s.x)
		}
	}
	read(ends(fore), fore)
	return x, depth, half
}

// Profile returns the keel and the sheer of every station, mm: x, height of the
// keel, height of the sheer.
func (h *Hull) Profile() [][3]float64 {
	out := make([][3]float64, len(h.sections))
	for i := range h.sections {
		s := &h.sections[i]
		out[i] = [3]float64{s.x, s.keel().Y, s.sheer().Y}
	}
	return out
}

// Outline returns the half section at a station from the keel out to the sheer, X
// the half-breadth and Y the height: between two stations the one nearer, for
// drawing.
func (h *Hull) Outline(x float64) []geometry.Point {
	best := &h.sections[0]
	for i := range h.sections {
		if s := &h.sections[i]; math.Abs(s.x-x) < math.Abs(best.x-x) {
			best = s
		}
	}
	return append([]geometry.Point(nil), best.half...)
}
