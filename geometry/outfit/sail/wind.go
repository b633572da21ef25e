// Package sail sizes a small sail for a canoe from the boat's own righting moment:
// what area, in what wind, with the crew where; where mast and leeboard go and what
// they bear. Nothing in it certifies a boat.
package sail

import (
	"math"

	"ribwright/geometry/measure"
)

// Air is the density of air at 15 degrees and sea level, kg/m3.
const Air = 1.225

// Force is the coefficient of a sail's sideways force on its area, an upper bound
// close-hauled. From memory, 1.0 to 1.5.
const Force = 1.2

// Gust is how much harder a gust blows than the wind that a sailor judges. From
// memory, 1.3 to 1.6 on lakes.
const Gust = 1.4

// Pressure returns the dynamic pressure of a wind in m/s, N/m2.
func Pressure(v float64) float64 { return Air * v * v / 2 }

// Carries returns the wind, m/s, in which a sail heels a boat to a heel: the wind's
// moment q C A h cos^n(heel) equals the righting moment given for that heel.
//
//	moment in N m, area in m2, arm in m from the lateral resistance to the sail's
//	center, heel in radians; n is 1.3 for a sail that leans with the boat, or 0 for
//	an upright arm, which errs on the safe side.
func Carries(moment, area, arm, heel, n float64) float64 {
	return math.Sqrt(2 * math.Max(0, moment) / (Air * Force * area * arm * math.Pow(math.Cos(heel), n)))
}

// Windage returns the moment of a beam wind on what stands over the water, N m: 0.3
// ALV (ALV/LWL + TM) v2, with the area in m2, waterline and draft in m, wind in m/s.
//
// Source: wind heel of the worksheets of ISO 12217-1, a borrowed yardstick.
func Windage(area, waterline, draft, v float64) float64 {
	return 0.3 * area * (area/waterline + draft) * v * v
}

// Sailing returns the area, m2, from which a boat of a mass, kg, counts as a sailing
// boat: 0.07 m^(2/3).
//
// Source: ISO 12217-3 (2002), table 2, which leaves canoes out: a borrowed yardstick.
func Sailing(mass float64) float64 { return 0.07 * math.Pow(mass, 2.0/3) }

// Knots turns m/s into knots.
func Knots(v float64) float64 { return v / measure.Knot }

// Beaufort returns the number of the scale for a wind, m/s, by v = 0.836 B^1.5.
func Beaufort(v float64) int { return int(math.Round(math.Pow(math.Max(0, v)/0.836, 2.0/3))) }
