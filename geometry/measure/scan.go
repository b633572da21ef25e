package measure

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// kind tells the tokens of a written measure apart.
type kind int

const (
	end    kind = iota // nothing is left
	number             // digits, perhaps with points among them
	vulgar             // a one-character fraction, its text is like "1/2"
	unit               // a word in lower case, or one of the marks ' " deg
	sign               // "+", "-" or the true minus U+2212
	slash              // "/" or the fraction slash U+2044
	other              // anything else
)

// token is one piece of a written measure.
type token struct {
	kind kind
	text string // as the parser compares it: lower case, marks made plain
	at   int    // byte where it starts in the text given
	gap  bool   // white space stands before it
}

// scan cuts s into tokens and drops the white space between them.
func scan(s string) []token {
	var toks []token
	gap := false
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		if unicode.IsSpace(r) {
			gap = true
			i += n
			continue
		}
		k, text, n := first(s[i:])
		toks = append(toks, token{kind: k, text: text, at: i, gap: gap})
		gap = false
		i += n
	}
	return toks
}

// first returns the kind, plain text and byte count of the token s starts with.
func first(s string) (kind, string, int) {
	r, n := utf8.DecodeRuneInString(s)
	switch {
	case isDigit(r):
		n = run(s, isDigit)
		return number, s[:n], n
	case unicode.IsLetter(r):
		n = run(s, unicode.IsLetter)
		return unit, strings.ToLower(s[:n]), n
	case isFootMark(r):
		// Two foot marks side by side are how a typewriter made an inch mark.
		if r2, n2 := utf8.DecodeRuneInString(s[n:]); isFootMark(r2) {
			return unit, `"`, n + n2
		}
		return unit, "'", n
	}
	if f := vulgarFraction(r); f != "" {
		return vulgar, f, n
	}
	k, text := markKind(r, s[:n])
	return k, text, n
}

// markKind sorts the single marks that are neither feet nor fractions.
func markKind(r rune, text string) (kind, string) {
	switch r {
	case '"', '\u201C', '\u201D', '\u2033':
		return unit, `"`
	case '\u00B0':
		return unit, "deg"
	case '/', '\u2044':
		return slash, "/"
	case '+', '-', '\u2212':
		return sign, text
	}
	return other, text
}

// run returns how many bytes at the start of s satisfy ok.
func run(s string, ok func(rune) bool) int {
	if n := strings.IndexFunc(s, func(r rune) bool { return !ok(r) }); n >= 0 {
		return n
	}
	return len(s)
}

// isDigit reports whether r can be part of a decimal. Only 0 to 9 count:
// digits of other scripts would be read by few and checked by nobody.
func isDigit(r rune) bool { return r >= '0' && r <= '9' || r == '.' }

// isFootMark reports whether r is an apostrophe, straight, curly or prime.
func isFootMark(r rune) bool {
	return r == '\'' || r == '\u2018' || r == '\u2019' || r == '\u2032'
}

// vulgarFraction returns the fraction that the single character r stands for,
// as "1/2", or "" when r is no such character.
func vulgarFraction(r rune) string {
	const latin = '\u00BC' // 1/4, 1/2, 3/4 in this order
	const block = '\u2150' // the number forms of Unicode, in this order
	if r >= latin && r <= '\u00BE' {
		return [...]string{"1/4", "1/2", "3/4"}[r-latin]
	}
	if r >= block && r <= '\u215E' {
		return [...]string{
			"1/7", "1/9", "1/10", "1/3", "2/3", "1/5", "2/5", "3/5", "4/5",
			"1/6", "5/6", "1/8", "3/8", "5/8", "7/8",
		}[r-block]
	}
	return ""
}
