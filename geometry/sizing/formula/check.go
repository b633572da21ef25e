package formula

import (
	"fmt"
	"maps"
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

func (c *checker) checkAll() {
	c.uses = make([][]int, len(c.lines))
	for i := range c.lines {
		c.line(i)
	}
	for _, s := range c.checks {
		c.wants(s, "a comparison or another formula that is true or false", Kind{Class: Truth})
	}
	c.guesses()
	c.bounds()
	c.reasons()
}

// line checks a line after the lines it uses.
func (c *checker) line(i int) {
	switch c.state[i] {
	case 2:
		return
	case 1:
		c.circle(i)
	}
	c.state[i] = 1
	c.trail = append(c.trail, i)
	above := c.using
	c.using = &c.uses[i]
	c.kinds[len(c.inputs)+i] = c.kind(c.lines[i].body, c.lines[i].name)
	c.using = above
	c.trail = c.trail[:len(c.trail)-1]
	c.state[i] = 2
	c.order = append(c.order, i)
}

func (c *checker) circle(i int) {
	var names []string
	for _, j := range c.trail[slices.Index(c.trail, i):] {
		names = append(names, c.lines[j].name)
	}
	s := c.lines[i]
	if len(names) > 12 {
		names = append(names[:11], "...")
	}
	refuse(s.at, s.name, "needs itself: %s, which needs %s; break the circle", strings.Join(names, " needs "), s.name)
}

// wants checks a statement that must be of a kind.
func (c *checker) wants(s statement, accepted string, want Kind) {
	c.using = &[]int{}
	if k := c.kind(s.body, s.name); k != want {
		refuse(s.body.at, s.name, "is %s; accepted: %s", k, accepted)
	}
}

// guesses checks the starts of values found afloat: plain values of their kind.
func (c *checker) guesses() {
	for _, name := range slices.Sorted(maps.Keys(c.guess)) {
		s := c.guess[name]
		slot, ok := c.slots[name]
		if !ok || slot >= len(c.inputs) || !c.inputs[slot].Afloat {
			refuse(s.at, name, "only a value found afloat takes a guess")
		}
		c.wants(s, c.kinds[slot].String(), c.kinds[slot])
		if s.body.op != opValue {
			refuse(s.body.at, name, "a guess is one number with its unit")
		}
	}
}

// bounds checks limits: two plain values of the kind of the value they bound.
func (c *checker) bounds() {
	for _, name := range slices.Sorted(maps.Keys(c.limits)) {
		s := c.limits[name]
		if !c.HasFormula(name) {
			refuse(s.at, name, "limits are for a value that has a formula; the nearest is %s", nearest(name, c.AllNames()))
		}
		want := Kind{List, c.kinds[c.slots[name]].Dim}
		c.wants(s, want.String()+", lowest and highest", want)
		a := s.body.args
		if len(a) != 2 || a[0].op != opValue || a[1].op != opValue || !(a[0].value.Num < a[1].value.Num) {
			refuse(s.body.at, name, "limits are two numbers, the lower first, as [3000 mm, 4200 mm]")
		}
	}
}

// reasons checks the names in {} of every reason.
func (c *checker) reasons() {
	for _, s := range slices.Concat(c.lines, c.checks) {
		for _, n := range s.shows {
			if _, ok := c.slots[n]; !ok {
				refuse(s.at, s.name, "the reason shows {%s}, which is no name; the nearest is %s", wording.Clip(n, 40), nearest(n, c.AllNames()))
			}
		}
	}
}

// kind finds the kind of a formula of a statement and refuses what does not go together.
func (c *checker) kind(n *node, of string) Kind {
	switch n.op {
	case opValue:
		return n.kind
	case opName:
		return c.named(n, of)
	}
	kinds := make([]Kind, len(n.args))
	for i, a := range n.args {
		kinds[i] = c.kind(a, of)
	}
	var err error
	switch n.op {
	case opIf:
		n.kind, err = conditionKind(kinds)
	case opCall:
		n.kind, err = callKind(n, kinds)
	case opList:
		n.kind, err = listKind(kinds)
	default:
		n.kind, err = operatorKind(n, kinds)
	}
	if err != nil {
		refuse(n.at, of, "%v", err)
	}
	return n.kind
}

func (c *checker) named(n *node, of string) Kind {
	slot, ok := c.slots[n.name]
	if !ok {
		refuse(n.at, of, "nothing is called %s; the nearest name is %s", wording.Clip(n.name, 60), nearest(n.name, c.AllNames()))
	}
	n.slot = slot
	if !slices.Contains(*c.using, slot) {
		*c.using = append(*c.using, slot)
	}
	if slot >= len(c.inputs) {
		c.line(slot - len(c.inputs))
	}
	n.kind = c.kinds[slot]
	return n.kind
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
	return measures(k[0].Dim.plus(k[1].Dim, times))
}

// measures is the kind of a number of a dimension that did not grow too far.
func measures(d Dim, ok bool) (Kind, error) {
	if !ok {
		return Kind{}, fmt.Errorf("the units grow past the power of %d", maxPower)
	}
	return Of(d), nil
}

func sameDim(o op, k []Kind) (Kind, error) {
	switch {
	case k[0] == k[1] && o.orders():
		return Kind{Class: Truth}, nil
	case k[0] == k[1]:
		return k[0], nil
	case o == opAdd:
		return Kind{}, fmt.Errorf("%s cannot be added to %s", k[1], k[0])
	case o == opSub:
		return Kind{}, fmt.Errorf("%s cannot be taken from %s", k[1], k[0])
	}
	return Kind{}, fmt.Errorf("%s cannot be compared with %s", k[0], k[1])
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
	return measures(Dim{}.plus(k[0].Dim, int(e.value.Num)))
}
