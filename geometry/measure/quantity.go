package measure

import (
	"fmt"
	"math"
	"math/big"
	"strings"
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
	text  string // as given
	toks  []token
	minus bool // a minus sign stood at the start
}

// open makes a reader of text with the leading sign taken off.
func open(what, units, text string) (*reader, error) {
	r := &reader{what: what, units: units, text: text}
	if len(text) > maxBytes {
		r.text = text[:20] + "..."
		return nil, r.fail("the text is %d bytes long; at most %d are read", len(text), maxBytes)
	}
	r.toks = scan(text)
	if len(r.toks) == 0 {
		return nil, r.fail("nothing is written; write a number and a unit: %s", units)
	}
	if strings.Contains(text, ",") {
		return nil, r.fail("commas are not read; write 3.5, not 3,5, and 1000, not 1,000")
	}
	if t := r.peek(0); t.kind == sign {
		r.minus = t.text != "+"
		r.skip(1)
	}
	return r, nil
}

// peek returns the token i places ahead, or one of kind end.
func (r *reader) peek(i int) token {
	if i < len(r.toks) {
		return r.toks[i]
	}
	return token{kind: end, at: len(r.text)}
}

// skip drops the next n tokens.
func (r *reader) skip(n int) { r.toks = r.toks[n:] }

// rest returns the text that has not been read yet.
func (r *reader) rest() string { return strings.TrimSpace(r.text[r.peek(0).at:]) }

// fail returns an error that shows the text given before the reason.
func (r *reader) fail(format string, args ...any) error {
	return fmt.Errorf("%s %s: %s", r.what, quote(r.text), fmt.Sprintf(format, args...))
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
func (r *reader) quantity() (*big.Rat, error) {
	if v, n, err := r.fraction(0); n > 0 || err != nil {
		r.skip(n)
		return v, err
	}
	text := r.peek(0).text
	v, err := r.decimal()
	if err != nil {
		return nil, err
	}
	// The hyphen of 34-1/2 must touch both numbers: "34 - 1/2" is a subtraction.
	hyphen := 0
	if t := r.peek(0); t.text == "-" && !t.gap && !r.peek(1).gap {
		hyphen = 1
	}
	f, n, err := r.fraction(hyphen)
	if err != nil || n == 0 {
		return v, err
	}
	if strings.Contains(text, ".") {
		return nil, r.fail("a fraction follows the decimal %s; write one or the other", text)
	}
	r.skip(hyphen + n)
	return v.Add(v, f), nil
}

// decimal reads whole digits or digits with one point and digits after it.
func (r *reader) decimal() (*big.Rat, error) {
	t := r.peek(0)
	switch {
	case t.kind == end:
		return nil, r.fail("a number is missing; write a number and a unit: %s", r.units)
	case t.kind == sign:
		return nil, r.fail("%s is out of place; a sign may stand only once, at the very start", quote(t.text))
	case t.kind != number:
		return nil, r.fail("%s stands where a number should; write digits, as 12, 3.5 or 7/8", quote(r.rest()))
	}
	if strings.Count(t.text, ".") > 1 || strings.HasSuffix(t.text, ".") {
		return nil, r.fail("%s is not a number; write digits on both sides of one point, as 3.5", quote(t.text))
	}
	v, ok := new(big.Rat).SetString(t.text)
	if !ok {
		return nil, r.fail("%s is not a number", quote(t.text))
	}
	r.skip(1)
	return v, nil
}

// fraction looks for a fraction that starts i tokens ahead and returns it with
// the count of its tokens, 0 when there is none. It reads nothing off.
func (r *reader) fraction(i int) (*big.Rat, int, error) {
	a, b := r.peek(i), r.peek(i+2)
	if a.kind == vulgar {
		v, _ := new(big.Rat).SetString(a.text)
		return v, 1, nil
	}
	if a.kind != number || r.peek(i+1).kind != slash {
		return nil, 0, nil
	}
	// Base 10 outright: left to itself, big reads a leading zero as octal.
	num, ok1 := new(big.Int).SetString(a.text, 10)
	den, ok2 := new(big.Int).SetString(b.text, 10)
	if !ok1 || !ok2 || b.kind != number {
		return nil, 0, r.fail("a fraction is two whole numbers, as 7/8")
	}
	if den.Sign() == 0 {
		return nil, 0, r.fail("the fraction %s/%s divides by zero", a.text, b.text)
	}
	return new(big.Rat).SetFrac(num, den), 3, nil
}

// word reads the unit that must follow a number.
func (r *reader) word() (string, error) {
	t := r.peek(0)
	switch t.kind {
	case unit:
		r.skip(1)
		return t.text, nil
	case end:
		return "", r.fail("the number has no unit; write %s", r.units)
	}
	return "", r.fail("%s stands where the unit should; write %s", quote(r.rest()), r.units)
}

// unknown is the error for a unit word that is not accepted; the word has just
// been read.
func (r *reader) unknown(word string) error {
	if t := r.peek(0); word == "e" && !t.gap && (t.kind == number || t.kind == sign) {
		return r.fail("exponents are not read; write the number out, as 1000")
	}
	return r.fail("unknown unit %s; write %s", quote(word), r.units)
}

// finish checks that nothing is left and that v is no speck, and returns v
// with its sign as the nearest float64.
func (r *reader) finish(v *big.Rat) (float64, error) {
	if r.minus {
		v.Neg(v)
	}
	x, _ := v.Float64()
	if v.Sign() != 0 && math.Abs(x) < smallest {
		return 0, r.fail("the %s is too small to mean anything; write 0", r.what)
	}
	return x, nil
}
