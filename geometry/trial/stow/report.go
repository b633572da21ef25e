package stow

import (
	"cmp"
	"fmt"
	"slices"
)

// Limits are what a nested stack must keep to; 0 for a limit not given.
type Limits struct {
	Roof float64 // kg, what a roof or rack may carry
	Door float64 // mm, the clear width of a door
}

// Report is a fleet, put into one another, with what would mend it.
type Report struct {
	Options  Options
	Limits   Limits
	Stack    *Stack
	Cures    [][]Cure // by pair; none where it nests
	Proposed []*Boat  // smaller boats by pair; nil where none is needed or asked for
	After    *Stack   // the fleet with the proposals, nil without any
}

// Plan nests a fleet and finds what would mend each pair that does not nest;
// with fit it proposes smaller boats as well, with the fleet in order of size, from
// the outermost inward.
//
// Errors: as for Nest and Refit.
func Plan(boats []*Boat, o Options, l Limits, fit bool) (*Report, error) {
	s, err := Nest(boats, o)
	if err != nil {
		return nil, err
	}
	if fit && !s.Nests {
		s = bySize(boats, o)
	}
	r := &Report{Options: o, Limits: l, Stack: s}
	for _, p := range s.Pairs {
		r.Cures = append(r.Cures, p.Cures(o))
	}
	if fit && !s.Nests {
		err = r.fit()
	}
	return r, err
}

// fit proposes boats for every pair that does not nest.
func (r *Report) fit() error {
	s := r.Stack
	lower := s.Boats[0]
	all := []*Boat{lower}
	for k, p := range s.Pairs {
		q := p
		if lower != p.Lower || p.Far != nil {
			q = Fit(lower, p.Upper, r.Options)
		}
		b, err := q.Refit(r.Options, fmt.Sprintf("%s nested %d", p.Upper.Title, k+2))
		if err != nil {
			return err
		}
		if b == p.Upper {
			r.Proposed = append(r.Proposed, nil)
		} else {
			r.Proposed = append(r.Proposed, b)
		}
		all, lower = append(all, b), b
	}
	r.After = inOrder(all, r.Options)
	return nil
}

// bySize stacks a fleet from the longest boat to the shortest, boats of one length
// by their beam.
func bySize(boats []*Boat, o Options) *Stack {
	sorted := slices.Clone(boats)
	slices.SortStableFunc(sorted, func(a, b *Boat) int {
		return cmp.Or(cmp.Compare(b.Length(), a.Length()), cmp.Compare(b.Outside.Half, a.Outside.Half))
	})
	return inOrder(sorted, o)
}

// Over returns by how much the stack is over the roof's load, kg; below zero
// what is left.
func (r *Report) Over() float64 { return r.Stack.Mass - r.Limits.Roof }

// Through reports whether the stack goes through the door carried level, and
// strapped together and turned on its side.
func (r *Report) Through() (level, sideways bool) {
	return r.Stack.Width <= r.Limits.Door, r.Stack.Height <= r.Limits.Door
}
