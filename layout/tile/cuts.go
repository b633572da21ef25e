package tile

import (
	"math"

	"ribwright/layout"
)

// lap is how far each tile shows its neighbour's part beyond the joint, mm:
// room for a whole registration cross and a strip to glue on.
const lap = 7.0

// closeEnough is what a length may exceed a sheet by and still count as fitting,
// mm: inches turned to millimetres must not cost an empty row of tiles.
const closeEnough = 0.01

// Cuts divides the stretch from lo to hi into as few pieces as fit within most,
// and returns the joints, both ends included. Pieces are even, unless a joint
// would fall into one of the spans to keep whole: then it moves to the nearest
// place outside, if there is one within reach.
//
// Requires most > 0; hi <= lo gives one piece. All in mm.
func Cuts(lo, hi, most float64, keep []layout.Span) []float64 {
	out := []float64{lo}
	left := pieces(hi-lo, most)
	for ; left > 1; left-- {
		from := out[len(out)-1]
		ideal := from + (hi-from)/float64(left)
		// The rest must still fit into the pieces that are left.
		least := math.Max(from+most*0.2, hi-float64(left-1)*most)
		out = append(out, nearestClear(ideal, least, from+most, keep))
	}
	return append(out, hi)
}

func pieces(length, most float64) int {
	return max(1, int(math.Ceil((length-closeEnough)/most)))
}

// nearestClear returns the place nearest to ideal within [lo, hi] that lies in
// no span; ideal itself when there is none.
func nearestClear(ideal, lo, hi float64, keep []layout.Span) float64 {
	best := math.Inf(1)
	try := func(x float64) {
		if x < lo || x > hi || math.Abs(x-ideal) >= math.Abs(best-ideal) {
			return
		}
		for _, s := range keep {
			if s.From < x && x < s.To {
				return
			}
		}
		best = x
	}
	try(ideal)
	for _, s := range keep {
		try(s.From)
		try(s.To)
	}
	if math.IsInf(best, 1) {
		return math.Min(math.Max(ideal, lo), hi)
	}
	return best
}
