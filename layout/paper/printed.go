package paper

import (
	"fmt"
	"strings"

	"ribwright/geometry/measure"
)

// most is the largest stretch of a printer that is corrected: makers allow 3 %
// at the worst, so more is a slip in measuring or of the unit.
const most = 0.05

// Printed is what a printer makes of a length along one edge of the paper: 1.004
// prints 200 mm as 200.8. The zero Printed stands for 1, a true printer.
type Printed float64

func printedForm() string {
	return fmt.Sprintf(`what the bar of the proof measures and what it should be, as "200.8 mm of 200 mm" or '8 1/32 in of 8 in'; up to %.0f %% off`, 100*most)
}

// ParsePrinted reads a measured length "of" its nominal one.
//
// Errors: anything else, a nominal of 0, a stretch over 5 % either way.
func ParsePrinted(s string) (Printed, error) {
	got, nominal, found := strings.Cut(strings.ToLower(s), " of ")
	if !found {
		return 0, fmt.Errorf("%q is not understood; accepted: %s", s, printedForm())
	}
	a, err := measure.ParseLength(got)
	if err != nil {
		return 0, fmt.Errorf("%w; accepted: %s", err, printedForm())
	}
	b, err := measure.ParseLength(nominal)
	if err != nil {
		return 0, fmt.Errorf("%w; accepted: %s", err, printedForm())
	}
	if p := float64(a / b); b > 0 && p >= 1-most && p <= 1+most {
		return Printed(p), nil
	}
	return 0, fmt.Errorf("%s is no small error of a printer; accepted: %s", s, printedForm())
}

// Factor returns the stretch; 1 when none is known.
func (p Printed) Factor() float64 {
	if p == 0 {
		return 1
	}
	return float64(p)
}
