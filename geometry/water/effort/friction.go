// Package effort estimates what it takes to move a hull through still, deep
// water: friction by the ITTC-1957 line and waves by Michell's thin-ship
// integral. The figures compare designs with each other. They leave out wind,
// waves, shallow water, the ribs showing through the cloth, and how well the
// paddler paddles.
package effort

import "math"

// Friction returns the coefficient of the ITTC-1957 line, 0.075 / (lg Re - 2)^2,
// for a Reynolds number on the waterline's length; 0 at or below 1000, where the
// line means nothing.
//
// Source: ITTC recommended procedure 7.5-02-03-01; quoted in Morrall, NPL Ship
// Report 142 (1970).
func Friction(re float64) float64 {
	if !(re > 1000) {
		return 0
	}
	l := math.Log10(re) - 2
	return 0.075 / (l * l)
}

// Allowance is what the form adds to the friction, as a share of it. Common
// practice for slender round hulls, from memory, no source: 0.05 to 0.15.
const Allowance = 0.08

// Efficiency is the share of the work at the paddle that moves the boat. From
// memory, 0.60 to 0.75.
const Efficiency = 0.65
