package formula

import "ribwright/geometry/wording"

// The grammar, loosest first: if-then-else, or, and, not, one comparison,
// + and -, * and /, a sign, a power, and what stands in brackets.

// formula reads a whole formula.
func (p *parser) formula() *node {
	p.depth++
	defer func() { p.depth-- }()
	if p.depth > maxDepth {
		p.fail(p.peek().at, "brackets and conditions stand in one another more than %d deep; split the formula", maxDepth)
	}
	if !p.isKey("if") {
		return p.either()
	}
	n := p.make(opIf, p.take())
	n.args = append(n.args, p.formula())
	p.needKey("then")
	n.args = append(n.args, p.formula())
	p.needKey("else")
	n.args = append(n.args, p.formula())
	return n
}

func (p *parser) needKey(word string) {
	if !p.isKey(word) {
		t := p.peek()
		p.fail(t.at, "%s stands where %q should; a condition reads if A then B else C", shown(t), word)
	}
	p.take()
}

// make counts a node against the bound of all files.
func (p *parser) make(o op, t token, args ...*node) *node {
	*p.nodes++
	if *p.nodes > maxNodes {
		p.fail(t.at, "the formulas have more than %d parts together; that is no family of boats", maxNodes)
	}
	return &node{op: o, at: t.at, args: args}
}

func (p *parser) either() *node {
	n := p.both()
	for p.isKey("or") {
		t := p.take()
		n = p.make(opOr, t, n, p.both())
	}
	return n
}

func (p *parser) both() *node {
	n := p.negated()
	for p.isKey("and") {
		t := p.take()
		n = p.make(opAnd, t, n, p.negated())
	}
	return n
}

func (p *parser) negated() *node {
	if !p.isKey("not") {
		return p.comparison()
	}
	t := p.take()
	if p.isKey("not") {
		p.fail(p.peek().at, "not stands twice; leave both out")
	}
	return p.make(opNot, t, p.comparison())
}

func (p *parser) comparison() *node {
	n := p.sum()
	o, ok := p.nextOp()
	if !ok || !o.compares() {
		return n
	}
	t := p.take()
	n = p.make(o, t, n, p.sum())
	if o, ok := p.nextOp(); ok && o.compares() {
		p.fail(p.peek().at, "two comparisons stand in a row; write a < b and b < c")
	}
	return n
}

// nextOp returns the operator that comes next, if one does.
func (p *parser) nextOp() (op, bool) {
	t := p.peek()
	if t.kind != signToken {
		return 0, false
	}
	return signOp(t.text)
}

func (p *parser) sum() *node {
	n := p.product()
	for {
		o, ok := p.nextOp()
		if !ok || o != opAdd && o != opSub {
			return n
		}
		t := p.take()
		n = p.make(o, t, n, p.product())
	}
}

func (p *parser) product() *node {
	n := p.signed()
	for {
		o, ok := p.nextOp()
		if !ok || o != opMul && o != opDiv {
			return n
		}
		t := p.take()
		n = p.make(o, t, n, p.signed())
	}
}

func (p *parser) signed() *node {
	if !p.isSign("-") {
		return p.power()
	}
	t := p.take()
	if p.isSign("-") {
		p.fail(p.peek().at, "two minus signs stand in a row")
	}
	return p.make(opNeg, t, p.power())
}

func (p *parser) power() *node {
	n := p.atom()
	if !p.isSign("^") {
		return n
	}
	t := p.take()
	n = p.make(opPow, t, n, p.atom())
	if p.isSign("^") {
		p.fail(p.peek().at, "two powers stand in a row; use brackets")
	}
	return n
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
	if !p.isSign("(") {
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
	for !p.isSign(closing) {
		if len(out) >= maxList {
			p.fail(p.peek().at, "more than %d values stand in a row", maxList)
		}
		out = append(out, p.formula())
		if !p.isSign(",") {
			break
		}
		p.take()
	}
	p.need(closing, "values stand in a row with commas between")
	return out
}
