package design

import (
	"fmt"
	"strings"
	"unicode"
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
		b.WriteString(clip(f.Key, longestKey) + ": ")
	}
	b.WriteString(clip(f.Text, longestText))
	return oneLine(b.String())
}

// oneLine keeps a message on one line whatever a file put into it, and keeps
// codes that a terminal would obey out of it.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) {
			return ' '
		}
		return r
	}, s)
}

// clip cuts a text to n letters.
func clip(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return string(r[:n]) + "..."
	}
	return s
}
