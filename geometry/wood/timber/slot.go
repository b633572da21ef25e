package timber

import "math"

// SquareTenon returns the width in mm of the widest sharp-cornered tenon of the
// given thickness that goes into a slot with half-round ends.
//
//	L - d + sqrt(d² - h²)
//
// Requires: length >= wide >= thickness > 0, mm. Geometry.
func SquareTenon(length, wide, thickness float64) float64 {
	return length - wide + math.Sqrt(math.Max(0, wide*wide-thickness*thickness))
}
