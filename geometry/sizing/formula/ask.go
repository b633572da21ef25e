package formula

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/wording"
)

// Names lists the values that have a formula, in the order of the files.
func (p *Program) Names() []string {
	out := make([]string, len(p.lines))
	for i, s := range p.lines {
		out[i] = s.name
	}
	return out
}

// OnPage lists the values meant for the page of reasons, in the order of the files.
func (p *Program) OnPage() []string {
	var out []string
	for _, s := range p.lines {
		if s.form == tellForm {
			out = append(out, s.name)
		}
	}
	return out
}

// Kind returns the kind of a value. Errors: an unknown name, with the nearest.
func (p *Program) Kind(name string) (Kind, error) {
	slot, ok := p.slots[name]
	if !ok {
		return Kind{}, fmt.Errorf("nothing is called %q; the nearest name is %s", wording.Clip(name, 60), nearest(name, p.AllNames()))
	}
	return p.kinds[slot], nil
}

// formula returns the statement that gives a value; ok is false for an unknown name
// and for a value given from outside.
func (p *Program) formula(name string) (s statement, ok bool) {
	if slot, known := p.slots[name]; known && slot >= len(p.inputs) {
		return p.lines[slot-len(p.inputs)], true
	}
	return statement{}, false
}

// HasFormula reports whether a formula gives the value.
func (p *Program) HasFormula(name string) bool {
	_, ok := p.formula(name)
	return ok
}

// Where returns the place of a formula in its file; the zero Place for a value
// given from outside.
func (p *Program) Where(name string) Place {
	s, _ := p.formula(name)
	return s.at
}

// Limits returns how far a search may move a value; ok is false when the file
// does not say.
func (p *Program) Limits(name string) (lo, hi float64, ok bool) {
	s, ok := p.limits[name]
	if !ok {
		return 0, 0, false
	}
	return s.body.args[0].value.Num, s.body.args[1].value.Num, true
}

// AfloatBehind lists the values found afloat on which a formula rests.
func (p *Program) AfloatBehind(name string) []string {
	var out []string
	for i, behind := range p.Behind(name) {
		for _, u := range p.uses[i] {
			if behind && u < len(p.inputs) && p.inputs[u].Afloat && !slices.Contains(out, p.inputs[u].Name) {
				out = append(out, p.inputs[u].Name)
			}
		}
	}
	slices.Sort(out)
	return out
}

// Guess reports whether the file says where a value found afloat starts.
func (p *Program) Guess(name string) bool { _, ok := p.guess[name]; return ok }

// Value returns a value as worked out last.
func (r *Run) Value(name string) (Value, Kind, bool) {
	slot, ok := r.p.slots[name]
	if !ok {
		return Value{}, Kind{}, false
	}
	return r.values[slot], r.p.kinds[slot], true
}

// Number returns a number as worked out last, 0 for an unknown name.
func (r *Run) Number(name string) float64 {
	v, _, _ := r.Value(name)
	return v.Num
}

// Shown returns a value as it stands on a page.
func (r *Run) Shown(name string) string {
	v, k, ok := r.Value(name)
	if !ok {
		return "?"
	}
	return v.Show(k)
}

// Reason returns what the file says of a value, with the values in {} shown.
func (r *Run) Reason(name string) string {
	if s, ok := r.p.formula(name); ok {
		return r.filled(s)
	}
	if slot, ok := r.p.slots[name]; ok {
		return r.p.inputs[slot].Doc
	}
	return ""
}

func (r *Run) filled(s statement) string {
	out := s.reason
	for _, n := range s.shows {
		out = strings.Replace(out, "{"+n+"}", r.Shown(n), 1)
	}
	return out
}

// HeldBy returns the value that won where a formula is the least, the greatest
// or the clamp of several, as it stands in the file; "" for other formulas.
func (r *Run) HeldBy(name string) string {
	s, ok := r.p.formula(name)
	if !ok || r.IsFixed(name) {
		return ""
	}
	n, won := s.body, ""
	for n.op == opCall && slices.Contains([]string{"round", "min", "max", "clamp"}, n.name) {
		if n.name == "round" {
			n = n.args[0]
			continue
		}
		v := r.eval(n).Num
		i := slices.IndexFunc(n.args, func(a *node) bool { return r.eval(a).Num == v })
		if i < 0 {
			return won
		}
		n = n.args[i]
		won = written(n)
	}
	return won
}

// Knows reports whether a value of that name can be set from outside.
func (r *Run) Knows(name string) bool {
	_, known := r.p.slots[name]
	return known && !r.p.HasFormula(name)
}

// Constant returns a value that is written out in the file; ok is false for a
// formula that uses anything.
func (p *Program) Constant(name string) (v Value, ok bool) {
	s, ok := p.formula(name)
	if !ok || s.body.op != opValue {
		return Value{}, false
	}
	return s.body.value, true
}

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
		s.Name, s.Formula, s.Reason, s.Where = line.name, line.written, r.filled(line), fmt.Sprintf("%s:%d", line.at.File, line.at.Line)
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
	return side(n, 0) + " " + operators[n.op].sign + " " + side(n, 1)
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
	if a.op.rank() < n.op.rank() || i == 1 && a.op.rank() == n.op.rank() {
		return "(" + text + ")"
	}
	return text
}

// Origin returns the formula that a value really comes from: that of the value
// itself, or of the one it only rounds or passes on.
func (r *Run) Origin(name string) (Step, bool) {
	slot, ok := r.p.slots[name]
	if !ok {
		return Step{}, false
	}
	for slot >= len(r.p.inputs) && !r.fixed[slot] {
		line := r.p.lines[slot-len(r.p.inputs)]
		n := line.body
		for n.op == opCall && n.name == "round" {
			n = n.args[0]
		}
		if n.op != opName || line.reason != "" {
			break
		}
		slot = n.slot
	}
	return r.step(slot, 0), true
}
