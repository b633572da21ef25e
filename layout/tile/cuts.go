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

// Cuts divides the stretch from lo to hi into pieces that fit within most, and
// returns the joints, both ends included. Pieces are as few and as even as can
// be. No joint falls into a span that must stay whole, even at the price of one
// piece more; a span that should stay whole is only stepped round when that
// costs nothing. Spans that leave no way at all are cut like any other place.
//
// Requires most > 0; hi <= lo gives one piece. All in mm.
func Cuts(lo, hi, most float64, must, should []layout.Span) []float64 {
	n := pieces(hi-lo, most)
	for _, count := range []int{n, n + 1} {
		if least, ok := earliest(lo, hi, most, count, must); ok {
			return joinAt(lo, hi, most, least, must, should)
		}
	}
	least, _ := earliest(lo, hi, most, n, nil)
	return joinAt(lo, hi, most, least, nil, should)
}

func pieces(length, most float64) int {
	return max(1, int(math.Ceil((length-closeEnough)/most)))
}

// earliest returns for every joint between count pieces the first clear place
// from which the rest still fits, and whether the first piece fits too.
func earliest(lo, hi, most float64, count int, must []layout.Span) ([]float64, bool) {
	out := make([]float64, count-1)
	next := hi
	for k := count - 2; k >= 0; k-- {
		x, ok := clearFrom(next-most-closeEnough/float64(count), must)
		if !ok || x >= next {
			return nil, false
		}
		out[k], next = x, x
	}
	return out, next-lo <= most+closeEnough
}

// clearFrom returns the first place at or after x that lies in no span. Spans
// may overlap and stand in any order.
func clearFrom(x float64, spans []layout.Span) (float64, bool) {
	for range len(spans) + 1 {
		s := holder(x, spans)
		if s == nil {
			return x, true
		}
		x = s.To
	}
	return x, false
}

// holder returns a span that x lies inside of, nil when none does.
func holder(x float64, spans []layout.Span) *layout.Span {
	for i, s := range spans {
		if s.From < x && x < s.To {
			return &spans[i]
		}
	}
	return nil
}

// joinAt places the joints one by one, each as near to an even share of what is
// left as its limits and the spans allow.
func joinAt(lo, hi, most float64, least []float64, must, should []layout.Span) []float64 {
	out := []float64{lo}
	all := append(append([]layout.Span(nil), must...), should...)
	for k, first := range least {
		from := out[len(out)-1]
		ideal := from + (hi-from)/float64(len(least)-k+1)
		low, high := math.Max(first, from+most*0.02), math.Min(from+most, hi)
		low = math.Min(low, high)
		x, ok := nearestClear(ideal, low, high, all)
		if !ok {
			if x, ok = nearestClear(ideal, low, high, must); !ok {
				x = math.Min(math.Max(ideal, low), high)
			}
		}
		out = append(out, x)
	}
	return append(out, hi)
}

// nearestClear returns the place nearest to ideal within [lo, hi] that lies in
// no span, and whether there is one.
func nearestClear(ideal, lo, hi float64, spans []layout.Span) (float64, bool) {
	best := math.Inf(1)
	try := func(x float64) {
		if x >= lo && x <= hi && math.Abs(x-ideal) < math.Abs(best-ideal) && holder(x, spans) == nil {
			best = x
		}
	}
	try(math.Min(math.Max(ideal, lo), hi))
	try(lo)
	for _, s := range spans {
		try(s.From)
		try(s.To)
	}
	return best, !math.IsInf(best, 1)
}
