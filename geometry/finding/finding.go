// Package finding holds what the program found of an outfit in plain words, with
// how firm each rule is, and the ranges that practice gives.
package finding

import "fmt"

// The standings of a rule.
const (
	Arithmetic = "arithmetic"
	Practice   = "practice"
	Borrowed   = "borrowed yardstick, not a rule for canoes"
	Memory     = "from memory"
	Estimate   = "estimate"
	Law        = "law, as read; local law comes first"
)

// Note is one thing that was found.
type Note struct {
	About    string
	Text     string
	Standing string
	Danger   bool // people can drown or something can break: shown first
}

// Notes is a list that is written to.
type Notes []Note

// Say adds a note.
func (n *Notes) Say(about, standing, format string, args ...any) {
	*n = append(*n, Note{About: about, Text: fmt.Sprintf(format, args...), Standing: standing})
}

// Warn adds a note of danger.
func (n *Notes) Warn(about, standing, format string, args ...any) {
	*n = append(*n, Note{about, fmt.Sprintf(format, args...), standing, true})
}

// Range is a figure beside what practice gives for it. It is a habit of the trade,
// never a limit.
type Range struct {
	Name      string
	Value     float64
	Low, High float64
	Unit      string // "mm", "%"
	Source    string
}

// Inside reports whether the figure lies in the range, to half a unit.
func (r Range) Inside() bool { return r.Value >= r.Low-0.5 && r.Value <= r.High+0.5 }
