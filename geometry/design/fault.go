package design

import (
	"fmt"
	"strings"

	"ribwright/geometry/wording"
)

// Fault is something wrong in a design file, told to the woodworker: where it
// is, what it is, and what would be accepted.
type Fault struct {
	File string // name of the file, or of the shipped design
	Line int    // 1 for the first line; 0 when no line can be named
	Key  string // the key with its table, "ribs.thickness"; may be empty
	Text string // what is wrong, with its value and unit, and what is accepted
}

// Longest key and text that are told, in letters. What a sensible file holds is
// far shorter; the rest of a wrong one would only push the message off the screen.
const (
	longestKey  = 80
	longestText = 500
)

// Error returns the fault as one line: file:line: key: text.
func (f *Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d", f.Line)
	}
	b.WriteString(": ")
	if f.Key != "" {
		b.WriteString(wording.Clip(f.Key, longestKey) + ": ")
	}
	b.WriteString(wording.Clip(f.Text, longestText))
	return wording.OneLine(b.String())
}
