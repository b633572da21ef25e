package design

import (
	"fmt"
	"strings"
)

// Fault is something wrong in a design file, told to the woodworker: where it
// is, what it is, and what would be accepted.
type Fault struct {
	File string // name of the file, or of the shipped design
	Line int    // 1 for the first line; 0 when no line can be named
	Key  string // the key with its table, "ribs.thickness"; may be empty
	Text string // what is wrong, with its value and unit, and what is accepted
}

// Error returns the fault as one line: file:line: key: text.
func (f *Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d", f.Line)
	}
	b.WriteString(": ")
	if f.Key != "" {
		b.WriteString(f.Key + ": ")
	}
	b.WriteString(oneLine(f.Text))
	return b.String()
}

// oneLine keeps a message on one line whatever a file put into it.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return ' '
		}
		return r
	}, s)
}
