package sizing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
)

// Target is something that a boat is to meet.
type Target struct {
	Name   string
	AtMost bool // the value may be at most the limit; else at least
	Limit  float64
	Dim    formula.Dim
	Rule   bool    // a check of the family, not a wish; its limit may change with the boat
	ease   float64 // by how much a rule is let off
	late   bool    // a trial of the finished boat: a sketch says nothing of it
}

// String writes the target as it is given: draft<=110 mm.
func (t Target) String() string {
	if t.Rule {
		return "the family's check " + t.Name
	}
	sign := ">="
	if t.AtMost {
		sign = "<="
	}
	limit := formula.ShowNumber(t.Limit, t.Dim)
	if t.Dim == formula.Length {
		limit = strings.TrimSuffix(measure.MM(t.Limit, 1), ".0") + " mm"
	}
	return t.Name + sign + limit
}

// margin is how far a value is on the right side of the limit, as a share of it.
func (t Target) margin(v float64) float64 {
	m := v - t.Limit
	if t.AtMost {
		m = -m
	}
	return m / t.scale()
}

// scale is what margins are measured in.
func (t Target) scale() float64 { return math.Max(math.Abs(t.Limit), 0.1*t.Step()) }

// tighten makes a target harder to meet; below 0, easier.
func (t *Target) tighten(by float64) {
	switch {
	case t.Rule:
		t.ease -= by
	case t.AtMost:
		t.Limit -= by
	default:
		t.Limit += by
	}
}

// Step is how far a limit is moved to see what that would buy: 10 mm, 1 kg, half
// a degree, 1 N, else a hundredth.
func (t Target) Step() float64 {
	if step, ok := limitSteps[t.Dim]; ok {
		return step
	}
	return math.Max(0.01*math.Abs(t.Limit), 0.001)
}

var limitSteps = map[formula.Dim]float64{formula.Length: 10, formula.Mass: 1, formula.Angle: 0.5 * math.Pi / 180, formula.Force: 1000}

// ParseTarget reads a target: "draft<=110mm", "freeboard >= 8 in". The name is any
// number of the family, or found afloat.
func ParseTarget(text string, p *formula.Program) (Target, error) {
	for _, sign := range []string{"<=", ">="} {
		name, value, ok := strings.Cut(text, sign)
		if !ok {
			continue
		}
		t := Target{Name: strings.TrimSpace(name), AtMost: sign == "<="}
		var err error
		if t.Limit, t.Dim, err = formula.Quantity(value); err != nil {
			return t, fmt.Errorf("target %q: %w", text, err)
		}
		return t, numberOf(p, t.Name, t.Dim, "target "+text)
	}
	return Target{}, fmt.Errorf("target %q; accepted: a name, <= or >=, and a number with its unit, as draft<=110mm", text)
}

// numberOf checks that a name is a number of the dimension.
func numberOf(p *formula.Program, name string, d formula.Dim, about string) error {
	k, err := p.Kind(name)
	if err != nil {
		return fmt.Errorf("%s: %w", about, err)
	}
	if k != formula.Of(d) {
		return fmt.Errorf("%s: %s is %s, not %s", about, name, k, d)
	}
	return nil
}

// FreeValue is a value that a search may move.
type FreeValue struct {
	Name   string
	Lo, Hi float64
	Dim    formula.Dim
}

// most is how many values a search moves at once.
const mostFree = 6

// Free reads a list of names, as length,beam,depth, with the limits that the
// family gives them; without, a quarter either side of the case's own value.
func (c *Case) Free(list string) ([]FreeValue, error) {
	var out []FreeValue
	p := c.Family.Program
	for _, name := range strings.Split(list, ",") {
		f := FreeValue{Name: strings.TrimSpace(name)}
		k, err := p.Kind(f.Name)
		if err != nil {
			return nil, fmt.Errorf("free %q: %w", f.Name, err)
		}
		if k.Class != formula.Number || !p.HasFormula(f.Name) {
			return nil, fmt.Errorf("free %q: is no number with a formula; accepted: such as length,beam,depth", f.Name)
		}
		if slices.ContainsFunc(out, func(o FreeValue) bool { return o.Name == f.Name }) {
			return nil, fmt.Errorf("free %q is given twice", f.Name)
		}
		f.Dim = k.Dim
		var ok bool
		if f.Lo, f.Hi, ok = p.Limits(f.Name); !ok {
			v := c.run.Number(f.Name)
			f.Lo, f.Hi = v-math.Abs(v)/4, v+math.Abs(v)/4
		}
		if !(f.Lo < f.Hi) {
			return nil, fmt.Errorf("free %q: is %s and has no limits to move between; give the family limits %s = [lowest, highest]", f.Name, c.run.Shown(f.Name), f.Name)
		}
		out = append(out, f)
	}
	if len(out) > mostFree {
		return nil, fmt.Errorf("%d values are free; accepted: up to %d", len(out), mostFree)
	}
	return out, nil
}
