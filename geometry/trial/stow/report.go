package stow

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
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
		all, lower = append(all, b), b
		if b == p.Upper {
			b = nil
		}
		r.Proposed = append(r.Proposed, b)
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

// Name numbers a boat of the stack, for two may share a title.
func (s *Stack) Name(i int) string { return fmt.Sprintf("%d %s", i+1, s.Boats[i].Title) }

// Failures tells of every boat that does not stand in the one before it: what holds it
// up, and what would cure it. A length is lettered by long, a small room by fine.
func (r *Report) Failures(long, fine func(mm float64) string) finding.List {
	var out finding.List
	for i, p := range r.Stack.Pairs {
		if p.Nests {
			continue
		}
		f := finding.Finding{About: r.Stack.Name(i+1) + " in " + r.Stack.Name(i), Text: p.Held(long, fine), Standing: finding.Arithmetic, Verdict: finding.Missed}
		if p.Bound.Lower.Kind == CrossPiece {
			f.Cure = "take out " + p.Bound.Lower.Name
		} else {
			f.Cure = wording.Joined(r.Cures[i], ", or ", func(c Cure) string { return c.Words(long) })
		}
		if f.Cure == "" && p.Far == nil {
			f.Text += ". No change of one beam, flare, depth or length alone cures it; a smaller boat may"
		}
		out = append(out, f)
	}
	return out
}

// Held says what keeps the upper boat of a pair that does not nest off its pads, and by
// how much.
func (p *Pair) Held(long, fine func(mm float64) string) string {
	b := p.Bound
	if p.Far != nil {
		return fmt.Sprintf("rests on %s, farther down: its %s on the %s, %s higher than its seat", p.Far.Title, b.Upper.Name, b.Lower.Name, long(p.Short))
	}
	what := fmt.Sprintf("lacks %s a side", fine(p.Short))
	if k := b.Lower.Kind; k == Stem || k == Breasthook || k == CrossPiece || k == Gunwale && b.Upper.Kind == Keel {
		what = "rides " + long(p.Short) + " up"
	}
	overlap := ""
	if b.Room < 0 {
		overlap = fmt.Sprintf(" (%s of it overlap)", fine(-b.Room))
	}
	return fmt.Sprintf("%s at station %s, %s against %s%s: it lies %s over its pads", what, long(b.At.X), b.Upper.Name, b.Lower.Name, overlap, long(p.Lift()))
}

// Words say the change, as "Lake with 5 mm less beam".
func (c Cure) Words(long func(mm float64) string) string {
	by, word := long(math.Abs(c.By)), "more"
	if c.By < 0 {
		word = "less"
	}
	if c.Measure == Flare {
		return fmt.Sprintf("%s with %.3g deg %s flare all along", c.Boat.Title, math.Abs(c.By)*180/math.Pi, word)
	}
	return fmt.Sprintf("%s with %s %s %s", c.Boat.Title, by, word, c.Measure)
}
