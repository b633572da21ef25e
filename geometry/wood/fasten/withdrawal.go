package fasten

import "math"

// Design values against being pulled out of side grain, N for each mm of the fastener in
// the wood, a screw's of its thread. Source: NDS 12.2; nails and lags are checked by
// worked examples in the tests. A wood screw must not be trusted to hold in end grain.

// Nail returns that of a smooth nail, diameter in mm.
func Nail(gravity, diameter float64) float64 {
	return 1380 * math.Pow(gravity, 2.5) * (diameter / inch) * lbf / inch
}

// Lag returns that of a coach screw.
func Lag(gravity, diameter float64) float64 {
	return 1800 * math.Pow(gravity, 1.5) * math.Pow(diameter/inch, 0.75) * lbf / inch
}

// Screw returns that of a wood screw by the diameter of its shank.
func Screw(gravity, diameter float64) float64 {
	return 2850 * gravity * gravity * (diameter / inch) * lbf / inch
}

// ScrewBreaks returns the mean load that pulls a wood screw out, N for each mm of
// thread, by a rule that is remembered.
func (u Usual) ScrewBreaks(gravity, diameter float64) float64 {
	return u.ScrewMean * gravity * gravity * diameter
}

// Least penetrations into the piece that holds, in diameters, tip included (NDS).
const (
	ScrewDeep = 6.0 // nails too
	LagDeep   = 4.0
)

// Pilot returns the hole for the thread of a wood screw, mm, from the diameter at the
// root of its thread.
func (u Usual) Pilot(root float64, hard bool) float64 {
	if hard {
		return u.PilotHard * root
	}
	return u.PilotSoft * root
}

// Washer returns what a washer bears on the side of the grain, N: its face, the hole
// left out, at the wood's strength across the grain.
func Washer(outer, hole, crush float64) float64 {
	return math.Pi / 4 * (outer*outer - hole*hole) * crush
}
