// Package lettering knows the two kinds of lettering on a pattern: a printed font, which it
// carries, measures, wraps and clips but does not draw, and single strokes for a tool that
// burns or cuts along a line, which it draws.
//
// Lengths are mm, y is up, and a line of lettering starts at the origin on its
// baseline and runs right.
package lettering

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
)

// zeroWidthJoiner glues emoji into one picture; alone it prints nothing.
const zeroWidthJoiner = '\u200d'

// Safe returns s as one line that the font of the sheets can print: it has a glyph for
// every rune of the result, and none is a control character. White space of any kind
// becomes single spaces, none at the ends; other control and invisible characters vanish.
// Primes, curly quotes, vulgar fractions and the like are written plainly, Latin letters
// that the font lacks lose their accents, and what is left (a run of invalid bytes, a
// letter of another script, a whole emoji) becomes an empty box, of which Missing tells.
// Safe(Safe(s)) is Safe(s); "" stays "".
func Safe(s string) string {
	if safeAlready(s) {
		return s
	}
	var c cleaner
	for _, r := range strings.ToValidUTF8(s, "\ufffd") {
		c.take(r)
	}
	return string(c.out)
}

// safeAlready reports whether Safe would leave s as it is, for the many texts of
// which that is seen at a glance: single spaces, printing ASCII, and the signs for
// degrees, more or less, a raised dot, times and a diameter.
func safeAlready(s string) bool {
	last := byte(' ')
	for i := 0; i < len(s); i++ {
		c := s[i]
		if (c == 0xc2 || c == 0xc3) && i+1 < len(s) && strings.Contains("\u00b0\u00b1\u00b7\u00d7\u00d8", s[i:i+2]) {
			i++
		} else if c < ' ' || c > '~' || c == ' ' && last == ' ' {
			return false
		}
		last = c
	}
	return last != ' ' || s == ""
}

// cleaner is the state of Safe between two runes.
type cleaner struct {
	out      []rune
	space    bool // white space seen since the last rune of out
	fraction bool // out ends in a fraction
	previous rune // last rune taken that began a picture; 0 after white space
	joined   bool // a zero width joiner followed previous
}

func (c *cleaner) take(r rune) {
	switch {
	case unicode.IsSpace(r):
		c.space, c.previous, c.joined = true, 0, false
	case r == zeroWidthJoiner:
		c.joined = true
	case unicode.IsControl(r), unicode.Is(unicode.Cf, r):
		// Dropped without a space, so that text misread from UTF-16, with a
		// zero after every letter, still comes out as words.
	case unicode.IsMark(r):
		c.accent(r)
	default:
		if !c.samePicture(r) {
			c.write(r)
		}
		c.joined = false
	}
}

// accent puts the combining mark r on the last letter where the font has the pair as one
// character, and drops it where not.
func (c *cleaner) accent(r rune) {
	if n := len(c.out); n > 0 && !c.space {
		c.out[n-1] = compose(c.out[n-1], r)
	}
}

// samePicture reports whether r only completes the emoji before it: a skin
// tone, the second half of a flag, or the next part after a joiner.
func (c *cleaner) samePicture(r rune) bool {
	switch {
	case !isPicture(c.previous):
		return false
	case isFlagHalf(c.previous) && isFlagHalf(r):
		c.previous = 0 // a third half begins the next flag
		return true
	case c.joined && unicode.IsSymbol(r):
		return true
	}
	return r >= 0x1f3fb && r <= 0x1f3ff
}

func isFlagHalf(r rune) bool { return r >= 0x1f1e6 && r <= 0x1f1ff }

// isPicture includes a block by number because a new emoji is unassigned in
// the Unicode tables of an older Go.
func isPicture(r rune) bool {
	return unicode.Is(unicode.So, r) || r >= 0x1f000 && r <= 0x1faff
}

// write appends r in its plain form, after the space it is due. A fraction is
// kept off the digits beside it: 5 and a half must not become 51/2.
func (c *cleaner) write(r rune) {
	text := fraction(r)
	isFraction := text != ""
	runes := []rune(cmp.Or(text, plain(r)))
	if n := len(c.out); n > 0 {
		touching := (isFraction || c.fraction) && unicode.IsNumber(c.out[n-1]) && unicode.IsNumber(runes[0])
		if c.space || touching {
			c.out = append(c.out, ' ')
		}
	}
	c.out = append(c.out, runes...)
	c.space, c.fraction, c.previous = false, isFraction, r
}

// Missing returns the letters and pictures of s that the font of the sheets lacks, each
// once and in order. Safe writes a Latin letter among them without its accent and a box for
// any other. "" when all of s is lettered.
func Missing(s string) string {
	var out []rune
	for _, r := range strings.ToValidUTF8(s, "\ufffd") {
		invisible := unicode.IsSpace(r) || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.IsMark(r)
		if invisible || fraction(r) != "" || slices.Contains(out, r) {
			continue
		}
		if p := plain(r); p == string(box) && r != box || p == string(baseLetter(r)) {
			out = append(out, r)
		}
	}
	return string(out)
}
