package formula

import (
	"fmt"
	"strings"
	"unicode"
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
		s += clip(f.Name, 60) + ": "
	}
	return oneLine(s + clip(f.Text, 500))
}

func faultAt(at Place, name, format string, args ...any) *Fault {
	return &Fault{at, name, fmt.Sprintf(format, args...)}
}

// oneLine keeps a message on one line whatever a file put into it.
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

// nearest returns the name spelt most like the given one, "" when there is none.
func nearest(name string, all []string) string {
	best, least := "", 1<<30
	for _, n := range all {
		if d := edits(name, n); d < least || d == least && n < best {
			best, least = n, d
		}
	}
	return best
}

// edits counts the letters to add, drop or change (Levenshtein); only the first
// 60 of each name count.
func edits(a, b string) int {
	a, b = a[:min(len(a), 60)], b[:min(len(b), 60)]
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
