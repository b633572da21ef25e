package timber

import (
	"fmt"
	"math"
)

// The slopes of scarf that are accepted, as length over thickness. 8 to 12 is
// the common range (common practice). A glued scarf keeps about 65 % of the
// wood's tension strength at 5, 80 % at 8 and 90 % at 12 (Wood Handbook, from
// memory); beyond 20 the feather edge gains nothing.
const (
	MinScarfSlope = 5.0
	MaxScarfSlope = 20.0
)

// ScarfLength returns the length in mm of a plain scarf: slope times thickness.
//
// Units: thickness in mm, above 0; slope as length over thickness, 8 for 1:8,
// from MinScarfSlope to MaxScarfSlope.
// Errors: either out of its range.
func ScarfLength(thickness, slope float64) (float64, error) {
	if !(thickness > 0) || math.IsInf(thickness, 1) {
		return 0, fmt.Errorf("scarf in stock of %g mm: the thickness must be above 0", thickness)
	}
	if slope > 0 && slope < 1 {
		return 0, fmt.Errorf("scarf slope %g: write length over thickness, 8 for a slope of 1:8", slope)
	}
	if !(slope >= MinScarfSlope && slope <= MaxScarfSlope) {
		return 0, fmt.Errorf("scarf slope %g: write %g to %g, as 8 for a slope of 1:8", slope, MinScarfSlope, MaxScarfSlope)
	}
	return slope * thickness, nil
}

// StockLength returns the length in mm of stock to buy, all pieces together,
// for one part scarfed up from them: finished + (pieces - 1) scarf + trim.
// Each scarf swallows its own length once.
//
// Units: finished, above 0, scarf (length of one) and trim (both ends
// together), not below 0, in mm; pieces at least 1. The saw kerf is not in it.
// Errors: any of them out of its range, and two or more pieces with no scarf.
func StockLength(finished float64, pieces int, scarf, trim float64) (float64, error) {
	switch {
	case !(finished > 0) || math.IsInf(finished, 1):
		return 0, fmt.Errorf("stock for a part of %g mm: the finished length must be above 0", finished)
	case pieces < 1:
		return 0, fmt.Errorf("stock in %d pieces: at least 1 is needed", pieces)
	case !(scarf >= 0) || math.IsInf(scarf, 1):
		return 0, fmt.Errorf("scarf of %g mm: the length must be 0 or more", scarf)
	case pieces > 1 && scarf == 0:
		return 0, fmt.Errorf("stock in %d pieces: the scarf length is 0, so nothing joins them", pieces)
	case !(trim >= 0) || math.IsInf(trim, 1):
		return 0, fmt.Errorf("end trim of %g mm: it must be 0 or more", trim)
	}
	return finished + float64(pieces-1)*scarf + trim, nil
}
