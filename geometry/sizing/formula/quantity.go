package formula

import (
	"fmt"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Quantity reads one number with its unit, as on a command line: 62 kg, 110mm,
// 5'-6", 4 km/h, 12 %. The result is in mm, kg, s and radians.
// Errors: anything else, with what is accepted.
func Quantity(text string) (float64, Dim, error) {
	text = strings.TrimSpace(text)
	if len(text) > 64 {
		return 0, Plain, fmt.Errorf("%q is too long for a number with its unit", wording.Clip(text, 20))
	}
	// Feet and inches have a reader of their own.
	if strings.ContainsAny(text, `'"/ `+"\u2032\u2033\u2019\u201d") || text == "" {
		if v, err := measure.ParseLength(text); err == nil {
			return float64(v), Length, nil
		}
	}
	toks, f := scan(Source{Text: strings.TrimPrefix(text, "-")})
	if f != nil {
		return 0, Plain, fmt.Errorf("%q: %s", wording.Clip(text, 30), f.Text)
	}
	if len(toks) != 2 || toks[0].kind != numberToken {
		return 0, Plain, fmt.Errorf("%q is no number with its unit; accepted: one as 62 kg or 168 cm", wording.Clip(text, 30))
	}
	v := toks[0].num
	if strings.HasPrefix(text, "-") {
		v = -v
	}
	return v, toks[0].dim, nil
}
