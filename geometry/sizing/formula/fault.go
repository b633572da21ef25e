package formula

import (
	"fmt"

	"ribwright/geometry/wording"
)

// Fault is something wrong in a file of formulas.
type Fault struct {
	At   Place
	Name string // of the statement, "" when none can be named
	Text string // what is wrong and what would be accepted
}

// Error returns the fault as one line: file:line:column: name: text.
func (f *Fault) Error() string {
	s := f.At.String() + ": "
	if f.At.Line == 0 {
		s = f.At.File + ": "
	}
	if f.Name != "" {
		s += wording.Clip(f.Name, 60) + ": "
	}
	return wording.OneLine(s + wording.Clip(f.Text, 500))
}

func faultAt(at Place, name, format string, args ...any) *Fault {
	return &Fault{at, name, fmt.Sprintf(format, args...)}
}

// nearest returns the name spelt most like the given one, "" when there is none.
func nearest(name string, all []string) string {
	best, least := "", 1<<30
	for _, n := range all {
		if d := wording.Edits(name, n); d < least || d == least && n < best {
			best, least = n, d
		}
	}
	return best
}
