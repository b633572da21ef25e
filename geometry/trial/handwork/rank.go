package handwork

import (
	"cmp"
	"math"
	"slices"
)

// judge finds the outcome that an error moves most, and its share of the spread there.
func (e *Error) judge(moves, all []Spread, outcomes []Outcome) {
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

// rank puts the errors that matter first; those that do alike stand by their names.
func rank(all []Error) {
	slices.SortStableFunc(all, func(a, b Error) int {
		if math.Abs(a.weight-b.weight) > 1e-9*math.Max(a.weight, b.weight) {
			return cmp.Compare(b.weight, a.weight)
		}
		return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.From, b.From))
	})
}

// most is how many errors are ranked.
const most = 10

// Ranked returns the errors that matter, at most ten, the worst first.
func (r *Report) Ranked() []Error {
	n := 0
	for n < min(most, len(r.Errors)) && r.Errors[n].Matters() {
		n++
	}
	return r.Errors[:n]
}

// Rest returns the errors that do not matter, and those past the tenth.
func (r *Report) Rest() []Error { return r.Errors[len(r.Ranked()):] }
