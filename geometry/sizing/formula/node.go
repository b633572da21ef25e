package formula

// op is what a node of a formula does.
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

// node is one step of a formula.
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

// signs maps how an operator is written to what it does.
func signOp(text string) (op, bool) {
	switch text {
	case "+":
		return opAdd, true
	case "-":
		return opSub, true
	case "*":
		return opMul, true
	case "/":
		return opDiv, true
	case "^":
		return opPow, true
	case "<":
		return opLess, true
	case "<=":
		return opLessEq, true
	case ">":
		return opMore, true
	case ">=":
		return opMoreEq, true
	case "==":
		return opEqual, true
	case "!=":
		return opDiffer, true
	}
	return 0, false
}

// compares reports whether an operator gives true or false from two values.
func (o op) compares() bool { return o >= opLess && o <= opDiffer }

// orders reports whether an operator compares sizes, so that a margin is left.
func (o op) orders() bool { return o >= opLess && o <= opMoreEq }

// Form is what a statement is for.
type Form int8

// The forms of statement.
const (
	Plainly Form = iota // a value
	ForPage             // a value for the page
	Checked             // must be true
	Guessed             // the start of a value found afloat
	Limited             // how far a search may go
)

// statement is one line of a file.
type statement struct {
	form    Form
	name    string
	at      Place
	body    *node
	written string   // the formula as it stands in the file, on one line
	reason  string   // what follows #
	shows   []string // names in {} of the reason
}
