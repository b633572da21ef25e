package formula

import (
	"maps"
	"slices"
	"strings"

	"ribwright/geometry/wording"
)

// checker finds the kind of every formula and an order to work them out in.
type checker struct {
	*Program
	done  []bool // by slot
	trail []int  // slots being looked at
}

func (c *checker) all() {
	for i := range c.values {
		c.value(i)
	}
	for i := range c.checks {
		c.wants(&c.checks[i], "a comparison or another formula that is true or false", Kind{Class: Truth})
	}
	c.guesses()
	c.bounds()
	for _, s := range slices.Concat(c.values, c.checks) {
		for _, m := range braced.FindAllStringSubmatch(s.reason, -1) {
			if _, ok := c.slots[m[1]]; !ok && s.body != nil {
				refuse(s.at, s.name, "the reason shows {%s}, which is no name; the nearest is %s", wording.Clip(m[1], 40), nearest(m[1], c.AllNames()))
			}
		}
	}
}

// value checks a value after those it uses.
func (c *checker) value(slot int) {
	s := &c.values[slot]
	if c.done[slot] || s.body == nil {
		return
	}
	if i := slices.Index(c.trail, slot); i >= 0 {
		c.circle(c.trail[i:])
	}
	c.trail = append(c.trail, slot)
	s.kind = c.kind(s.body, s)
	c.trail = c.trail[:len(c.trail)-1]
	c.done[slot] = true
	c.order = append(c.order, slot)
}

func (c *checker) circle(slots []int) {
	var names []string
	for _, i := range slots {
		names = append(names, c.values[i].name)
	}
	s := c.values[slots[0]]
	if len(names) > 12 {
		names = append(names[:11], "...")
	}
	refuse(s.at, s.name, "needs itself: %s, which needs %s; break the circle", strings.Join(names, " needs "), s.name)
}

// wants checks a statement that must be of a kind.
func (c *checker) wants(s *statement, accepted string, want Kind) {
	if k := c.kind(s.body, s); k != want {
		refuse(s.body.at, s.name, "is %s; accepted: %s", k, accepted)
	}
}

// guesses checks the starts of values found afloat: plain values of their kind.
func (c *checker) guesses() {
	for _, name := range slices.Sorted(maps.Keys(c.guess)) {
		s := c.guess[name]
		slot, ok := c.slots[name]
		if !ok || !c.values[slot].afloat {
			refuse(s.at, name, "only a value found afloat takes a guess")
		}
		c.wants(&s, c.values[slot].kind.String(), c.values[slot].kind)
		if !s.body.isValue() {
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
		want := Kind{List, c.values[c.slots[name]].kind.Dim}
		c.wants(&s, want.String()+", lowest and highest", want)
		a := s.body.args
		if len(a) != 2 || !a[0].isValue() || !a[1].isValue() || !(a[0].value.Num < a[1].value.Num) {
			refuse(s.body.at, name, "limits are two numbers, the lower first, as [3000 mm, 4200 mm]")
		}
	}
}

// kind finds the kind of a formula of a statement and refuses what does not go together.
func (c *checker) kind(n *node, s *statement) Kind {
	if n.name != "" {
		slot, ok := c.slots[n.name]
		if !ok {
			refuse(n.at, s.name, "nothing is called %s; the nearest name is %s", wording.Clip(n.name, 60), nearest(n.name, c.AllNames()))
		}
		if !slices.Contains(s.uses, slot) {
			s.uses = append(s.uses, slot)
		}
		c.value(slot)
		n.slot, n.kind = slot, c.values[slot].kind
	}
	if n.call == nil {
		return n.kind
	}
	for _, a := range n.args {
		c.kind(a, s)
	}
	var err error
	if n.kind, err = n.call.result(n.args); err != nil {
		refuse(n.at, s.name, "%v", err)
	}
	return n.kind
}
