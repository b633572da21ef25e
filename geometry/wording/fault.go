package wording

import "fmt"

// Fault is something wrong in a file, told to the woodworker: where it is, what it
// is, and what would be accepted.
type Fault struct {
	File string // its name, or the name of what is shipped
	Line int    // 1 for the first line; 0 when no line can be named
	Col  int    // 1 for the first letter; 0 where none is told
	Key  string // the key with its table, "ribs.thickness"; may be empty
	Text string // what is wrong, with its value and unit, and what is accepted
}

// Longest key and text that are told, in letters. What a sensible file holds is
// far shorter; the rest of a wrong one would only push the message off the screen.
const (
	longestKey  = 80
	longestText = 500
)

// Error returns the fault as one line: file:line:column: key: text.
func (f *Fault) Error() string {
	s := f.File
	for _, n := range []int{f.Line, f.Col} {
		if n > 0 {
			s += fmt.Sprintf(":%d", n)
		}
	}
	if f.Key != "" {
		s += ": " + Clip(f.Key, longestKey)
	}
	return OneLine(s + ": " + Clip(f.Text, longestText))
}
