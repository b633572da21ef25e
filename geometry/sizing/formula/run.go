package formula

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Run works the formulas of a Program out, once or many times over. It belongs
// to one goroutine.
type Run struct {
	// Smooth leaves rounding out, for a search that follows slopes.
	Smooth bool

	p      *Program
	values []Value
	fixed  []bool // by slot: a value put in the place of its formula
	fault  *Fault
	line   string // name of the statement being worked out
}

// NewRun returns a run in which every value afloat is at its guess, or zero.
func (p *Program) NewRun() *Run {
	r := &Run{p: p, values: make([]Value, len(p.kinds)), fixed: make([]bool, len(p.kinds))}
	for name, s := range p.guess {
		r.values[p.slots[name]] = s.body.value
	}
	return r
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
	broken := func(n float64) bool { return math.IsNaN(n) || math.IsInf(n, 0) }
	return broken(v.Num) || slices.ContainsFunc(v.List, broken)
}

// Mask chooses lines of a Program.
type Mask []bool

// Behind returns the lines on which the named values rest, themselves included.
func (p *Program) Behind(names ...string) Mask {
	m := make(Mask, len(p.lines))
	var walk func(slot int)
	walk = func(slot int) {
		i := slot - len(p.inputs)
		if i < 0 || m[i] {
			return
		}
		m[i] = true
		for _, u := range p.uses[i] {
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

// Others returns the lines that m leaves out.
func (m Mask) Others() Mask {
	out := make(Mask, len(m))
	for i := range m {
		out[i] = !m[i]
	}
	return out
}

// Work works out the chosen lines, each after those it uses, from the values
// that are set; nil chooses all.
// Errors: *Fault for a division by zero and whatever else has no answer.
func (r *Run) Work(m Mask) error {
	r.fault = nil
	for _, i := range r.p.order {
		slot := len(r.p.inputs) + i
		if r.fixed[slot] || m != nil && !m[i] {
			continue
		}
		r.line = r.p.lines[i].name
		r.values[slot] = r.eval(r.p.lines[i].body)
		if r.fault != nil {
			return r.fault
		}
	}
	return nil
}

// fail keeps the first fault; the value of the formula no longer counts.
func (r *Run) fail(n *node, format string, args ...any) Value {
	if r.fault == nil {
		r.fault = faultAt(n.at, r.line, format, args...)
	}
	return Value{}
}

func (r *Run) eval(n *node) Value {
	switch n.op {
	case opValue:
		return n.value
	case opName:
		return r.values[n.slot]
	case opIf:
		if r.eval(n.args[0]).True() {
			return r.eval(n.args[1])
		}
		return r.eval(n.args[2])
	case opAnd:
		return Yes(r.eval(n.args[0]).True() && r.eval(n.args[1]).True())
	case opOr:
		return Yes(r.eval(n.args[0]).True() || r.eval(n.args[1]).True())
	case opNot:
		return Yes(!r.eval(n.args[0]).True())
	case opNeg:
		return Num(-r.eval(n.args[0]).Num)
	case opCall:
		return r.callOf(n)
	case opList:
		out := make([]float64, len(n.args))
		for i, a := range n.args {
			out[i] = r.eval(a).Num
		}
		return Value{List: out}
	}
	return r.operate(n, r.eval(n.args[0]), r.eval(n.args[1]))
}

func (r *Run) operate(n *node, a, b Value) Value {
	switch n.op {
	case opLess:
		return Yes(a.Num < b.Num)
	case opLessEq:
		return Yes(a.Num <= b.Num)
	case opMore:
		return Yes(a.Num > b.Num)
	case opMoreEq:
		return Yes(a.Num >= b.Num)
	case opEqual:
		return Yes(a.Num == b.Num && a.Text == b.Text)
	case opDiffer:
		return Yes(a.Num != b.Num || a.Text != b.Text)
	case opDiv:
		if b.Num == 0 {
			return r.byZero(n)
		}
		return r.finite(n, a.Num/b.Num)
	case opAdd:
		return r.finite(n, a.Num+b.Num)
	case opSub:
		return r.finite(n, a.Num-b.Num)
	case opMul:
		return r.finite(n, a.Num*b.Num)
	}
	return r.finite(n, math.Pow(a.Num, b.Num))
}

func (r *Run) byZero(n *node) Value {
	d := n.args[1]
	if d.op == opName {
		return r.fail(n, "divides by %s, which is %s", d.name, ShowNumber(0, d.kind.Dim))
	}
	return r.fail(n, "divides by zero")
}

func (r *Run) finite(n *node, v float64) Value {
	if bad(Num(v)) {
		return r.fail(n, "the result is no number: it grows past all bounds, or a number below zero is raised to a broken power")
	}
	return Num(v)
}

func (r *Run) callOf(n *node) Value {
	var room [6]float64
	args := room[:0]
	for _, a := range n.args {
		args = append(args, r.eval(a).Num)
	}
	if r.fault != nil {
		return Value{}
	}
	var v float64
	var places []float64
	var err error
	if n.call.value == nil {
		places, err = scarfPlaces(args[0], args[1], args[2])
	} else {
		v, err = n.call.value(r, args)
	}
	switch {
	case err != nil:
		return r.failCall(n, args, err)
	case n.kind.Class == List:
		return Value{List: places}
	}
	return r.finite(n, v)
}

func (r *Run) failCall(n *node, args []float64, err error) Value {
	var all []string
	for i, a := range args {
		all = append(all, ShowNumber(a, n.args[i].kind.Dim))
	}
	return r.fail(n, "%s(%s): %v", n.name, strings.Join(all, ", "), err)
}
