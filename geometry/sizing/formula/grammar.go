package formula

import "ribwright/geometry/wording"

// node is a part of a formula: a value written out, a name, or what a function
// makes of other parts.
type node struct {
	name  string    // of a named value
	call  *function // or operator, list or condition
	args  []*node
	slot  int   // of a name: where its value is kept
	value Value // written out
	kind  Kind  // found by the check, but for a value written out
	at    Place
}

func (n *node) isValue() bool { return n.name == "" && n.call == nil }

// The grammar, loosest first: if-then-else, or, and, not, one comparison,
// + and -, * and /, a sign, a power, and what stands in brackets.

func (p *parser) formula() *node {
	p.depth++
	defer func() { p.depth-- }()
	if p.depth > maxDepth {
		p.fail(p.peek().at, "brackets and conditions stand in one another more than %d deep; split the formula", maxDepth)
	}
	if !p.comes("if") {
		return p.chain(rankOr)
	}
	const reads = "a condition reads if A then B else C"
	n := p.make(p.take(), node{call: &condition})
	n.args = append(n.args, p.formula())
	p.need("then", reads)
	n.args = append(n.args, p.formula())
	p.need("else", reads)
	n.args = append(n.args, p.formula())
	return n
}

// make counts a node against the bound of all files.
func (p *parser) make(t token, n node) *node {
	*p.nodes++
	if *p.nodes > maxNodes {
		p.fail(t.at, "the formulas have more than %d parts together; that is no family of boats", maxNodes)
	}
	n.at = t.at
	return &n
}

// chain reads values with operators of a rank and tighter ones before and between them.
func (p *parser) chain(rank int) *node {
	var n *node
	if f := p.operator(1, rank); f != nil {
		n = p.behind(f)
	} else {
		n = p.atom()
	}
	for f := p.operator(2, rank); f != nil; f = p.operator(2, rank) {
		n = p.behind(f, n)
	}
	return n
}

// behind takes an operator and the value behind it; before is the one before it.
func (p *parser) behind(f *function, before ...*node) *node {
	t := p.take()
	n := p.make(t, node{call: f})
	if len(before) > 0 {
		n.args = append(before, p.chain(f.rank+1))
	}
	if next := p.operator(f.sides, f.rank); next != nil && next.rank == f.rank && f.twice != "" {
		p.fail(p.peek().at, "%s", f.twice)
	}
	if len(before) == 0 {
		n.args = []*node{p.chain(f.rank + 1)}
	}
	return n
}

// operator is the operator that comes next, nil when none of the rank or a tighter one does.
func (p *parser) operator(sides, rank int) *function {
	for i := range operators {
		if f := &operators[i]; f.sides == sides && f.rank >= rank && p.comes(f.name) {
			return f
		}
	}
	return nil
}

func (p *parser) atom() *node {
	t := p.take()
	switch {
	case t.kind == numberToken:
		return p.make(t, node{value: Num(t.num), kind: Of(t.dim)})
	case t.kind == textToken:
		return p.make(t, node{value: Word(t.text), kind: Kind{Class: Text}})
	case t.kind == wordToken:
		return p.word(t)
	case t.kind == signToken && t.text == "(":
		n := p.formula()
		p.need(")", "the bracket is not closed")
		return n
	case t.kind == signToken && t.text == "[":
		n := p.make(t, node{call: &list})
		n.args = p.arguments("]")
		return n
	}
	p.fail(t.at, "%s stands where a value should: a number with its unit, a name, or a bracket", shown(t))
	return nil
}

func (p *parser) word(t token) *node {
	switch {
	case t.text == "true", t.text == "false":
		return p.make(t, node{value: Num(yes(t.text == "true")), kind: Kind{Class: Truth}})
	case t.text == "if":
		p.fail(t.at, "put brackets around a condition inside a formula: (if A then B else C)")
	case isKeyword(t.text):
		p.fail(t.at, "%q stands where a value should", t.text)
	case !p.comes("("):
		return p.make(t, node{name: t.text})
	}
	p.take()
	n := p.make(t, node{call: findFunction(t.text)})
	if n.call == nil {
		p.fail(t.at, "no function %q; there are %s", wording.Clip(t.text, 40), functionNames())
	}
	n.args = p.arguments(")")
	return n
}

// arguments reads formulas with commas between, up to the closing bracket.
func (p *parser) arguments(closing string) []*node {
	var out []*node
	for !p.comes(closing) {
		if len(out) >= maxList {
			p.fail(p.peek().at, "more than %d values stand in a row", maxList)
		}
		out = append(out, p.formula())
		if !p.comes(",") {
			break
		}
		p.take()
	}
	p.need(closing, "values stand in a row with commas between")
	return out
}
