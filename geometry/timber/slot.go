package timber

import "math"

// SlotArea returns the area in mm2 of a slot cut with a router bit: length end to
// end, its ends half circles of the bit's diameter wide.
//
//	(L - d) d + π d²/4
//
// Requires: length >= wide > 0, mm. Geometry.
func SlotArea(length, wide float64) float64 {
	return (length-wide)*wide + math.Pi*wide*wide/4
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
