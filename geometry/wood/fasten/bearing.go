// Package fasten works out what a fastening bears: dowels of metal across a joint,
// wooden pegs with the wall round them, cord in a lashing, and how far from edges and
// ends they must stand.
//
// Metal follows the general dowel equations of AWC Technical Report 12 with the bearing
// strengths of the National Design Specification (NDS) for Wood Construction, in which a
// mean yield is divided by a reduction to a design value. They are written for buildings.
// Values that are only remembered stand in Usual, each by its name.
//
// N, mm, N/mm2 (MPa), radians; specific gravity is oven-dry mass over volume at 12 % of
// moisture, relative to water.
package fasten

import (
	"math"

	"ribwright/geometry/wood/grain"
)

// The units of the American tables.
const (
	psi  = 0.006894757 // N/mm2
	lbf  = 4.4482216   // N
	inch = 25.4        // mm
)

// thick is the diameter from which a dowel bears by the rules of bolts, mm: 1/4 in.
const thick = inch / 4

// Bearing returns the dowel bearing strength of wood, N/mm2: the pressure on diameter
// times length at which it yields.
//
// Units: gravity the specific gravity; diameter in mm; angle of the push to the grain,
// 0 along it to pi/2 across it. Under 6.35 mm the angle does not matter. Source: NDS
// table 12.3.3 and its notes, read second hand in two places that agree.
func Bearing(gravity, diameter, angle float64) float64 {
	if diameter < thick {
		return 16600 * math.Pow(gravity, 1.84) * psi
	}
	along := 11200 * gravity * psi
	across := 6100 * math.Pow(gravity, 1.45) / math.Sqrt(diameter/inch) * psi
	return grain.Hankinson(along, across, angle, grain.Mean)
}

// Rod is a dowel of metal.
type Rod struct {
	Diameter float64 // that bears, mm: a screw's at the root of its thread
	Yield    float64 // strength against bending, N/mm2
}

// Bolt is a plain steel bolt, whose bending yield is 45 000 psi (NDS).
func Bolt(diameter float64) Rod { return Rod{diameter, 45000 * psi} }

// Moment returns the moment at which the rod bends for good, N mm: the plastic one of a
// round section.
func (r Rod) Moment() float64 { return r.Yield * r.Diameter * r.Diameter * r.Diameter / 6 }
