// Package measure reads and writes lengths and angles the way people write
// them: 3500 mm, 34 1/2 in, 13'-11 7/8", 12 deg. A unit is always required,
// and what is written is read exactly: all sums are done in fractions and
// rounded once.
package measure

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"unicode"
)

// MaxLength is the greatest length, in mm, that is read or written: 1 km.
// Anything longer is a slip of the unit, not a part of a boat.
const MaxLength Length = 1e6

// Length is a length in mm.
type Length float64

// ParseLength reads a length with its unit and returns it in mm.
//
// Units: mm, cm, m; in, inch, inches or "; ft, foot, feet or '; in capitals or
// not. The curly quotes, the primes, and two apostrophes for inches, count as marks.
// Numbers: 3.5, 7/8, 34 1/2, 34-1/2, the one-character fractions with or
// without a whole number before them. Feet may be followed by inches, with
// white space, a hyphen or nothing between: 13'-11 7/8", 13 ft 11 7/8 in. Then
// the feet must be whole; the inches may be 12 or more. A sign may stand only
// at the very start and covers the whole: -1'6" is -457.2 mm. White space
// around and between the parts does not matter.
// Returns: the float64 nearest to the exact value; 1 in is exactly 25.4 mm
// (international yard and pound agreement of 1959). Minus zero is read as 0.
// Errors: empty text, text over 64 bytes, a missing or unknown unit, anything
// after the unit, a mix of units other than feet and inches, a decimal comma,
// an exponent, a division by zero, a magnitude over MaxLength, or below 1e-40
// mm without being 0. It does not panic.
func ParseLength(s string) (Length, error) {
	if x, ok := plain(s); ok {
		return x, nil
	}
	x, err := parse("length", `mm, cm, m, in, ft or the marks ' and "`, "mm", s, (*reader).length)
	return Length(x), err
}

// plain reads what nearly all lengths are written as, "900 mm" or "5.5 mm", which needs no
// fractions to be exact; false for any other text.
func plain(s string) (Length, bool) {
	number, ok := strings.CutSuffix(s, " mm")
	whole, part, point := strings.Cut(number, ".")
	if !ok || len(number) > 15 || !digits(whole) || whole[0] == '0' && whole != "0" || point && !digits(part) {
		return 0, false
	}
	x, err := strconv.ParseFloat(number, 64) // the nearest, as of the fraction
	return Length(x), err == nil && Length(x) <= MaxLength
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// length reads one number and unit, or feet and inches, to the end of the
// text, and returns mm without the sign.
func (r *reader) length() *big.Rat {
	v := r.quantity()
	word := r.word()
	per := mmPer[word]
	if per == nil {
		r.unknown(word)
	}
	whole := v.IsInt()
	v.Mul(v, per)
	if k := r.peek(0).kind; per == foot && (k == number || k == vulgar || k == sign) {
		v.Add(v, r.inches(whole))
	}
	if r.peek(0).kind != end {
		r.fail("%s comes after the unit; write one unit, or feet and inches", quote(r.rest()))
	}
	if v.Cmp(longest) > 0 {
		r.fail("%s is not a length of a boat part; at most 1000000 mm is read", Length(r.nearest(v)))
	}
	return v
}

// inches reads the inches after feet and returns them in mm.
func (r *reader) inches(wholeFeet bool) *big.Rat {
	if t := r.peek(0); t.text == "-" {
		// A hyphen that leans on the inches alone, 5' -3", looks like a minus.
		if t.gap && !r.peek(1).gap {
			r.fail("%s after the feet may be a minus; write 13'-11 7/8\"", quote(r.rest()))
		}
		r.skip(1)
	}
	v := r.quantity()
	if word := r.peek(0); word.kind != unit || mmPer[word.text] != inch {
		r.fail("only inches may follow feet, marked as such: write 13'-11 7/8\" or 13 ft 11 7/8 in")
	}
	if !wholeFeet {
		r.fail("feet must be a whole number when inches follow")
	}
	r.skip(1)
	return v.Mul(v, inch)
}

var inch, foot, longest = big.NewRat(254, 10), big.NewRat(3048, 10), new(big.Rat).SetFloat64(float64(MaxLength))

var mmPer = map[string]*big.Rat{
	"mm": big.NewRat(1, 1), "cm": big.NewRat(10, 1), "m": big.NewRat(1000, 1),
	`"`: inch, "in": inch, "inch": inch, "inches": inch,
	"'": foot, "ft": foot, "foot": foot, "feet": foot,
}

// String returns l as the shortest decimal that stands for it, "3500 mm", and
// "?" when l is not finite.
func (l Length) String() string {
	if !finite(float64(l)) {
		return "?"
	}
	// Adding 0 turns minus zero into 0.
	return strconv.FormatFloat(float64(l)+0, 'f', -1, 64) + " mm"
}

// MarshalText returns l as the shortest decimal from which ParseLength gets
// exactly l back: "3500 mm". It fails when l is not finite, beyond MaxLength,
// or closer to 0 than 1e-40 mm without being 0, for then ParseLength would
// refuse the text.
func (l Length) MarshalText() ([]byte, error) {
	if !readable(float64(l), float64(MaxLength)) {
		return nil, fmt.Errorf("length of %.6g mm cannot be written; at most %s either way is accepted", float64(l), MaxLength)
	}
	return []byte(l.String()), nil
}

// UnmarshalText sets l to what ParseLength reads in text, in mm. On error l
// keeps its value.
func (l *Length) UnmarshalText(text []byte) error {
	return setTo(l, text, ParseLength)
}

func setTo[T any](to *T, text []byte, parse func(string) (T, error)) error {
	v, err := parse(string(text))
	if err == nil {
		*to = v
	}
	return err
}

// readable reports whether a number of at most so much is read back when it is written.
func readable(v, most float64) bool {
	v = math.Abs(v)
	return v <= most && (v == 0 || v >= smallest)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// ParsePair reads two lengths with an x between them: 4 ft x 8 ft, 12x18in,
// 300 mm × 420 mm. A unit behind the second alone holds for both; without any
// unit both are mm, as sheet stock is written: 1220x2440.
//
// Errors: those of ParseLength, no x or two, a unit behind the first alone.
func ParsePair(s string) (Length, Length, error) {
	left, right, found := strings.Cut(strings.NewReplacer("X", "x", "\u00D7", "x").Replace(s), "x")
	if !found || strings.Contains(right, "x") {
		return 0, 0, fmt.Errorf("size %s is not two lengths with an x between them", quote(s))
	}
	if !hasUnit(right) {
		right += " mm"
		if hasUnit(left) {
			return 0, 0, fmt.Errorf("size %s: the second length has no unit; write it behind both or behind the second", quote(s))
		}
	}
	if !hasUnit(left) {
		left += unitOf(right)
	}
	a, err := ParseLength(left)
	if err != nil {
		return 0, 0, err
	}
	b, err := ParseLength(right)
	return a, b, err
}

// hasUnit reports whether anything but figures stands in s.
func hasUnit(s string) bool { return unitOf(s) != "" }

// unitOf returns what stands behind the last figure of s.
func unitOf(s string) string {
	return strings.TrimSpace(strings.TrimLeftFunc(s[strings.LastIndexFunc(s, unicode.IsDigit)+1:], unicode.IsSpace))
}
