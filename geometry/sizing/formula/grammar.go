package formula

import "ribwright/geometry/wording"

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
	const condition = "a condition reads if A then B else C"
	n := p.make(opIf, p.take())
	n.args = append(n.args, p.formula())
	p.need("then", condition)
	n.args = append(n.args, p.formula())
	p.need("else", condition)
	n.args = append(n.args, p.formula())
	return n
}

// make counts a node against the bound of all files.
func (p *parser) make(o op, t token, args ...*node) *node {
	*p.nodes++
	if *p.nodes > maxNodes {
		p.fail(t.at, "the formulas have more than %d parts together; that is no family of boats", maxNodes)
	}
	return &node{op: o, at: t.at, args: args}
}

// chain reads values with operators of a rank between them.
func (p *parser) chain(rank int) *node {
	switch rank {
	case rankNot:
		return p.prefixed(opNot, rank, "not stands twice; leave both out")
	case rankSign:
		return p.prefixed(opNeg, rank, "two minus signs stand in a row")
	case rankAtom:
		return p.atom()
	}
	n := p.chain(rank + 1)
	for first := true; p.nextRank() == rank; first = false {
		t := p.take()
		switch {
		case !first && rank == rankCompare:
			p.fail(t.at, "two comparisons stand in a row; write a < b and b < c")
		case !first && rank == rankPower:
			p.fail(t.at, "two powers stand in a row; use brackets")
		}
		o, _ := between(t.text)
		n = p.make(o, t, n, p.chain(rank+1))
	}
	return n
}

// nextRank is the rank of the operator that comes next, that of an atom when none
// does.
func (p *parser) nextRank() int {
	t := p.peek()
	if o, ok := between(t.text); ok && p.comes(t.text) {
		return o.rank()
	}
	return rankAtom
}

// prefixed reads a chain of the next rank with at most one not or minus before it.
func (p *parser) prefixed(o op, rank int, twice string) *node {
	if !p.comes(operators[o].sign) {
		return p.chain(rank + 1)
	}
	t := p.take()
	if p.comes(operators[o].sign) {
		p.fail(p.peek().at, "%s", twice)
	}
	return p.make(o, t, p.chain(rank+1))
}

func (p *parser) atom() *node {
	t := p.take()
	switch t.kind {
	case numberToken:
		n := p.make(opValue, t)
		n.value, n.kind = Num(t.num), Of(t.dim)
		return n
	case textToken:
		n := p.make(opValue, t)
		n.value, n.kind = Word(t.text), Kind{Class: Text}
		return n
	case wordToken:
		return p.word(t)
	case signToken:
		switch t.text {
		case "(":
			n := p.formula()
			p.need(")", "the bracket is not closed")
			return n
		case "[":
			n := p.make(opList, t)
			n.args = p.arguments("]")
			return n
		}
	}
	p.fail(t.at, "%s stands where a value should: a number with its unit, a name, or a bracket", shown(t))
	return nil
}

func (p *parser) word(t token) *node {
	switch t.text {
	case "true", "false":
		n := p.make(opValue, t)
		n.value, n.kind = Yes(t.text == "true"), Kind{Class: Truth}
		return n
	case "if":
		p.fail(t.at, "put brackets around a condition inside a formula: (if A then B else C)")
	}
	if isKeyword(t.text) {
		p.fail(t.at, "%q stands where a value should", t.text)
	}
	if !p.comes("(") {
		n := p.make(opName, t)
		n.name = t.text
		return n
	}
	p.take()
	n := p.make(opCall, t)
	n.name, n.call = t.text, findFunction(t.text)
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
