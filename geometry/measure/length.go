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
)

// MaxLength is the greatest length, in mm, that is read or written: 1 km.
// Anything longer is a slip of the unit, not a part of a boat.
const MaxLength Length = 1e6

// lengthUnits is what the error texts offer.
const lengthUnits = `mm, cm, m, in, ft or the marks ' and "`

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
//
// Returns: the float64 nearest to the exact value; 1 in is exactly 25.4 mm
// (international yard and pound agreement of 1959). Minus zero is read as 0.
// Errors: empty text, text over 64 bytes, a missing or unknown unit, anything
// after the unit, a mix of units other than feet and inches, a decimal comma,
// an exponent, a division by zero, a magnitude over MaxLength, or below 1e-40
// mm without being 0. It does not panic.
func ParseLength(s string) (Length, error) {
	r, err := open("length", lengthUnits, s)
	if err != nil {
		return 0, err
	}
	v, err := r.length()
	if err != nil {
		return 0, err
	}
	x, err := r.finish(v)
	if err != nil {
		return 0, err
	}
	if v.Abs(v).Cmp(new(big.Rat).SetFloat64(float64(MaxLength))) > 0 {
		return 0, r.fail("%s is not a length of a boat part; at most 1000000 mm is read", Length(x))
	}
	return Length(x), nil
}

// length reads one number and unit, or feet and inches, to the end of the
// text, and returns mm without the sign.
func (r *reader) length() (*big.Rat, error) {
	v, err := r.quantity()
	if err != nil {
		return nil, err
	}
	word, err := r.word()
	if err != nil {
		return nil, err
	}
	per := mmPer(word)
	if per == nil {
		return nil, r.unknown(word)
	}
	whole := v.IsInt()
	v.Mul(v, per)
	if k := r.peek(0).kind; isFoot(word) && (k == number || k == vulgar || k == sign) {
		return r.inches(v, whole)
	}
	return v, r.ended()
}

// inches reads the inches after feet (given in mm) and returns the sum in mm.
func (r *reader) inches(feet *big.Rat, whole bool) (*big.Rat, error) {
	if t := r.peek(0); t.text == "-" {
		// A hyphen that leans on the inches alone, 5' -3", looks like a minus.
		if t.gap && !r.peek(1).gap {
			return nil, r.fail("%s after the feet may be a minus; write 13'-11 7/8\"", quote(r.rest()))
		}
		r.skip(1)
	}
	v, err := r.quantity()
	if err != nil {
		return nil, err
	}
	word := r.peek(0)
	if word.kind != unit || !isInch(word.text) {
		return nil, r.fail("only inches may follow feet, marked as such: write 13'-11 7/8\" or 13 ft 11 7/8 in")
	}
	if !whole {
		return nil, r.fail("feet must be a whole number when inches follow")
	}
	r.skip(1)
	v.Mul(v, mmPer("in"))
	return v.Add(v, feet), r.ended()
}

// ended returns an error when something is left to read.
func (r *reader) ended() error {
	if r.peek(0).kind == end {
		return nil
	}
	return r.fail("%s comes after the unit; write one unit, or feet and inches", quote(r.rest()))
}

// mmPer returns how many mm one of the unit has, or nil for an unknown unit.
func mmPer(word string) *big.Rat {
	switch {
	case word == "mm":
		return big.NewRat(1, 1)
	case word == "cm":
		return big.NewRat(10, 1)
	case word == "m":
		return big.NewRat(1000, 1)
	case isInch(word):
		return big.NewRat(254, 10)
	case isFoot(word):
		return big.NewRat(3048, 10)
	}
	return nil
}

// isInch reports whether word names the inch.
func isInch(word string) bool {
	return word == `"` || word == "in" || word == "inch" || word == "inches"
}

// isFoot reports whether word names the foot.
func isFoot(word string) bool {
	return word == "'" || word == "ft" || word == "foot" || word == "feet"
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
	m := math.Abs(float64(l))
	if !(m <= float64(MaxLength)) || m > 0 && m < smallest {
		return nil, fmt.Errorf("length of %g mm cannot be written; at most %s either way is accepted", float64(l), MaxLength)
	}
	return []byte(l.String()), nil
}

// UnmarshalText sets l to what ParseLength reads in text, in mm. On error l
// keeps its value.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := ParseLength(string(text))
	if err == nil {
		*l = v
	}
	return err
}

// finite reports whether x is a number and not infinite.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
