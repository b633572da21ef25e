// Package formula reads and works out files of formulas: named values in the
// words and units of the trade, one statement a line,
//
//	beam = min(reach - 20 mm, 0.21 * length)   # what the reach {reach} allows
//
// Every value has a kind that is known before anything is worked out: a number
// with its units (mm, kg, s and angle, in whole powers), true or false, a text,
// or a list of numbers. Adding mm to kg is refused with line and column.
//
// Why an evaluator of our own: a general expression language knows no units, so
// each operator would have to be replaced, and its values would be checked only
// when a formula meets them. This one has no loops, no functions of the user's
// own and no joining of texts, so the work is bounded by the size of the file,
// which is bounded too: nothing that a file says can make it run long.
//
// Statements, each beginning in the first column; a line that begins with white
// space goes on with the one above:
//
//	NAME = FORMULA         a value
//	tell NAME = FORMULA    a value that belongs on the page of reasons
//	check NAME = A <= B    something that must hold
//	guess NAME = VALUE     where a value found afloat starts, when formulas need it
//	limits NAME = [A, B]   how far a search may move a value
//	use "FILE"             the statements of another file; own ones of the same name win
//
// What follows # on a statement is its reason; {NAME} in it shows a value.
package formula

import (
	"fmt"

	"ribwright/geometry/wording"
)

// The bounds of what is read. A family of boats has some 150 statements.
const (
	maxFile       = 1 << 18 // bytes
	maxStatements = 2000    // with all files used
	maxNodes      = 40000   // numbers, names and operators of all formulas together
	maxDepth      = 60      // brackets and conditions inside one another
	maxList       = 50      // values in a list
	maxFiles      = 10      // files that use one another
)

// Source is one file of formulas.
type Source struct {
	Name string // for messages
	Text string
}

// Place is where something stands in a file; lines and columns count from 1.
type Place struct {
	File      string
	Line, Col int
}

// Fault is what is wrong there with the statement of a name, "" when none can be named.
func (p Place) Fault(name, text string) *wording.Fault {
	return &wording.Fault{File: p.File, Line: p.Line, Col: p.Col, Key: name, Text: text}
}

// refuse leaves what is being done with a file; catch takes the fault back.
func refuse(at Place, name, format string, args ...any) {
	panic(at.Fault(name, fmt.Sprintf(format, args...)))
}

// catch makes an error of what was refused.
func catch(err *error) {
	switch f := recover().(type) {
	case nil:
	case *wording.Fault:
		*err = f
	default:
		panic(f)
	}
}

// nearest returns the name spelled most like the given one, "" when there is none.
func nearest(name string, all []string) string {
	best, least := "", 1<<30
	for _, n := range all {
		if d := wording.Edits(name, n); d < least || d == least && n < best {
			best, least = n, d
		}
	}
	return best
}
