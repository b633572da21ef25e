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

// SquareTenon returns the width in mm of the widest sharp-cornered tenon of the
// given thickness that goes into a slot with half-round ends.
//
//	L - d + sqrt(d² - h²)
//
// Requires: length >= wide >= thickness > 0, mm. Geometry.
func SquareTenon(length, wide, thickness float64) float64 {
	return length - wide + math.Sqrt(math.Max(0, wide*wide-thickness*thickness))
}

// Springback returns the share of its curvature that a lamination loses when it
// comes off the mold.
//
// How: bending loose plies t_i stores the moment of sum t_i^3; glued they
// resist release with T^3, T = sum t_i. So
//
//	S = sum t_i^3 / (sum t_i)^3, for n equal plies 1/n^2
//
// Units: plies are thicknesses in mm, each above 0 and at most 1000.
// Requires: plies of one wood, bent elastically, thin against the radius, and a
// glue line that does not creep; soft glue opens the bend further.
// Returns: a share, above 0 and below 1.
// Errors: fewer than two plies (one ply springs back straight), a thickness out
// of range, or one ply so thick that the others count for nothing.
// Source: beam theory; for a slight arc the sagitta lost is the shop rule x/n^2.
func Springback(plies []float64) (float64, error) {
	if len(plies) < 2 {
		return 0, fmt.Errorf("lamination of %d plies: at least 2 are needed, a single one springs back straight", len(plies))
	}
	total, cubes := 0.0, 0.0
	for i, t := range plies {
		if !(t > 0 && t <= 1000) {
			return 0, fmt.Errorf("ply %d is %g mm thick: a ply must be thicker than 0 and at most 1000 mm", i+1, t)
		}
		total += t
		cubes += t * t * t
	}
	s := cubes / (total * total * total)
	// From here on the result would be rounding noise, and 1 - s a divisor of
	// nearly 0.
	if !(s < 1-1e-9) {
		return 0, fmt.Errorf("lamination: one ply is so much thicker than the rest that it springs back straight")
	}
	return s, nil
}
