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

// A wood screw No. 6, by which small strips are held: its shank and the root of its thread, mm
// (NDS appendix L).
const Number6Shank, Number6Root = 3.51, 2.87

// Withdraws returns the load, N, that a wood screw of a shank's diameter is asked to bear along
// itself, by so much thread in side grain, dry, mm: 2850 G² D pounds for each inch (NDS table
// 12.2B, read second hand). The NDS gives it from a depth of ScrewDeep diameters on.
func Withdraws(gravity, shank, thread float64) float64 {
	return 2850 * gravity * gravity * shank / inch * lbf * thread / inch
}

// Washer returns what a washer bears on the side of the grain, N: its face, the hole
// left out, at the wood's strength across the grain.
func Washer(outer, hole, crush float64) float64 {
	return math.Pi / 4 * (outer*outer - hole*hole) * crush
}
