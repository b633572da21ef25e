package measure

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxBytes is the longest text that is read. The longest sensible one,
// 13 feet 11 63/64 inches, is half of it; the bound keeps the exact arithmetic small.
const maxBytes = 64

// smallest is the least magnitude, zero apart, that is read or written. Below
// it the plain decimal of a float64 would no longer fit in maxBytes. It is far
// below the rounding noise of any length or angle in a boat.
const smallest = 1e-40

// reader takes a written measure apart from left to right.
type reader struct {
	what  string // "length" or "angle", for the error texts
	units string // the units accepted, for the error texts
	unit  string // the usual one of them
	text  string // as given
	toks  []token
	minus bool // a minus sign stood at the start
}

// parse reads a whole text as one measure, whose magnitude read returns, and returns
// the float64 nearest to it.
func parse(what, units, unit, text string, read func(*reader) *big.Rat) (x float64, err error) {
	r := &reader{what: what, units: units + ", as 12 " + unit, unit: unit, text: text}
	defer func() {
		switch f := recover().(type) {
		case nil:
		case refusal:
			x, err = 0, f
		default:
			panic(f)
		}
	}()
	if len(text) > maxBytes {
		r.text = text[:20] + "..."
		r.fail("the text is %d bytes long; at most %d are read", len(text), maxBytes)
	}
	r.toks = scan(text)
	if len(r.toks) == 0 {
		r.fail("nothing is written; write a number and a unit: %s", r.units)
	}
	if strings.Contains(text, ",") {
		r.fail("commas are not read; write 3.5 %[1]s, not 3,5, and 1000 %[1]s, not 1,000", unit)
	}
	if t := r.peek(0); t.kind == sign {
		r.minus = t.text != "+"
		r.skip(1)
	}
	v := read(r)
	if x = r.nearest(v); v.Sign() != 0 && math.Abs(x) < smallest {
		r.fail("the %s is too small to mean anything; write 0", what)
	}
	return x, nil
}

// nearest is the float64 nearest to a magnitude, with the sign that was read.
func (r *reader) nearest(v *big.Rat) float64 {
	x, _ := v.Float64()
	if r.minus {
		return 0 - x // minus zero is 0
	}
	return x
}

// peek returns the token i places ahead, or one of kind end.
func (r *reader) peek(i int) token {
	if i < len(r.toks) {
		return r.toks[i]
	}
	return token{kind: end, at: len(r.text)}
}

func (r *reader) skip(n int) { r.toks = r.toks[n:] }

func (r *reader) rest() string { return strings.TrimSpace(r.text[r.peek(0).at:]) }

// refusal says why a text is no measure; it leaves the reading by a panic that parse
// takes back.
type refusal struct{ error }

// fail refuses the text, which it shows before the reason.
func (r *reader) fail(format string, args ...any) {
	panic(refusal{fmt.Errorf("%s %s: %s", r.what, quote(r.text), fmt.Sprintf(format, args...))})
}

// quote shows s in quotes. Inch marks would need escapes inside double
// quotes, so text with them gets backquotes.
func quote(s string) string {
	if strings.Contains(s, `"`) {
		return fmt.Sprintf("%#q", s)
	}
	return fmt.Sprintf("%q", s)
}

// quantity reads 3, 3.5, 7/8, 34 1/2, 34-1/2 or a one-character fraction
// with or without a whole number before it.
func (r *reader) quantity() *big.Rat {
	if v, n := r.fraction(0); n > 0 {
		r.skip(n)
		return v
	}
	text := r.peek(0).text
	v := r.decimal()
	// The hyphen of 34-1/2 must touch both numbers: "34 - 1/2" is a subtraction.
	hyphen := 0
	if t := r.peek(0); t.text == "-" && !t.gap && !r.peek(1).gap {
		hyphen = 1
	}
	f, n := r.fraction(hyphen)
	if n == 0 {
		return v
	}
	if strings.Contains(text, ".") {
		r.fail("a fraction follows the decimal %s; write one or the other", text)
	}
	r.skip(hyphen + n)
	return v.Add(v, f)
}

// decimal reads whole digits or digits with one point and digits after it.
func (r *reader) decimal() *big.Rat {
	t := r.peek(0)
	v, ok := new(big.Rat).SetString(t.text)
	switch {
	case t.kind == end:
		r.fail("a number is missing; write a number and a unit: %s", r.units)
	case t.kind == sign:
		r.fail("%s is out of place; a sign may stand only once, at the very start", quote(t.text))
	case t.kind != number:
		r.fail("%[1]s stands where a number should; write digits and a unit, as 12 %[2]s, 3.5 %[2]s or 7/8 %[2]s", quote(r.rest()), r.unit)
	case !ok, strings.HasSuffix(t.text, "."):
		r.fail("%s is not a number; write digits on both sides of one point, as 3.5", quote(t.text))
	}
	r.skip(1)
	return v
}

// fraction looks for a fraction that starts i tokens ahead and returns it with
// the count of its tokens, 0 when there is none. It reads nothing off.
func (r *reader) fraction(i int) (*big.Rat, int) {
	a, b := r.peek(i), r.peek(i+2)
	if a.kind == vulgar {
		v, _ := new(big.Rat).SetString(a.text)
		return v, 1
	}
	if a.kind != number || r.peek(i+1).kind != slash {
		return nil, 0
	}
	// Base 10 outright: left to itself, big reads a leading zero as octal.
	num, ok1 := new(big.Int).SetString(a.text, 10)
	den, ok2 := new(big.Int).SetString(b.text, 10)
	if !ok1 || !ok2 || b.kind != number {
		r.fail("a fraction is two whole numbers, as 7/8")
	}
	if den.Sign() == 0 {
		r.fail("the fraction %s/%s divides by zero", a.text, b.text)
	}
	return new(big.Rat).SetFrac(num, den), 3
}

// word reads the unit that must follow a number.
func (r *reader) word() string {
	t := r.peek(0)
	switch t.kind {
	case unit:
		r.skip(1)
	case end:
		r.fail("the number has no unit; write %s", r.units)
	default:
		r.fail("%s stands where the unit should; write %s", quote(r.rest()), r.units)
	}
	return t.text
}

// unknown refuses the unit word that has just been read.
func (r *reader) unknown(word string) {
	if t := r.peek(0); word == "e" && !t.gap && (t.kind == number || t.kind == sign) {
		r.fail("exponents are not read; write the number out, as 1000 %s", r.unit)
	}
	r.fail("unknown unit %s; write %s", quote(word), r.units)
}

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
	m, isMark := marks[r]
	switch {
	case isDigit(r):
		n = run(s, isDigit)
		return number, s[:n], n
	case unicode.IsLetter(r):
		n = run(s, unicode.IsLetter)
		return unit, strings.ToLower(s[:n]), n
	case isMark && m.text == "'":
		// Two foot marks side by side are how a typewriter made an inch mark.
		if r2, n2 := utf8.DecodeRuneInString(s[n:]); marks[r2] == m {
			return unit, `"`, n + n2
		}
		return m.kind, m.text, n
	case isMark:
		return m.kind, m.text, n
	}
	if f := Vulgar(r); f != "" {
		return vulgar, f, n
	}
	return other, s[:n], n
}

type mark struct {
	kind kind
	text string
}

// marks are the single characters that mean something: for feet an apostrophe,
// straight, curly or prime.
var marks = map[rune]mark{
	'\'': {unit, "'"}, '\u2018': {unit, "'"}, '\u2019': {unit, "'"}, '\u2032': {unit, "'"},
	'"': {unit, `"`}, '\u201C': {unit, `"`}, '\u201D': {unit, `"`}, '\u2033': {unit, `"`},
	'\u00B0': {unit, "deg"}, '/': {slash, "/"}, '\u2044': {slash, "/"},
	'+': {sign, "+"}, '-': {sign, "-"}, '\u2212': {sign, "\u2212"},
}

// run returns how many bytes at the start of s satisfy ok.
func run(s string, ok func(rune) bool) int { return len(s) - len(strings.TrimLeftFunc(s, ok)) }

// isDigit reports whether r can be part of a decimal. Only 0 to 9 count:
// digits of other scripts would be read by few and checked by nobody.
func isDigit(r rune) bool { return r >= '0' && r <= '9' || r == '.' }

// Vulgar returns the fraction that the single character r stands for, as "1/2", or ""
// when r is no such character.
func Vulgar(r rune) string {
	const latin, block = '\u00BC', '\u2150' // the first in Latin-1 and of the number forms
	if r >= latin && r < latin+3 {
		return [...]string{"1/4", "1/2", "3/4"}[r-latin]
	}
	forms := [...]string{"1/7", "1/9", "1/10", "1/3", "2/3", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/8", "3/8", "5/8", "7/8"}
	if i := int(r - block); i >= 0 && i < len(forms) {
		return forms[i]
	}
	return ""
}
