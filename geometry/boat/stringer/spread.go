package stringer

import "math"

// lot is a run of neighboring ends that lie as close as they may.
type lot struct {
	energy []func(at float64) float64 // of each, by its place along the stem, mm
	first  float64                    // place of the first, less the gaps of all ends before it, mm
}

// spread pushes ends apart that are nearer than a gap, to where the energy of all of
// them together is least. The lots begin as single ends, from the keel up, each at its
// own least; taking off the gaps of all ends before it, every lot must lie between lo
// and hi and above the one before.
//
// How: ends that crowd are joined to a lot that moves as one, until no lots crowd. For
// energies with one hollow each that is the least of the whole.
//
// Source: pooling of adjacent violators, R. E. Barlow and others, Statistical Inference
// under Order Restrictions, 1972; from memory.
func spread(lots []lot, lo, hi, gap float64) []lot {
	var out []lot
	before := 0 // ends before the last lot of out
	for _, l := range lots {
		out = append(out, l)
		for k := len(out) - 1; k > 0 && out[k].first < out[k-1].first; k-- {
			a, b := out[k-1], out[k]
			before = 0
			for _, o := range out[:k-1] {
				before += len(o.energy)
			}
			all := append(append([]func(float64) float64{}, a.energy...), b.energy...)
			together := func(first float64) float64 {
				sum := 0.0
				for i, u := range all {
					sum += u(first + gap*float64(before+i))
				}
				return sum
			}
			out = append(out[:k-1], lot{all, least(together, lo, hi)})
		}
	}
	return out
}

// least returns the place between lo and hi where a smooth f is least.
//
// How: the lowest of nine even places, then the lowest point of the parabola through
// three places near it, again and again. Accuracy: far under 0.01 mm where f bends
// like an energy.
func least(f func(float64) float64, lo, hi float64) float64 {
	const places = 8
	best, low := lo, math.Inf(1)
	for i := range places + 1 {
		at := lo + (hi-lo)*float64(i)/places
		if u := f(at); u < low {
			best, low = at, u
		}
	}
	room := (hi - lo) / places
	return refine(f, best, math.Max(lo, best-room), math.Min(hi, best+room))
}

// refine steps from a place near the least of f to it, and stays between lo and hi.
func refine(f func(float64) float64, at, lo, hi float64) float64 {
	const (
		near  = 1.0 // mm, over which f is nearly a parabola
		steps = 8
		close = 1e-3 // mm
	)
	for range steps {
		u, a, b := f(at), f(at-near), f(at+near)
		step := -math.Copysign(hi-lo, b-a)
		if bend := a - 2*u + b; bend > 0 {
			step = (a - b) / 2 / bend * near
		}
		next := math.Min(math.Max(at+step, lo), hi)
		if math.Abs(next-at) < close {
			return next
		}
		at = next
	}
	return at
}
