package formula

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/wording"
)

// Names lists the values that have a formula, in the order of the files.
func (p *Program) Names() []string {
	return p.namesOf(func(s statement) bool { return s.body != nil })
}

// OnPage lists the values meant for the page of reasons, in the order of the files.
func (p *Program) OnPage() []string {
	return p.namesOf(func(s statement) bool { return s.told })
}

func (p *Program) namesOf(chosen func(statement) bool) []string {
	var out []string
	for _, s := range p.values {
		if chosen(s) {
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
	return p.values[slot].kind, nil
}

// statement returns what gives a value, the zero statement for an unknown name.
func (p *Program) statement(name string) statement {
	if slot, ok := p.slots[name]; ok {
		return p.values[slot]
	}
	return statement{}
}

// HasFormula reports whether a formula gives the value.
func (p *Program) HasFormula(name string) bool { return p.statement(name).body != nil }

// Where returns the place of a formula in its file; the zero Place for a value
// given from outside.
func (p *Program) Where(name string) Place { return p.statement(name).at }

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
	m := p.Behind(name)
	return slices.Sorted(slices.Values(p.namesOf(func(s statement) bool { return s.afloat && m[p.slots[s.name]] })))
}

// Uses reports whether any formula or check rests on one of the values.
func (p *Program) Uses(names ...string) bool {
	return slices.ContainsFunc(slices.Concat(p.values, p.checks), func(s statement) bool {
		return slices.ContainsFunc(s.uses, func(slot int) bool { return slices.Contains(names, p.values[slot].name) })
	})
}

// Guess reports whether the file says where a value found afloat starts.
func (p *Program) Guess(name string) bool { _, ok := p.guess[name]; return ok }

// Value returns a value as worked out last.
func (r *Run) Value(name string) (Value, Kind, bool) {
	slot, ok := r.p.slots[name]
	if !ok {
		return Value{}, Kind{}, false
	}
	return r.values[slot], r.p.values[slot].kind, true
}

// Slot is where a run keeps a value; ok is false for an unknown name.
func (p *Program) Slot(name string) (slot int, ok bool) {
	slot, ok = p.slots[name]
	return slot, ok
}

// At is Value of a slot of the run's program, for those who ask again and again.
func (r *Run) At(slot int) Value { return r.values[slot] }

// Number returns a number as worked out last, 0 for an unknown name.
func (r *Run) Number(name string) float64 {
	v, _, _ := r.Value(name)
	return v.Num
}

// Shown returns a value as it stands on a page.
func (r *Run) Shown(name string) string {
	v, k, ok := r.Value(name)
	switch {
	case !ok:
		return "?"
	case k == Of(Length) && r.p.statement(name).afloat:
		return wholeLength(v.Num)
	}
	return v.Show(k)
}

// Reason returns what the file says of a value, with the values in {} shown.
func (r *Run) Reason(name string) string { return r.filled(r.p.statement(name)) }

func (r *Run) filled(s statement) string {
	if s.body == nil {
		return s.reason
	}
	return braced.ReplaceAllStringFunc(s.reason, func(name string) string { return r.Shown(strings.Trim(name, "{}")) })
}

// HeldBy returns the value that won where a formula is the least, the greatest
// or the clamp of several, as it stands in the file; "" for other formulas.
func (r *Run) HeldBy(name string) (won string) {
	n := r.p.statement(name).body
	if n == nil || r.IsFixed(name) {
		return ""
	}
	defer catch(new(error))
	for n = unrounded(n); n.call != nil && slices.Contains([]string{"min", "max", "clamp"}, n.call.name); n = unrounded(n) {
		v := r.eval(n).Num
		i := slices.IndexFunc(n.args, func(a *node) bool { return r.eval(a).Num == v })
		if i < 0 {
			break
		}
		n = n.args[i]
		won = written(n)
	}
	return won
}

// unrounded is what a formula rounds, or the formula.
func unrounded(n *node) *node {
	for n.call != nil && n.call.name == "round" {
		n = n.args[0]
	}
	return n
}

// Knows reports whether a value of that name can be set from outside.
func (r *Run) Knows(name string) bool {
	_, known := r.p.slots[name]
	return known && !r.p.HasFormula(name)
}

// Constant returns a value that is written out in the file; ok is false for a
// formula that uses anything.
func (p *Program) Constant(name string) (v Value, ok bool) {
	n := p.statement(name).body
	if n == nil || !n.isValue() {
		return Value{}, false
	}
	return n.value, true
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
//
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
		if seen[slot] || r.fixed[slot] {
			return
		}
		seen[slot] = true
		for _, u := range r.p.values[slot].uses {
			walk(u, depth+1)
		}
	}
	walk(slot, 0)
	return out, nil
}

func (r *Run) step(slot, depth int) Step {
	s := r.p.values[slot]
	out := Step{Depth: depth, Name: s.name, Value: r.Shown(s.name), Formula: s.written, Reason: r.filled(s)}
	switch {
	case r.fixed[slot]:
		out.Formula, out.Where = "", "set by hand"
	case s.afloat:
		out.Where = "found afloat"
	case s.body == nil:
		out.Where = "given"
	default:
		out.Where = fmt.Sprintf("%s:%d", s.at.File, s.at.Line)
	}
	return out
}

// written puts a formula back into words and signs.
func written(n *node) string {
	switch {
	case n.name != "":
		return n.name
	case n.call == nil && n.kind.Class == Text:
		return `"` + n.value.Text + `"`
	case n.call == nil:
		return n.value.Show(n.kind)
	}
	args := make([]string, len(n.args))
	for i := range args {
		args[i] = side(n, i)
	}
	switch f := n.call; {
	case f == &condition:
		return "if " + args[0] + " then " + args[1] + " else " + args[2]
	case f == &list:
		return "[" + strings.Join(args, ", ") + "]"
	case f.rank == rankCall:
		return f.name + "(" + strings.Join(args, ", ") + ")"
	case f.name == "not":
		return "not " + args[0]
	case f.sides == 1:
		return f.name + args[0]
	default:
		return args[0] + " " + f.name + " " + args[1]
	}
}

// side puts brackets where the tree has them and the signs alone would not.
func side(n *node, i int) string {
	a, rank := n.args[i], rankAtom
	if a.call != nil && a.call.rank != rankCall {
		rank = a.call.rank
	}
	if n.call.rank > rankIf && (rank < n.call.rank || i == 1 && rank == n.call.rank) {
		return "(" + written(a) + ")"
	}
	return written(a)
}

// Origin returns the formula that a value really comes from: that of the value
// itself, or of the one it only rounds or passes on.
func (r *Run) Origin(name string) (Step, bool) {
	slot, ok := r.p.slots[name]
	if !ok {
		return Step{}, false
	}
	for r.p.values[slot].body != nil && !r.fixed[slot] {
		n := unrounded(r.p.values[slot].body)
		if n.name == "" || r.p.values[slot].reason != "" {
			break
		}
		slot = n.slot
	}
	return r.step(slot, 0), true
}
