package measure

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// MaxAngle is the greatest angle, in radians, that is read or written: 360
// degrees.
const MaxAngle Angle = 2 * math.Pi

// Angle is an angle in radians.
type Angle float64

// ParseAngle reads an angle with its unit and returns it in radians.
//
// Units: deg, degree, degrees or the degree sign; rad; in capitals or not.
// Numbers are written as for ParseLength: 12, 0.2, 22 1/2. A sign may stand at
// the very start.
// Returns: the float64 nearest to the exact value, so that 180 deg is math.Pi.
// Minus zero is read as 0.
// Errors: as ParseLength, and for a magnitude over 360 degrees, or below 1e-40
// rad without being 0. It does not panic.
func ParseAngle(s string) (Angle, error) {
	if a, ok := plainAngle(s); ok {
		return a, nil
	}
	x, err := parse("angle", "deg or rad", "deg", s, (*reader).angle)
	return Angle(x), err
}

// plainAngle reads what nearly all angles are written as, "12 deg" or "6.25 deg", which
// needs no fractions to be exact; false for any other text.
func plainAngle(s string) (Angle, bool) {
	number, ok := strings.CutSuffix(s, " deg")
	whole, part, point := strings.Cut(number, ".")
	if !ok || len(whole) > 3 || len(part) > 2 || !digits(whole) || point && !digits(part) {
		return 0, false
	}
	x, err := strconv.ParseFloat(number, 64)
	a := millionths(1e4 * math.Round(100*x))
	return a, err == nil && a <= MaxAngle
}

// A millionth of a degree in radians, in two parts: any count of the first up to 360 degrees is
// exact.
const (
	millionth = 0x1.2bd864p-26
	itsRest   = math.Pi/180e6 - millionth
)

// millionths returns the angle of so many millionths of a degree, a whole number up to
// 360,000,000; of whole hundredths the float64 nearest to it (TestHundredths).
func millionths(n float64) Angle { return Angle(n*millionth + n*itsRest) }

// angle reads one number and unit to the end of the text and returns radians
// without the sign.
func (r *reader) angle() *big.Rat {
	v := r.quantity()
	switch word := r.word(); word {
	case "deg", "degree", "degrees":
		v = radians(v)
	case "rad":
	default:
		r.unknown(word)
	}
	if r.peek(0).kind != end {
		r.fail("%s comes after the unit; write one number and one unit, as 12.5 deg", quote(r.rest()))
	}
	if v.Cmp(turn) > 0 {
		r.fail("an angle is at most 360 deg either way")
	}
	return v
}

// pi is pi to 62 decimals, enough that the last bit of a float64 never hangs on it; a
// degree and a turn follow in radians. Source: OEIS A000796, the same digits as math.Pi
// has in Go.
var (
	pi, _  = new(big.Rat).SetString("3.14159265358979323846264338327950288419716939937510582097494459")
	degree = new(big.Float).SetPrec(precise).SetRat(new(big.Rat).Mul(pi, big.NewRat(1, 180)))
	turn   = radians(big.NewRat(360, 1))
)

// precise is to how many bits radians are worked out: as many as pi has.
const precise = 206

// radians returns deg times pi/180; deg is left alone.
func radians(deg *big.Rat) *big.Rat {
	v := new(big.Float).SetPrec(precise).SetRat(deg)
	out, _ := v.Mul(v, degree).Rat(nil)
	return out
}

// Short returns the whole millionth of a degree that is nearest to a, as ParseAngle reads it:
// what formulas work out is then lettered as 6.1 deg and not as 6.1000000000000004 deg. a is
// within MaxAngle; what is not finite comes back as it is.
func (a Angle) Short() Angle {
	return millionths(math.Round(float64(a) / (millionth + itsRest)))
}

// degrees returns the decimal with the fewest places from which ParseAngle
// gets exactly a back. a must be finite.
func (a Angle) degrees() string {
	if n := math.Round(float64(a) * 180e2 / math.Pi); a >= 0 && a <= MaxAngle && millionths(1e4*n) == a {
		return strconv.FormatFloat(n/100, 'f', -1, 64)
	}
	d := new(big.Rat).SetFloat64(float64(a))
	d.Mul(d, big.NewRat(180, 1)).Quo(d, pi)
	// A place more divides the error by ten, so this ends: near place 17 for
	// angles met in boats, near place 340 for the least float64.
	for places := 0; ; places++ {
		s := d.FloatString(places)
		v, _ := new(big.Rat).SetString(s)
		if x, _ := radians(v).Float64(); x == float64(a) {
			return s
		}
	}
}

// String returns a in degrees as the shortest decimal that stands for it,
// "12 deg", and "?" when a is not finite.
func (a Angle) String() string {
	if !finite(float64(a)) {
		return "?"
	}
	return a.degrees() + " deg"
}

// MarshalText returns a in degrees as the shortest decimal from which
// ParseAngle gets exactly a back: "12 deg". It fails when a is not finite,
// beyond MaxAngle, or closer to 0 than 1e-40 rad without being 0, for then
// ParseAngle would refuse the text.
func (a Angle) MarshalText() ([]byte, error) {
	if !readable(float64(a), float64(MaxAngle)) {
		return nil, fmt.Errorf("angle of %.6g rad cannot be written; at most 360 deg either way is accepted", float64(a))
	}
	return []byte(a.String()), nil
}

// UnmarshalText sets a to what ParseAngle reads in text, in radians. On error
// a keeps its value.
func (a *Angle) UnmarshalText(text []byte) error {
	return setTo(a, text, ParseAngle)
}
