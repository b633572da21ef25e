package measure

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// System is the system of units that a person asked to see.
type System int

// The systems of units. Metric is the zero System.
const (
	Metric   System = iota // mm
	Imperial               // feet, inches and sixteenths, with the mm beside them
)

// String returns "metric" or "imperial", and "unknown" for any other System.
func (s System) String() string {
	if s == Metric || s == Imperial {
		return [...]string{"metric", "imperial"}[s]
	}
	return "unknown"
}

// ParseSystem reads "metric" or "imperial", in capitals or not, with white
// space around it or not. Any other text is an error.
func ParseSystem(text string) (System, error) {
	for _, s := range []System{Metric, Imperial} {
		if strings.EqualFold(strings.TrimSpace(text), s.String()) {
			return s, nil
		}
	}
	if len(text) > maxBytes {
		text = text[:20] + "..."
	}
	return Metric, fmt.Errorf("units %s: write metric or imperial", quote(text))
}

// Tape returns mm as it is read off a tape: "375.0 mm", or Sixteenths.
func (s System) Tape(mm float64) string {
	if s == Imperial {
		return Sixteenths(mm)
	}
	return MM(mm, 1) + " mm"
}

// Length returns mm as it is shown to a person. Metric: "375 mm" or "375.5
// mm", rounded to 0.1 mm. Imperial: FeetInches and the mm behind it,
// 1'-2 3/4" (375 mm). An unknown System shows metric. Not finite gives "?".
func (s System) Length(mm float64) string {
	if !finite(mm) {
		return "?"
	}
	metric := strings.TrimSuffix(MM(mm, 1), ".0") + " mm"
	if s == Imperial {
		return FeetInches(mm) + " (" + metric + ")"
	}
	return metric
}

// Fine returns mm to the tenth, for what is cut or marked. Metric: "12.0 mm".
// Imperial: Gauged and the mm behind it, "0.228 in (5.8 mm)", "14 3/4 in (374.7 mm)". An
// unknown System shows metric. What is not finite reads "?".
func (s System) Fine(mm float64) string { return s.letter(mm, 1, Gauged) }

// Whole returns mm for what is true to a millimeter at best: "12 mm", "1/2 in (13 mm)".
func (s System) Whole(mm float64) string { return s.letter(mm, 0, Sixteenths) }

// Drill returns the width of a bore to the tenth, as drills are sold. Metric: "3.5 mm".
// Imperial: in 64ths of an inch, from 3/8 in on in sixteenths, and the mm behind it,
// "9/64 in (3.5 mm)".
func (s System) Drill(mm float64) string { return s.letter(mm, 1, drill) }

// Rough returns mm in steps that wood keeps to which is bent or relaxed by hand: "745
// mm" to the nearest 5 mm, or to the nearest quarter of an inch, "29 1/4 in (743 mm)".
// An unknown System shows metric. What is not finite reads "?".
func (s System) Rough(mm float64) string {
	if s == Imperial {
		return s.Whole(6.35 * math.Round(mm/6.35))
	}
	return MM(5*math.Round(mm/5), 0) + " mm"
}

// Within returns how far off a mark may be, in steps that hands can hold, downward and
// never less than one: whole millimeters, "3 mm", or sixteenths of an inch, "1/8 in". A
// twentieth of a millimeter short of a step is no less. An unknown System shows metric.
func (s System) Within(mm float64) string {
	down := func(step float64) float64 { return step * math.Max(1, math.Floor((mm+0.05)/step)) }
	if s == Imperial {
		return Sixteenths(down(25.4 / 16))
	}
	return MM(down(1), 0) + " mm"
}

func (s System) letter(mm float64, decimals int, inches func(float64) string) string {
	metric := MM(mm, decimals) + " mm"
	if s == Imperial {
		return inches(mm) + " (" + metric + ")"
	}
	return metric
}

// MM returns mm with a fixed number of decimals and no unit: MM(375, 1) is
// "375.0". A value that rounds to zero has no minus sign. Fewer than 0 decimals
// count as 0. The exact binary value is rounded, so a written tie such as 0.05
// may go either way. Not finite gives "?".
func MM(mm float64, decimals int) string {
	if !finite(mm) {
		return "?"
	}
	s := strconv.FormatFloat(mm, 'f', max(decimals, 0), 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// Gauged returns mm in inches as finely as tenths of a millimeter are, so that one tenth has
// one number. Under two inches, what calipers measure, to the thousandth: "0.228 in"; from
// there on, what a tape measures, and where a sixteenth is the same to the thousandth,
// Sixteenths: "3/4 in".
func Gauged(mm float64) string {
	const calipers, thousandth = 50.8, 0.0254
	tenths, _ := strconv.ParseFloat(MM(mm, 1), 64) // as they are written
	for _, size := range []float64{mm, tenths} {
		n, _, ok := parts(size, 16)
		if !ok || math.Abs(mm) >= calipers || tenths != 0 && math.Abs(math.Abs(size)-25.4/16*float64(n)) < thousandth/2 {
			return Sixteenths(size)
		}
	}
	if tenths == 0 {
		return "0 in"
	}
	return MM(tenths/25.4, 3) + " in"
}

// drill returns mm as the nearest drill that is sold in inches.
func drill(mm float64) string {
	den := int64(64)
	if mm >= 3*25.4/8 {
		den = 16
	}
	n, minus, ok := parts(mm, den)
	if !ok {
		return "?"
	}
	return minus + mixed(n, den) + " in"
}

// Sixteenths returns mm in inches to the nearest 1/16, the fraction reduced:
// "14 3/4 in", "1/16 in", "0 in", "-14 3/4 in". Halves of a sixteenth round
// away from zero. Not finite, or beyond 1e15 mm, gives "?".
func Sixteenths(mm float64) string {
	n, minus, ok := parts(mm, 16)
	if !ok {
		return "?"
	}
	return minus + mixed(n, 16) + " in"
}

// FeetInches returns mm in feet and inches to the nearest 1/16 in, the
// fraction reduced: 13'-11 7/8", 1'-0", 5'-0 3/4", under a foot just 7 7/8" or
// 0", below zero with one minus in front: -1'-6". Halves of a sixteenth round
// away from zero. Not finite, or beyond 1e15 mm, gives "?".
func FeetInches(mm float64) string {
	n, minus, ok := parts(mm, 16)
	if !ok {
		return "?"
	}
	const foot = 12 * 16
	if n < foot {
		return minus + mixed(n, 16) + `"`
	}
	whole, rest := n/foot, n%foot
	inches := mixed(rest, 16)
	if rest > 0 && rest < 16 {
		inches = "0 " + inches
	}
	return fmt.Sprintf(`%s%d'-%s"`, minus, whole, inches)
}

// parts returns the count of an inch's parts, so many to the inch, nearest to the magnitude of
// mm, and "-" when mm is below zero and the count is not 0.
func parts(mm float64, toInch int64) (n int64, minus string, ok bool) {
	if !(math.Abs(mm) <= 1e15) {
		return 0, "", false
	}
	// 1/16 in is 1.5875 mm, which float64 cannot hold exactly; the 1e-9 keeps
	// a true half, such as 11 31/32 in, on the side of the tie rule.
	n = int64(math.Floor(math.Abs(mm)/(25.4/float64(toInch)) + 0.5 + 1e-9))
	if mm < 0 && n > 0 {
		minus = "-"
	}
	return n, minus, true
}

// mixed returns n parts of so many as a whole number, a reduced fraction, or both.
func mixed(n, den int64) string {
	whole, num := n/den, n%den
	for num != 0 && num%2 == 0 {
		num, den = num/2, den/2
	}
	switch {
	case num == 0:
		return strconv.FormatInt(whole, 10)
	case whole == 0:
		return fmt.Sprintf("%d/%d", num, den)
	}
	return fmt.Sprintf("%d %d/%d", whole, num, den)
}
