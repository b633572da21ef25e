package sizing

import (
	"math"
	"slices"
)

// half is a half space: the sum of a[i] x[i] is at most b.
type half struct {
	a []float64
	b float64
}

// linear finds the x in the box [lo, hi] with the least c.x inside all half
// spaces, and whether there is one.
//
// How: half spaces are taken one by one; where the best point so far is outside
// the next, the new best lies on its border, which is the same problem with one
// unknown less. The order is that given, so the answer is always the same.
//
// Source: R. Seidel, "Small-dimensional linear programming and convex hulls made
// easy", Discrete and Computational Geometry 6, 1991.
// Cost: for the six unknowns and some forty half spaces met here, well under a
// millisecond.
func linear(c []float64, in []half, lo, hi []float64) ([]float64, bool) {
	x := slices.Clone(lo)
	for i := range x {
		if c[i] < 0 {
			x[i] = hi[i]
		}
	}
	for k, h := range in {
		if dot(h.a, x) <= h.b+slack(h) {
			continue
		}
		var ok bool
		if x, ok = onBorder(c, in[:k], h, lo, hi); !ok {
			return nil, false
		}
	}
	return x, true
}

// slack is the rounding that does not count.
func slack(h half) float64 {
	s := 1.0
	for _, v := range h.a {
		s += math.Abs(v)
	}
	return 1e-9 * s
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i := range a {
		s += a[i] * b[i]
	}
	return s
}

// onBorder solves the problem on the border of h, by taking out the unknown that
// h leans on most.
func onBorder(c []float64, before []half, h half, lo, hi []float64) ([]float64, bool) {
	out := 0
	for i, v := range h.a {
		if math.Abs(v) > math.Abs(h.a[out]) {
			out = i
		}
	}
	if math.Abs(h.a[out]) < 1e-12 {
		return nil, false
	}
	if len(c) == 1 {
		return atPoint(h.b/h.a[0], before, lo[0], hi[0])
	}
	// x[out] = (h.b - the others) / h.a[out]
	reduce := func(a []float64, b float64) half {
		r := half{b: b - a[out]*h.b/h.a[out]}
		for i := range a {
			if i != out {
				r.a = append(r.a, a[i]-a[out]*h.a[i]/h.a[out])
			}
		}
		return r
	}
	box := make([]float64, len(c))
	box[out] = 1
	upper := reduce(box, hi[out])
	box[out] = -1
	lower := reduce(box, -lo[out])
	rest := []half{upper, lower}
	for _, g := range before {
		rest = append(rest, reduce(g.a, g.b))
	}
	y, ok := linear(reduce(c, 0).a, rest, without(lo, out), without(hi, out))
	if !ok {
		return nil, false
	}
	x, sum, j := make([]float64, len(c)), h.b, 0
	for i := range x {
		if i != out {
			x[i] = y[j]
			sum -= h.a[i] * y[j]
			j++
		}
	}
	x[out] = sum / h.a[out]
	return x, true
}

// atPoint is the problem in one unknown whose border is a point.
func atPoint(x float64, before []half, lo, hi float64) ([]float64, bool) {
	if x < lo-1e-9 || x > hi+1e-9 {
		return nil, false
	}
	for _, g := range before {
		if g.a[0]*x > g.b+slack(g) {
			return nil, false
		}
	}
	return []float64{x}, true
}

func without(v []float64, i int) []float64 { return slices.Delete(slices.Clone(v), i, i+1) }
