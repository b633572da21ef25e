// Package wording keeps words for people in shape: messages on one line, names cut
// to a length, sentences with a capital, and how unlike two names are.
package wording

import (
	"fmt"
	"strings"
	"unicode"
)

// OneLine keeps a message on one line whatever a file put into it, and keeps codes
// that a terminal would obey out of it: each becomes a space.
func OneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) {
			return ' '
		}
		return r
	}, s)
}

// Flat keeps a message on one line with single spaces, and codes that a terminal would obey
// out of it, whatever a file name put there.
func Flat(s string) string { return strings.Join(strings.Fields(OneLine(s)), " ") }

// Clip cuts a text to n letters and says so with three points behind them.
func Clip(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return string(r[:n]) + "..."
	}
	return s
}

// Capital begins words with a capital letter, where that is a Latin one without an
// accent.
func Capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}

// Counted writes a number with its noun, which takes an s where there are more or none.
func Counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// longest is how many letters of a name are compared; a longer one is no slip.
const longest = 64

// Edits returns the least count of letters to add, drop or change to turn a into
// b, for their first 64 letters. Source: the Levenshtein distance, row by row.
func Edits(a, b string) int {
	first, second := letters(a), letters(b)
	row := make([]int, len(second)+1)
	for j := range row {
		row[j] = j
	}
	for i, ra := range first {
		diagonal := row[0]
		row[0] = i + 1
		for j, rb := range second {
			change := diagonal
			if ra != rb {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, diagonal+1, row[j]+1)
		}
	}
	return row[len(second)]
}

func letters(s string) []rune {
	r := []rune(s)
	return r[:min(len(r), longest)]
}

// Nearest returns the name that a word was perhaps meant to be, "" where none is near:
// at most every other letter is a slip.
func Nearest(word string, names []string) string {
	best, least := "", len(letters(word))/2+1
	for _, n := range names {
		if e := Edits(word, n); e < least {
			best, least = n, e
		}
	}
	return best
}
