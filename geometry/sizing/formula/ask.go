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
		if s.form == ForPage {
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

// HasFormula reports whether a formula gives the value.
func (p *Program) HasFormula(name string) bool {
	slot, ok := p.slots[name]
	return ok && slot >= len(p.inputs)
}

// Where returns the place of a formula in its file; the zero Place for a value
// given from outside.
func (p *Program) Where(name string) Place {
	if slot, ok := p.slots[name]; ok && slot >= len(p.inputs) {
		return p.lines[slot-len(p.inputs)].at
	}
	return Place{}
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
	m := p.Behind(name)
	for i, behind := range m {
		if !behind {
			continue
		}
		for _, u := range p.uses[i] {
			if u < len(p.inputs) && p.inputs[u].Afloat && !slices.Contains(out, p.inputs[u].Name) {
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
	slot, ok := r.p.slots[name]
	if !ok {
		return ""
	}
	if slot < len(r.p.inputs) {
		return r.p.inputs[slot].Doc
	}
	return r.filled(r.p.lines[slot-len(r.p.inputs)])
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
	slot, ok := r.p.slots[name]
	if !ok || slot < len(r.p.inputs) || r.fixed[slot] {
		return ""
	}
	n := r.p.lines[slot-len(r.p.inputs)].body
	won := ""
	for n.op == opCall {
		switch n.name {
		case "round":
			n = n.args[0]
			continue
		case "min", "max", "clamp":
		default:
			return won
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
	slot, ok := r.p.slots[name]
	return ok && slot < len(r.p.inputs)
}

// Constant returns a value that is written out in the file; ok is false for a
// formula that uses anything.
func (p *Program) Constant(name string) (v Value, ok bool) {
	slot, ok := p.slots[name]
	if !ok || slot < len(p.inputs) {
		return Value{}, false
	}
	n := p.lines[slot-len(p.inputs)].body
	return n.value, n.op == opValue
}
