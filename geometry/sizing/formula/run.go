package formula

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry"
)

// Run works the formulas of a Program out, once or many times over. It belongs
// to one goroutine.
type Run struct {
	// Smooth leaves rounding out, for a search that follows slopes.
	Smooth bool

	p       *Program
	values  []Value
	fixed   []bool    // by slot: a value put in the place of its formula
	name    string    // of the statement being worked out
	numbers []float64 // of the functions being worked out
	others  []Value   // the same of functions that take more than numbers
}

// NewRun returns a run in which every value afloat is at its guess, or zero.
func (p *Program) NewRun() *Run {
	r := &Run{p: p, values: make([]Value, len(p.values)), fixed: make([]bool, len(p.values))}
	r.Forget()
	return r
}

// Forget puts every value afloat back to its guess, or zero.
func (r *Run) Forget() {
	for slot, s := range r.p.values {
		if !s.afloat {
			continue
		}
		r.values[slot] = Value{}
		if g, ok := r.p.guess[s.name]; ok {
			r.values[slot] = g.body.value
		}
	}
}

// Set gives a value from outside. Errors: a name that is not given, or a number
// that is none.
func (r *Run) Set(name string, v Value) error {
	if !r.Knows(name) {
		return fmt.Errorf("no value %q is given from outside", name)
	}
	return r.put(name, v, false)
}

// Fix puts a value in the place of a formula. Errors: a name that has none.
func (r *Run) Fix(name string, v Value) error {
	if !r.p.HasFormula(name) {
		return fmt.Errorf("no formula gives %q; the nearest is %s", name, nearest(name, r.p.Names()))
	}
	return r.put(name, v, true)
}

func (r *Run) put(name string, v Value, fix bool) error {
	if bad(v) {
		return fmt.Errorf("%s is no number", name)
	}
	slot := r.p.slots[name]
	r.values[slot], r.fixed[slot] = v, fix
	return nil
}

// IsFixed reports whether a value stands in the place of its formula.
func (r *Run) IsFixed(name string) bool {
	slot, ok := r.p.slots[name]
	return ok && r.fixed[slot]
}

func bad(v Value) bool {
	broken := func(n float64) bool { return !geometry.Finite(n) }
	return broken(v.Num) || len(v.List) > 0 && slices.ContainsFunc(v.List, broken)
}

// Mask chooses values of a Program.
type Mask []bool

// Behind returns the values on which the named ones rest, themselves included.
func (p *Program) Behind(names ...string) Mask {
	m := make(Mask, len(p.values))
	var walk func(slot int)
	walk = func(slot int) {
		if m[slot] {
			return
		}
		m[slot] = true
		for _, u := range p.values[slot].uses {
			walk(u)
		}
	}
	for _, n := range names {
		if slot, ok := p.slots[n]; ok {
			walk(slot)
		}
	}
	return m
}

// Others returns the values that m leaves out.
func (m Mask) Others() Mask {
	out := make(Mask, len(m))
	for i := range m {
		out[i] = !m[i]
	}
	return out
}

// Work works out the chosen values, each after those it uses, from the values
// that are set; nil chooses all.
//
// Errors: *wording.Fault for a division by zero and whatever else has no answer.
func (r *Run) Work(m Mask) (err error) {
	defer catch(&err)
	r.numbers, r.others = r.numbers[:0], r.others[:0]
	for _, slot := range r.p.order {
		if !r.fixed[slot] && (m == nil || m[slot]) {
			s := &r.p.values[slot]
			if r.name = s.name; s.kind.single() {
				r.values[slot].Num = r.number(s.body)
			} else {
				r.values[slot] = r.eval(s.body)
			}
		}
	}
	return nil
}

// eval works a formula out; it refuses one that has no answer.
func (r *Run) eval(n *node) Value {
	switch {
	case n.name != "":
		return r.values[n.slot]
	case n.call == nil:
		return n.value
	case n.call == &condition:
		return r.eval(r.branch(n))
	case n.call.value == nil:
		return Num(r.number(n))
	}
	below := len(r.others)
	for _, a := range n.args {
		r.others = append(r.others, r.eval(a))
	}
	args := r.others[below:]
	r.others = r.others[:below]
	v, err := n.call.value(args)
	if err != nil || bad(v) {
		r.noAnswer(n, args, err)
	}
	return v
}

// number is eval of a formula that gives a number or a truth, as most do, at a tenth of the
// cost: texts and lists are not carried along.
func (r *Run) number(n *node) float64 {
	switch {
	case n.name != "":
		return r.values[n.slot].Num
	case n.call == nil:
		return n.value.Num
	case n.call == &condition:
		return r.number(r.branch(n))
	case n.call.value != nil:
		return r.eval(n).Num
	case n.call.pair != nil:
		return r.fold(n)
	case n.call.number == nil: // and, or: what is left out may have no answer
		if first := r.number(n.args[0]); (first != 0) == (n.call.name == "or") {
			return first
		}
		return r.number(n.args[1])
	}
	args := r.given(n)
	v, err := n.call.number(args)
	if r.Smooth && err == nil && n.call.name == "round" {
		return args[0]
	}
	if err != nil || !geometry.Finite(v) {
		r.noAnswer(n, valuesOf(args), err)
	}
	return v
}

// fold puts a function of two between values.
func (r *Run) fold(n *node) float64 {
	v := r.number(n.args[0])
	for _, a := range n.args[1:] {
		v = n.call.pair(v, r.number(a))
	}
	if geometry.Finite(v) {
		return v
	}
	var err error
	args := r.given(n)
	if n.call.number != nil {
		_, err = n.call.number(args)
	}
	r.noAnswer(n, valuesOf(args), err)
	return v
}

// given works out what a function is given.
func (r *Run) given(n *node) []float64 {
	below := len(r.numbers)
	for _, a := range n.args {
		r.numbers = append(r.numbers, r.number(a))
	}
	args := r.numbers[below:]
	r.numbers = r.numbers[:below]
	return args
}

// branch is what a condition chooses; the other one may have no answer.
func (r *Run) branch(n *node) *node {
	if r.number(n.args[0]) != 0 {
		return n.args[1]
	}
	return n.args[2]
}

// noAnswer refuses what a function made of values.
func (r *Run) noAnswer(n *node, args []Value, err error) {
	if err != nil {
		refuse(n.at, r.name, "%s", n.unanswered(args, err))
	}
	refuse(n.at, r.name, "the result is no number: it grows past all bounds, or a number below zero is raised to a broken power")
}

// unanswered says what of a function or operator has no answer.
func (n *node) unanswered(args []Value, err error) string {
	if n.call.takes == "" {
		if d := n.args[1]; d.name != "" { // only a division comes here
			return fmt.Sprintf("divides by %s, which is %s", d.name, ShowNumber(0, d.kind.Dim))
		}
		return err.Error()
	}
	var all []string
	for i, a := range args {
		all = append(all, a.Show(n.args[i].kind))
	}
	return fmt.Sprintf("%s(%s): %v", n.call.name, strings.Join(all, ", "), err)
}
