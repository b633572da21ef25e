package timber

import (
	"fmt"
	"math"
)

// Springback returns the share of its curvature that a lamination loses when it
// comes off the mould.
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
//
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

// FinalRadius returns the radius in mm to which a lamination opens when it
// comes off a mould of radius mould: mould / (1 - S), S from Springback.
//
// Units: mould in mm, above 0, at the middle of the stack; plies as for
// Springback. An infinite mould radius (straight) stays so.
// Errors: as Springback, and for a radius that is not above 0.
func FinalRadius(mould float64, plies []float64) (float64, error) {
	s, err := radiusAndSpringback("mould", mould, plies)
	if err != nil {
		return 0, err
	}
	return mould / (1 - s), nil
}

// MouldRadius returns the radius in mm that the mould must have for a
// lamination to end at radius final: final (1 - S). It undoes FinalRadius.
//
// Units: final in mm, above 0, at the middle of the stack; plies as for
// Springback. An infinite final radius (straight) stays so.
// Errors: as Springback, and for a radius that is not above 0.
func MouldRadius(final float64, plies []float64) (float64, error) {
	s, err := radiusAndSpringback("final", final, plies)
	if err != nil {
		return 0, err
	}
	return final * (1 - s), nil
}

// radiusAndSpringback checks the radius called name and returns the springback
// of the plies.
func radiusAndSpringback(name string, radius float64, plies []float64) (float64, error) {
	if math.IsNaN(radius) || radius <= 0 {
		return 0, fmt.Errorf("lamination: the %s radius is %g mm; it must be above 0", name, radius)
	}
	return Springback(plies)
}
