package sizing

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/sizing/formula"
)

// Sweep is one value stepped from a place to another.
type Sweep struct {
	Name           string
	From, To, Step float64
	Dim            formula.Dim
}

// mostSteps is how many boats a sweep has.
const mostSteps = 200

// ParseSweep reads a sweep: beam=680mm..780mm/20mm. The name is any number with a
// formula.
func ParseSweep(text string, p *formula.Program) (Sweep, error) {
	accepted := func(why string) error {
		return fmt.Errorf("sweep %q: %s; accepted: a name, from, to and step, as beam=680mm..780mm/20mm", text, why)
	}
	name, rest, ok1 := strings.Cut(text, "=")
	from, rest, ok2 := strings.Cut(rest, "..")
	to, step, ok3 := strings.Cut(rest, "/")
	if !ok1 || !ok2 || !ok3 {
		return Sweep{}, accepted("is not understood")
	}
	s := Sweep{Name: strings.TrimSpace(name)}
	var n [3]float64
	for i, part := range []string{from, to, step} {
		v, d, err := formula.Quantity(part)
		switch {
		case err != nil:
			return s, accepted(err.Error())
		case i > 0 && d != s.Dim:
			return s, accepted(fmt.Sprintf("%s is %s and %s is %s", from, s.Dim, part, d))
		}
		n[i], s.Dim = v, d
	}
	s.From, s.To, s.Step = n[0], n[1], n[2]
	if err := numberOf(p, s.Name, s.Dim, "sweep "+text); err != nil {
		return s, err
	}
	switch n := math.Abs(s.To-s.From) / math.Abs(s.Step); {
	case !p.HasFormula(s.Name):
		return s, accepted(s.Name + " is given from outside and not by a formula")
	case !(s.Step > 0 && s.To > s.From):
		return s, accepted("goes nowhere")
	case n > mostSteps:
		return s, accepted(fmt.Sprintf("makes %.0f boats, more than %d", n, mostSteps))
	}
	return s, nil
}

// Row is one boat of a sweep.
type Row struct {
	At     float64 // the value swept
	Values map[string]float64
	Failed []string // checks that do not hold
	Fault  string   // why there is no boat
}

// Columns are the values that a sweep tells.
func Columns() []string {
	return []string{"length", "beam", "depth", "draft", "freeboard", "gm", "boat_weight", "effort"}
}

// Sweep sizes a boat for each step. Boats are looked at quickly and not rounded;
// what was set by hand stays so.
func (c *Case) Sweep(s Sweep) ([]Row, error) {
	c.Effort = true
	var out []Row
	steps := int(math.Floor((s.To-s.From)/s.Step + 1e-9))
	for i := 0; i <= steps; i++ {
		row := Row{At: s.From + float64(i)*s.Step, Values: map[string]float64{}}
		c.forget()
		if err := c.Set(s.Name, row.At); err != nil {
			return nil, err
		}
		if err := c.Settle(); err != nil {
			row.Fault = err.Error()
		} else if err := row.tell(c.run); err != nil {
			return nil, err
		}
		out = append(out, row)
	}
	return out, nil
}

func (r *Row) tell(run *formula.Run) error {
	for _, n := range Columns() {
		r.Values[n] = run.Number(n)
	}
	checks, err := run.Checks()
	for _, v := range checks {
		if !v.Passed {
			r.Failed = append(r.Failed, v.Name)
		}
	}
	return err
}
