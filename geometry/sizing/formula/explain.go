package formula

import (
	"fmt"
	"math"
	"strings"
)

// maxSteps bounds how many lines an explanation has.
const maxSteps = 400

// Step is one line of the derivation of a value.
type Step struct {
	Depth   int // 0 for the value asked for
	Name    string
	Value   string
	Formula string // as it stands in the file, "" for a value given from outside
	Reason  string
	Where   string // file and line; "given", "found afloat" or "set by hand"
	Again   bool   // explained above already
}

// Explain returns the whole derivation of a value: itself, then what it uses,
// each explained once, down to what was given.
// Errors: an unknown name, with the nearest.
func (r *Run) Explain(name string) ([]Step, error) {
	slot, ok := r.p.slots[name]
	if !ok {
		_, err := r.p.Kind(name)
		return nil, err
	}
	var out []Step
	seen := map[int]bool{}
	var walk func(slot, depth int)
	walk = func(slot, depth int) {
		if len(out) >= maxSteps {
			return
		}
		s := r.step(slot, depth)
		s.Again = seen[slot] && s.Formula != ""
		out = append(out, s)
		if seen[slot] || slot < len(r.p.inputs) || r.fixed[slot] {
			return
		}
		seen[slot] = true
		for _, u := range r.p.uses[slot-len(r.p.inputs)] {
			walk(u, depth+1)
		}
	}
	walk(slot, 0)
	return out, nil
}

func (r *Run) step(slot, depth int) Step {
	s := Step{Depth: depth}
	if slot < len(r.p.inputs) {
		g := r.p.inputs[slot]
		s.Name, s.Reason, s.Where = g.Name, g.Doc, "given"
		if g.Afloat {
			s.Where = "found afloat"
		}
	} else {
		line := r.p.lines[slot-len(r.p.inputs)]
		s.Name, s.Formula, s.Reason = line.name, line.written, r.filled(line)
		s.Where = fmt.Sprintf("%s:%d", line.at.File, line.at.Line)
		if r.fixed[slot] {
			s.Formula, s.Where = "", "set by hand"
		}
	}
	s.Value = r.Shown(s.Name)
	return s
}

// written puts a formula back into words and signs.
func written(n *node) string {
	switch n.op {
	case opValue:
		if n.kind.Class == Text {
			return `"` + n.value.Text + `"`
		}
		return n.value.Show(n.kind)
	case opName:
		return n.name
	case opCall:
		return n.name + "(" + writtenAll(n.args) + ")"
	case opList:
		return "[" + writtenAll(n.args) + "]"
	case opNeg:
		return "-" + written(n.args[0])
	case opNot:
		return "not " + written(n.args[0])
	case opIf:
		return "if " + written(n.args[0]) + " then " + written(n.args[1]) + " else " + written(n.args[2])
	}
	sign := map[op]string{opAdd: "+", opSub: "-", opMul: "*", opDiv: "/", opPow: "^", opLess: "<", opLessEq: "<=",
		opMore: ">", opMoreEq: ">=", opEqual: "==", opDiffer: "!=", opAnd: "and", opOr: "or"}[n.op]
	return side(n, 0) + " " + sign + " " + side(n, 1)
}

func writtenAll(args []*node) string {
	var all []string
	for _, a := range args {
		all = append(all, written(a))
	}
	return strings.Join(all, ", ")
}

// side puts brackets where the tree has them and the signs alone would not.
func side(n *node, i int) string {
	a := n.args[i]
	text := written(a)
	if rank(a.op) < rank(n.op) || i == 1 && rank(a.op) == rank(n.op) {
		return "(" + text + ")"
	}
	return text
}

// rank is how tightly an operator binds.
func rank(o op) int {
	switch o {
	case opIf:
		return 0
	case opOr:
		return 1
	case opAnd:
		return 2
	case opNot:
		return 3
	case opAdd, opSub:
		return 5
	case opMul, opDiv:
		return 6
	case opNeg:
		return 7
	case opPow:
		return 8
	}
	if o.compares() {
		return 4
	}
	return math.MaxInt
}

// Origin returns the formula that a value really comes from: that of the value
// itself, or of the one it only rounds or passes on.
func (r *Run) Origin(name string) (Step, bool) {
	slot, ok := r.p.slots[name]
	if !ok {
		return Step{}, false
	}
	for {
		if slot < len(r.p.inputs) || r.fixed[slot] {
			return r.step(slot, 0), true
		}
		line := r.p.lines[slot-len(r.p.inputs)]
		n := line.body
		for n.op == opCall && n.name == "round" {
			n = n.args[0]
		}
		if n.op != opName || line.reason != "" {
			return r.step(slot, 0), true
		}
		slot = n.slot
	}
}
