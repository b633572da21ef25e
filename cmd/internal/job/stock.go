package job

import (
	"fmt"
	"regexp"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
	"ribwright/layout/plate/nest"
)

// Stocks are the sheets for the cutter: the usual ones, and those of single thicknesses.
type Stocks struct {
	Usual  nest.Stock
	Others []nest.Other
}

// String writes them as they are read.
func (s Stocks) String() string {
	out := showStock(s.Usual)
	for _, o := range s.Others {
		out += fmt.Sprintf(",%.6gmm=%s", o.Thickness, showStock(o.Stock))
	}
	return out
}

func showStock(s nest.Stock) string { return fmt.Sprintf("%.6gx%.6g", s.W, s.H) }

// parseStocks reads sizes with commas between them: one for all, and others behind the
// thickness that they are of.
func parseStocks(text string) (Stocks, error) {
	out := Stocks{Usual: nest.DefaultOptions().Stock}
	for i, one := range strings.Split(text, ",") {
		thick, size, own := strings.Cut(one, "=")
		if !own {
			size = one
		}
		s, err := parseStock(size)
		if err != nil {
			if !strings.ContainsAny(size, "xX") {
				err = fmt.Errorf("%w%s", err, wording.Decimals(text))
			}
			return out, err
		}
		if !own {
			if i > 0 {
				return out, fmt.Errorf("%q: say of which thickness it is, as 20mm=%s", strings.TrimSpace(one), strings.TrimSpace(size))
			}
			out.Usual = s
			continue
		}
		t, err := measure.ParseLength(thick)
		if err != nil || !(t > 0) {
			return out, fmt.Errorf("%q is no thickness; accepted: a length with its unit before the size, as 20mm=250x2400", strings.TrimSpace(thick))
		}
		out.Others = append(out.Others, nest.Other{Thickness: float64(t), Stock: s})
	}
	return out, nil
}

// inFeet is a size as sheets are called over the counter: no sheet is a few millimeters wide.
var inFeet = regexp.MustCompile(`^\s*(\d{1,2}(?:\.\d+)?)\s*[xX]\s*(\d{1,2}(?:\.\d+)?)\s*$`)

func parseStock(text string) (nest.Stock, error) {
	if m := inFeet.FindStringSubmatch(text); m != nil {
		text = m[1] + "ft x " + m[2] + "ft"
	}
	w, h, err := measure.ParsePair(text)
	if err != nil {
		return nest.Stock{}, fmt.Errorf("%w; accepted: width x height, as 1220x2440 (mm) or 4ft x 8ft", err)
	}
	s := nest.Stock{W: float64(w), H: float64(h)}
	return s, nest.Options{Stock: s, Gap: nest.LeastGap}.Check()
}
