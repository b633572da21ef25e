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
// Imperial: Sixteenths and the mm behind it, "1/2 in (12.7 mm)". An unknown System
// shows metric. What is not finite reads "?".
func (s System) Fine(mm float64) string { return s.letter(mm, 1) }

// Whole returns mm like Fine, for what is true to a millimeter at best: "12 mm",
// "1/2 in (13 mm)".
func (s System) Whole(mm float64) string { return s.letter(mm, 0) }

// Rough returns mm in steps that wood keeps to which is bent or relaxed by hand: "745
// mm" to the nearest 5 mm, or "29 1/4 in (745 mm)" to the nearest quarter of an inch.
// An unknown System shows metric. What is not finite reads "?".
func (s System) Rough(mm float64) string {
	metric := MM(5*math.Round(mm/5), 0) + " mm"
	if s == Imperial {
		return Sixteenths(6.35*math.Round(mm/6.35)) + " (" + metric + ")"
	}
	return metric
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

func (s System) letter(mm float64, decimals int) string {
	metric := MM(mm, decimals) + " mm"
	if s == Imperial {
		return Sixteenths(mm) + " (" + metric + ")"
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

// Sixteenths returns mm in inches to the nearest 1/16, the fraction reduced:
// "14 3/4 in", "1/16 in", "0 in", "-14 3/4 in". Halves of a sixteenth round
// away from zero. Not finite, or beyond 1e15 mm, gives "?".
func Sixteenths(mm float64) string {
	n, minus, ok := sixteenths(mm)
	if !ok {
		return "?"
	}
	return minus + mixed(n) + " in"
}

// FeetInches returns mm in feet and inches to the nearest 1/16 in, the
// fraction reduced: 13'-11 7/8", 1'-0", 5'-0 3/4", under a foot just 7 7/8" or
// 0", below zero with one minus in front: -1'-6". Halves of a sixteenth round
// away from zero. Not finite, or beyond 1e15 mm, gives "?".
func FeetInches(mm float64) string {
	n, minus, ok := sixteenths(mm)
	if !ok {
		return "?"
	}
	const foot = 12 * 16
	if n < foot {
		return minus + mixed(n) + `"`
	}
	whole, rest := n/foot, n%foot
	inches := mixed(rest)
	if rest > 0 && rest < 16 {
		inches = "0 " + inches
	}
	return fmt.Sprintf(`%s%d'-%s"`, minus, whole, inches)
}

// sixteenths returns the count of 1/16 in nearest to the magnitude of mm, and
// "-" when mm is below zero and the count is not 0.
func sixteenths(mm float64) (n int64, minus string, ok bool) {
	if !(math.Abs(mm) <= 1e15) {
		return 0, "", false
	}
	// 1/16 in is 1.5875 mm, which float64 cannot hold exactly; the 1e-9 keeps
	// a true half, such as 11 31/32 in, on the side of the tie rule.
	n = int64(math.Floor(math.Abs(mm)/1.5875 + 0.5 + 1e-9))
	if mm < 0 && n > 0 {
		minus = "-"
	}
	return n, minus, true
}

// mixed returns n sixteenths as a whole number, a reduced fraction, or both.
func mixed(n int64) string {
	whole, num, den := n/16, n%16, int64(16)
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
