package sizing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/sizing/formula"
)

// Goal is what a search is asked for.
type Goal struct {
	Targets []Target
	Free    []FreeValue
	Aim     Aim
}

// Obstacle is a limit that stands in the way of a better boat.
type Obstacle struct {
	Limit string
	Step  string // how far it is moved to see what that buys
	Gain  string // what the boat would gain
}

// Answer is a boat that meets every target.
type Answer struct {
	Boat      *Boat
	Tried     int // boats judged on the way
	Obstacles []Obstacle
	AtEdge    []string // free values at the end of their limits
}

// Clash is why no boat meets every target.
type Clash struct {
	Targets []Target // one that cannot be met, or two that cannot be met together
	Nearest string   // the boat that misses least
	Whole   bool     // targets are met between whole millimeters, by a boat that cannot be built so
}

// Error says so in a line.
func (c *Clash) Error() string {
	if c.Whole {
		return "nothing fits on whole millimeters; " + c.Nearest
	}
	switch len(c.Targets) {
	case 1:
		return fmt.Sprintf("nothing fits: %s cannot be met by moving what is free; %s", c.Targets[0], c.Nearest)
	case 2:
		return fmt.Sprintf("nothing fits: %s and %s cannot be met together; %s", c.Targets[0], c.Targets[1], c.Nearest)
	}
	return "nothing fits all targets together, though each two of them fit; " + c.Nearest
}

func (c *Clash) of(t ...Target) error { c.Targets = t; return c }

// tightenings is how often a target is tightened when the finished boat, rounded
// and floated as its cloth makes it, misses what the quick one met.
const tightenings = 6

// Solve finds the boat that meets every target, and the family's own checks, with
// the least of the aim, each free length at the last millimetre that still does. It
// leaves the case at that boat.
//
// Errors: *Clash when there is none; what Settle and Finish refuse.
func (c *Case) Solve(w Goal) (*Answer, error) {
	asks := func(name string) bool {
		return slices.ContainsFunc(w.Targets, func(t Target) bool { return t.Name == name })
	}
	c.Effort = w.Aim == Easiest || asks("effort")
	c.Wetted = c.Wetted || asks("wetted")
	if err := c.Settle(); err != nil {
		return nil, err
	}
	own := make([]float64, len(w.Free))
	for i, f := range w.Free {
		own[i] = math.Max(0, math.Min(1, (c.run.Number(f.Name)-f.Lo)/(f.Hi-f.Lo)))
	}
	targets, err := c.withRules(w.Targets)
	if err != nil {
		return nil, err
	}
	s := &search{c: c, free: w.Free, asked: targets, targets: slices.Clone(targets), aim: w.Aim, memory: map[string]candidate{}}
	best := s.best(own)
	if best.worst() > met {
		return nil, s.clash(best, own)
	}
	a := &Answer{Tried: len(s.memory)}
	best = s.finish(best, targets)
	least, err := s.stand(s.valuesOf(best))
	if err != nil {
		return nil, err
	}
	a.AtEdge = s.edges(least.values)
	s.explain(a, best)
	// The explaining moved the case; the boat's own values go back into it.
	if least, err = s.make(least.values); err != nil {
		return nil, err
	}
	a.Boat = least.boat
	return a, nil
}

// withRules adds the family's checks that compare sizes, where the targets do not
// say otherwise of the same value.
func (c *Case) withRules(targets []Target) ([]Target, error) {
	out := slices.Clone(targets)
	checks, err := c.run.Checks()
	if err != nil {
		return nil, err
	}
	for _, v := range checks {
		if v.Sized {
			out = append(out, Target{Name: v.Name, AtMost: v.AtMost, Limit: v.Limit, Dim: v.Dim, Rule: true})
		}
	}
	for _, t := range c.Trials {
		out = append(out, Target{Name: t.Name, Rule: true, late: true})
	}
	return out, nil
}

// finish looks for the boat that still meets every target when its parts are made:
// when it misses one, rounded to whole millimetres and floated as its cloth makes it,
// the target is tightened by what it misses and a little more. It goes no further from
// a boat that cannot be built: others beside it may be, and stand looks there.
func (s *search) finish(best candidate, targets []Target) candidate {
	for try := 0; ; try++ {
		if s.settle(best.x) != nil {
			return best
		}
		boat, err := s.c.Finish()
		if err != nil || try == tightenings || !s.tighten(targets, boat) {
			return best
		}
		s.again()
		if l := s.from(best.x); l.worst() <= met {
			best = l
		}
	}
}

// again forgets the boats seen, which the targets of then judged.
func (s *search) again() { s.memory, s.tried = map[string]candidate{}, 0 }

// tighten moves the limits that a finished boat misses; it reports whether any.
func (s *search) tighten(targets []Target, boat *Boat) (any bool) {
	const more = 2e-3 // half a millimetre of beam is worth that much of GM
	for i, t := range targets {
		if m, scale := s.judge(t, boat.Checks); m < 0 && !t.late {
			any = true
			s.targets[i].tighten((more - m) * scale)
		}
	}
	return any
}

// explain finds which targets stand in the way, and what one step more would buy.
func (s *search) explain(a *Answer, best candidate) {
	was := s.sizes(best)
	for i, t := range s.targets {
		if best.margins[i] > 5e-3 {
			continue
		}
		given := s.targets[i]
		s.targets[i].tighten(-t.Step())
		s.again()
		l := s.from(best.x)
		now := s.sizes(l)
		s.targets[i] = given
		if l.worst() > met || best.cost-l.cost < 2e-4 {
			continue
		}
		step := formula.ShowNumber(t.Step(), t.Dim)
		moved := step + " less"
		switch {
		case t.Rule:
			moved = "let off by " + step
		case t.AtMost:
			moved = step + " more"
		}
		a.Obstacles = append(a.Obstacles, Obstacle{s.asked[i].String(), moved, s.gain(was, now, best.cost-l.cost)})
	}
	s.memory = map[string]candidate{}
}

// edges names the free values that are at the end of their limits.
func (s *search) edges(values []float64) (out []string) {
	for i, f := range s.free {
		near := 0.9 * s.grain(i) // less than a step more would pass the end
		switch {
		case values[i] < f.Lo+near:
			out = append(out, f.Name+" is at its least, "+formula.ShowNumber(f.Lo, f.Dim))
		case values[i] > f.Hi-near:
			out = append(out, f.Name+" is at its most, "+formula.ShowNumber(f.Hi, f.Dim))
		}
	}
	return out
}

// sizes are length, beam and depth of a boat, mm; all 0 when it cannot be floated.
func (s *search) sizes(l candidate) (out [3]float64) {
	if s.settle(l.x) == nil {
		for i, n := range []string{"hull.length", "hull.beam", "hull.depth"} {
			out[i] = s.c.run.Number(n)
		}
	}
	return out
}

// gain says what has changed between two boats.
func (s *search) gain(was, now [3]float64, saved float64) string {
	var all []string
	for i, words := range [3][2]string{{"shorter", "longer"}, {"narrower", "wider"}, {"shallower", "deeper"}} {
		switch d := now[i] - was[i]; {
		case d >= 0.5:
			all = append(all, fmt.Sprintf("%.0f mm %s", d, words[1]))
		case d <= -0.5:
			all = append(all, fmt.Sprintf("%.0f mm %s", -d, words[0]))
		}
	}
	what := "less length x beam x depth"
	if s.aim == Easiest {
		what = "less effort"
	}
	return fmt.Sprintf("%s (%.1f %% %s)", strings.Join(all, ", "), 100*(1-math.Exp(-saved)), what)
}

// clash finds which target, or which two, cannot be met whatever is free: first
// one alone, then one with the family's checks and which of them, then two wishes
// with the checks kept.
func (s *search) clash(best candidate, own []float64) error {
	c := &Clash{Nearest: s.nearest(best)}
	if best.bad {
		return c
	}
	// The family's rules stand behind the wishes.
	first := slices.IndexFunc(s.asked, func(t Target) bool { return t.Rule })
	if first < 0 {
		first = len(s.asked)
	}
	wishes, rules := s.asked[:first], s.asked[first:]
	possible := func(some ...Target) bool {
		t := &search{c: s.c, free: s.free, targets: some, aim: s.aim, memory: map[string]candidate{}}
		if t.from(best.x).worst() <= met {
			return true
		}
		t.tried = 0
		return t.from(own).worst() <= met
	}
	kept := func(some ...Target) bool { return possible(append(some, rules...)...) }
	for _, t := range wishes {
		if !possible(t) {
			return c.of(t)
		}
		if kept(t) {
			continue
		}
		for _, r := range rules {
			if !possible(t, r) {
				return c.of(t, r)
			}
		}
	}
	for i, t := range wishes {
		for _, u := range wishes[i+1:] {
			if !kept(t, u) {
				return c.of(t, u)
			}
		}
	}
	return c
}

// nearest says how near the best boat comes.
func (s *search) nearest(best candidate) string {
	if best.bad {
		return "no boat within the limits can be drawn and floated"
	}
	if err := s.settle(best.x); err != nil {
		return err.Error()
	}
	checks, err := s.c.run.Checks()
	if err != nil {
		return err.Error()
	}
	var missed []string
	for i, t := range s.targets {
		if best.margins[i] < -met {
			missed = append(missed, s.missed(t, checks))
		}
	}
	return s.near(missed)
}

// near says what the boat that the case is at misses.
func (s *search) near(missed []string) string {
	r := s.c.run
	return fmt.Sprintf("the nearest is %s x %s x %s with %s",
		r.Shown("hull.length"), r.Shown("hull.beam"), r.Shown("hull.depth"), strings.Join(missed, ", "))
}

// missed says what the settled boat has where a target is missed.
func (s *search) missed(t Target, checks []formula.Check) string {
	if !t.Rule {
		return fmt.Sprintf("%s for %s", formula.ShowNumber(s.c.run.Number(t.Name), t.Dim), t)
	}
	return checkOf(checks, t.Name).Finding().String()
}
