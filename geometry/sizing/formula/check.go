package formula

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/wording"
)

// checker finds the kind of every formula and an order to work them out in.
type checker struct {
	*Program
	state []int8 // by line: 0 not seen, 1 being looked at, 2 done
	trail []int  // lines being looked at
	using *[]int // slots that the formula being looked at uses
}

func (c *checker) checkAll() *Fault {
	c.uses = make([][]int, len(c.lines))
	for i := range c.lines {
		if f := c.line(i); f != nil {
			return f
		}
	}
	for i := range c.checks {
		if f := c.wants(&c.checks[i], "a comparison or another formula that is true or false", func(k Kind) bool { return k.Class == Truth }); f != nil {
			return f
		}
	}
	if f := c.guesses(); f != nil {
		return f
	}
	if f := c.bounds(); f != nil {
		return f
	}
	return c.reasons()
}

// line checks a line after the lines it uses.
func (c *checker) line(i int) *Fault {
	switch c.state[i] {
	case 2:
		return nil
	case 1:
		return c.circle(i)
	}
	c.state[i] = 1
	c.trail = append(c.trail, i)
	above := c.using
	c.using = &c.uses[i]
	kind, f := c.kind(c.lines[i].body)
	c.using = above
	c.trail = c.trail[:len(c.trail)-1]
	if f != nil {
		if f.Name == "" {
			f.Name = c.lines[i].name
		}
		return f
	}
	c.kinds[len(c.inputs)+i] = kind
	c.state[i] = 2
	c.order = append(c.order, i)
	return nil
}

// circle names the lines that need one another.
func (c *checker) circle(i int) *Fault {
	from := slices.Index(c.trail, i)
	var names []string
	for _, j := range c.trail[from:] {
		names = append(names, c.lines[j].name)
	}
	s := c.lines[i]
	if len(names) > 12 {
		names = append(names[:11], "...")
	}
	return faultAt(s.at, s.name, "needs itself: %s, %s; break the circle", strings.Join(names, " needs "), "which needs "+s.name)
}

// wants checks a statement whose kind must pass a test.
func (c *checker) wants(s *statement, accepted string, ok func(Kind) bool) *Fault {
	used := []int{}
	c.using = &used
	k, f := c.kind(s.body)
	if f == nil && !ok(k) {
		f = faultAt(s.body.at, s.name, "is %s; accepted: %s", k, accepted)
	}
	if f != nil && f.Name == "" {
		f.Name = s.name
	}
	return f
}

// guesses checks the starts of values found afloat: plain values of their kind.
func (c *checker) guesses() *Fault {
	for _, g := range c.inputs {
		s, ok := c.guess[g.Name]
		if !ok {
			continue
		}
		if f := c.wants(&s, g.Kind.String(), func(k Kind) bool { return k == g.Kind }); f != nil {
			return f
		}
		if s.body.op != opValue {
			return faultAt(s.body.at, s.name, "a guess is one number with its unit")
		}
	}
	for _, name := range sortedNames(c.guess) {
		if slot, ok := c.slots[name]; !ok || slot >= len(c.inputs) || !c.inputs[slot].Afloat {
			return faultAt(c.guess[name].at, name, "only a value found afloat takes a guess")
		}
	}
	return nil
}

// bounds checks limits: two plain values of the kind of the value they bound.
func (c *checker) bounds() *Fault {
	for _, name := range sortedNames(c.limits) {
		s := c.limits[name]
		slot, ok := c.slots[name]
		if !ok || slot < len(c.inputs) {
			return faultAt(s.at, name, "limits are for a value that has a formula; the nearest is %s", nearest(name, c.AllNames()))
		}
		want := Kind{List, c.kinds[slot].Dim}
		if f := c.wants(&s, want.String()+", lowest and highest", func(k Kind) bool { return k == want }); f != nil {
			return f
		}
		a := s.body.args
		if len(a) != 2 || a[0].op != opValue || a[1].op != opValue || !(a[0].value.Num < a[1].value.Num) {
			return faultAt(s.body.at, name, "limits are two numbers, the lower first, as [3000 mm, 4200 mm]")
		}
	}
	return nil
}

func sortedNames(m map[string]statement) []string {
	var out []string
	for n := range m {
		out = append(out, n)
	}
	slices.Sort(out)
	return out
}

// reasons checks the names in {} of every reason.
func (c *checker) reasons() *Fault {
	for _, list := range [][]statement{c.lines, c.checks} {
		for _, s := range list {
			for _, n := range s.shows {
				if _, ok := c.slots[n]; !ok {
					return faultAt(s.at, s.name, "the reason shows {%s}, which is no name; the nearest is %s", wording.Clip(n, 40), nearest(n, c.AllNames()))
				}
			}
		}
	}
	return nil
}

// kind finds the kind of a formula and refuses what does not go together.
func (c *checker) kind(n *node) (Kind, *Fault) {
	switch n.op {
	case opValue:
		return n.kind, nil
	case opName:
		return c.named(n)
	}
	kinds := make([]Kind, len(n.args))
	for i, a := range n.args {
		k, f := c.kind(a)
		if f != nil {
			return k, f
		}
		kinds[i] = k
	}
	var k Kind
	var err error
	switch n.op {
	case opIf:
		k, err = conditionKind(kinds)
	case opCall:
		k, err = callKind(n, kinds)
	case opList:
		k, err = listKind(kinds)
	default:
		k, err = operatorKind(n, kinds)
	}
	if err != nil {
		return k, &Fault{At: n.at, Text: err.Error()}
	}
	n.kind = k
	return k, nil
}

func (c *checker) named(n *node) (Kind, *Fault) {
	slot, ok := c.slots[n.name]
	if !ok {
		return Kind{}, faultAt(n.at, "", "nothing is called %s; the nearest name is %s", wording.Clip(n.name, 60), nearest(n.name, c.AllNames()))
	}
	n.slot = slot
	if !slices.Contains(*c.using, slot) {
		*c.using = append(*c.using, slot)
	}
	if slot >= len(c.inputs) {
		if f := c.line(slot - len(c.inputs)); f != nil {
			return Kind{}, f
		}
	}
	n.kind = c.kinds[slot]
	return n.kind, nil
}

func conditionKind(k []Kind) (Kind, error) {
	if k[0].Class != Truth {
		return Kind{}, fmt.Errorf("what follows if is %s; accepted: true or false, such as a comparison", k[0])
	}
	if k[1] != k[2] {
		return Kind{}, fmt.Errorf("then gives %s and else gives %s; accepted: both alike", k[1], k[2])
	}
	return k[1], nil
}

func callKind(n *node, k []Kind) (Kind, error) {
	f := n.call
	if len(k) < f.least || len(k) > f.most {
		return Kind{}, fmt.Errorf("%s has %d values; it is written %s", f.name, len(k), f.takes)
	}
	out, err := f.kind(k)
	if err != nil {
		return out, fmt.Errorf("%s: %w", f.name, err)
	}
	return out, nil
}

func listKind(k []Kind) (Kind, error) {
	if len(k) == 0 {
		return Kind{}, fmt.Errorf("a list holds at least one value")
	}
	of, err := alike(k)
	if err != nil {
		return of, fmt.Errorf("a list holds numbers of one kind: %w", err)
	}
	return Kind{List, of.Dim}, nil
}

// operatorKind finds what an operator makes of its operands.
func operatorKind(n *node, k []Kind) (Kind, error) {
	switch {
	case n.op == opNeg:
		return k[0], numbers(k)
	case n.op == opNot, n.op == opAnd, n.op == opOr:
		for _, a := range k {
			if a.Class != Truth {
				return Kind{}, fmt.Errorf("%s stands where true or false should", a)
			}
		}
		return Kind{Class: Truth}, nil
	case n.op == opEqual || n.op == opDiffer:
		if k[0] != k[1] || k[0].Class == List {
			return Kind{}, fmt.Errorf("%s cannot be compared with %s", k[0], k[1])
		}
		return Kind{Class: Truth}, nil
	}
	if err := numbers(k); err != nil {
		return Kind{}, err
	}
	switch n.op {
	case opAdd, opSub, opLess, opLessEq, opMore, opMoreEq:
		return sameDim(n.op, k)
	case opPow:
		return powerKind(n, k)
	}
	times := 1
	if n.op == opDiv {
		times = -1
	}
	d, ok := k[0].Dim.plus(k[1].Dim, times)
	if !ok {
		return Kind{}, fmt.Errorf("the units grow past the power of %d", maxPower)
	}
	return Of(d), nil
}

func sameDim(o op, k []Kind) (Kind, error) {
	if k[0] != k[1] {
		verb := map[op]string{opAdd: "cannot be added to", opSub: "cannot be taken from"}[o]
		if verb == "" {
			return Kind{}, fmt.Errorf("%s cannot be compared with %s", k[0], k[1])
		}
		return Kind{}, fmt.Errorf("%s %s %s", k[1], verb, k[0])
	}
	if o.orders() {
		return Kind{Class: Truth}, nil
	}
	return k[0], nil
}

// powerKind raises units to a whole power written out; plain numbers to any.
func powerKind(n *node, k []Kind) (Kind, error) {
	if k[1] != Of(Plain) {
		return Kind{}, fmt.Errorf("the power is %s; accepted: a plain number", k[1])
	}
	if k[0] == Of(Plain) {
		return k[0], nil
	}
	e := n.args[1]
	whole := e.op == opValue && e.value.Num == float64(int8(e.value.Num)) && e.value.Num <= maxPower
	if !whole {
		return Kind{}, fmt.Errorf("%s takes a whole power up to %d, written out; for a root use sqrt or cbrt", k[0], maxPower)
	}
	d, ok := Dim{}.plus(k[0].Dim, int(e.value.Num))
	if !ok {
		return Kind{}, fmt.Errorf("the units grow past the power of %d", maxPower)
	}
	return Of(d), nil
}
