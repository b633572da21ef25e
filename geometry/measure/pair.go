package measure

import (
	"fmt"
	"strings"
	"unicode"
)

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
