package formula

type op int8

const (
	opValue op = iota // a number, text or truth written out
	opName            // a named value
	opNeg
	opNot
	opAdd
	opSub
	opMul
	opDiv
	opPow
	opLess
	opLessEq
	opMore
	opMoreEq
	opEqual
	opDiffer
	opAnd
	opOr
	opIf
	opCall
	opList
)

// How tightly operators bind, the loosest first.
const (
	rankIf = iota
	rankOr
	rankAnd
	rankNot
	rankCompare
	rankSum
	rankProduct
	rankSign
	rankPower
	rankAtom // values, names and what stands in brackets
)

// operators are the ops that are written before or between values.
var operators = [...]struct {
	sign string
	rank int
}{
	opNeg: {"-", rankSign}, opNot: {"not", rankNot},
	opAdd: {"+", rankSum}, opSub: {"-", rankSum}, opMul: {"*", rankProduct}, opDiv: {"/", rankProduct}, opPow: {"^", rankPower},
	opLess: {"<", rankCompare}, opLessEq: {"<=", rankCompare}, opMore: {">", rankCompare}, opMoreEq: {">=", rankCompare},
	opEqual: {"==", rankCompare}, opDiffer: {"!=", rankCompare}, opAnd: {"and", rankAnd}, opOr: {"or", rankOr},
}

// between finds the operator with two sides that is written so, if there is one.
func between(sign string) (op, bool) {
	for o := opAdd; o <= opOr; o++ {
		if operators[o].sign == sign {
			return o, true
		}
	}
	return 0, false
}

// rank is how tightly an op binds.
func (o op) rank() int {
	switch {
	case o == opIf:
		return rankIf
	case o >= opNeg && o <= opOr:
		return operators[o].rank
	}
	return rankAtom
}

// orders reports whether an operator compares sizes, so that a margin is left.
func (o op) orders() bool { return o >= opLess && o <= opMoreEq }

type node struct {
	op    op
	at    Place
	args  []*node
	value Value  // of opValue
	name  string // of opName and opCall
	kind  Kind   // found by the check
	slot  int    // of opName: where its value is kept
	call  *function
}

type form int8

const (
	plainForm  form = iota // a value
	tellForm               // a value for the page of reasons
	checkForm              // must be true
	guessForm              // the start of a value found afloat
	limitsForm             // how far a search may go
)

type statement struct {
	form    form
	name    string
	at      Place
	body    *node
	written string   // the formula as it stands in the file, on one line
	reason  string   // what follows #
	shows   []string // names in {} of the reason
}
