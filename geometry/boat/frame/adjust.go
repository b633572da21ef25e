package frame

import (
	"fmt"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/wood/timber"
)

// Adjust returns how much longer a rib must be, shoulder to shoulder, for each mm
// that the boat as built is wider at its heads, both sides together, or deeper.
//
// How: the section is solved anew half a millimetre either way, with the same turns
// and bilge radius, and the lengths on the blank are compared.
//
// Returns: mm per mm.
// Errors: a section from which so small a change takes the shape away.
func Adjust(r Rib) (perBeam, perDepth float64, err error) {
	const step = 0.5 // mm either way; the lengths run smoothly, so the difference is good to 1e-5
	s := r.Section
	length := func(half, depth float64) float64 {
		n, solveErr := hull.Solve(s.HalfBreadth+half, s.Depth+depth, s.Shape)
		if solveErr != nil && err == nil {
			err = fmt.Errorf("rib %s: %w", r.Name, solveErr)
		}
		out := 2 * n.Half.Length()
		for _, b := range n.Half {
			if b.Radius > 0 {
				out += 2 * timber.BendCorrection(b.Radius, r.Thickness, b.Sweep)
			}
		}
		return out
	}
	// The beam grows by two half-breadths.
	perBeam = (length(step/2, 0) - length(-step/2, 0)) / (2 * step)
	perDepth = (length(0, step) - length(0, -step)) / (2 * step)
	return perBeam, perDepth, err
}
