package fair

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
)

// span is the range of one parameter.
type span struct{ lo, hi float64 }

// least finds the parameters of least cost, each kept inside its span, from the
// most promising of several starts. The cost may be infinite where nothing can be
// made.
//
// How: the simplex of Nelder and Mead on parameters as shares of their spans,
// folded back at the ends. Deterministic; bounded by the steps.
func least(spans []span, starts [][]float64, cost func([]float64) float64) ([]float64, float64) {
	real := func(u []float64) []float64 {
		out := make([]float64, len(u))
		for i := range u {
			out[i] = spans[i].lo + (spans[i].hi-spans[i].lo)*folded(u[i])
		}
		return out
	}
	var best []float64
	lowest := math.Inf(1)
	for _, s := range promising(starts, cost) {
		u := make([]float64, len(s))
		for i := range s {
			u[i] = (s[i] - spans[i].lo) / (spans[i].hi - spans[i].lo)
		}
		problem := optimize.Problem{Func: func(u []float64) float64 {
			c := cost(real(u))
			if math.IsNaN(c) || c > 1e12 {
				return 1e12
			}
			return c
		}}
		settings := &optimize.Settings{MajorIterations: 250, FuncEvaluations: 900, Concurrent: 1,
			Converger: &optimize.FunctionConverge{Absolute: 1e-6, Relative: 1e-6, Iterations: 60}}
		r, err := optimize.Minimize(problem, u, settings, &optimize.NelderMead{SimplexSize: 0.08})
		if r == nil || err != nil && r.X == nil {
			continue
		}
		if r.F < lowest {
			lowest, best = r.F, real(r.X)
		}
	}
	return best, lowest
}

// descents is how many starts are followed down.
const descents = 4

// promising sorts starts by their cost and keeps the cheapest.
func promising(starts [][]float64, cost func([]float64) float64) [][]float64 {
	type priced struct {
		at []float64
		c  float64
	}
	all := make([]priced, len(starts))
	for i, s := range starts {
		all[i] = priced{s, cost(s)}
	}
	slices.SortStableFunc(all, func(a, b priced) int { return cmp.Compare(a.c, b.c) })
	var out [][]float64
	for _, p := range all[:min(descents, len(all))] {
		out = append(out, p.at)
	}
	return out
}

// folded brings a number back into 0 to 1 as a mirror at each end would.
func folded(v float64) float64 {
	v = math.Abs(math.Mod(v, 2))
	if v > 1 {
		return 2 - v
	}
	return v
}
