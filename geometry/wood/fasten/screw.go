package fasten

import "math"

// ScrewDeep is the least that a wood screw or a nail goes into the piece that holds it,
// in diameters, tip included (NDS).
const ScrewDeep = 6.0

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
