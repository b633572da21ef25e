package handwork

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// judge finds the outcome that an error moves most, and its share of the spread there.
func (e *Error) judge(moves, all []Spread, outcomes []Outcome) {
	e.Moves = make([]Spread, 0, len(outcomes))
	for k, o := range outcomes {
		e.Moves = append(e.Moves, within(moves[k]))
		if w := e.Moves[k].First / o.Matters; w > e.weight*(1+1e-9) {
			e.Hits, e.weight = k, w
		}
	}
	if all[e.Hits].First > 0 {
		e.Share = moves[e.Hits].First / all[e.Hits].First
	}
}

// rank puts the worst errors first and numbers them; those that do alike stand by their
// names.
func rank(all []Error) {
	order := func(a, b *Error) int {
		if math.Abs(a.weight-b.weight) > 1e-9*math.Max(a.weight, b.weight) {
			return cmp.Compare(b.weight, a.weight)
		}
		return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.From, b.From))
	}
	sort.SliceStable(all, func(i, j int) bool { return order(&all[i], &all[j]) < 0 })
	for i := range all {
		all[i].Rank = i + 1
	}
}

// most is how many errors are ranked for a person.
const most = 10

// Ranked returns the ten worst errors, the worst first, whether they matter or not; all
// where there are fewer.
func (r *Report) Ranked() []Error { return r.Errors[:min(most, len(r.Errors))] }

// Rest returns the errors past the tenth.
func (r *Report) Rest() []Error { return r.Errors[len(r.Ranked()):] }

// Measure is what an outcome is one of.
type Measure string

// The measures, in the order of the outcomes.
const (
	Beam    Measure = "beam"
	Depth   Measure = "depth"
	Rocker  Measure = "rocker"
	Trim    Measure = "trim"
	GM      Measure = "GM"
	Balance Measure = "balance" // beam when all cross pieces come out
)

// Measures lists those of the outcomes, each once.
func (r *Report) Measures() []Measure {
	var out []Measure
	for _, o := range r.Outcomes {
		if !slices.Contains(out, o.Of) {
			out = append(out, o.Of)
		}
	}
	return out
}

// Moved returns how far a first builder's usual error moves a measure, mm, one standard
// deviation as the error itself: the outcome of it that is moved most.
func (r *Report) Moved(e Error, m Measure) float64 {
	far := 0.0
	for k, o := range r.Outcomes {
		if o.Of == m {
			far = math.Max(far, e.Moves[k].First/Within)
		}
	}
	return far
}
