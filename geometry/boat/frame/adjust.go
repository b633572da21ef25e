package frame

import (
	"fmt"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/wood/timber"
)

// Correction is how much longer a rib must be, shoulder to shoulder, for each mm that
// the boat as built is off the drawing.
type Correction struct {
	Beam  float64 // wider at the rib's heads, both sides together, mm per mm
	Depth float64 // deeper, mm per mm
}

// Corrections returns those of all ribs, from aft forward.
//
// Errors: a section from which half a millimeter takes the shape away.
func Corrections(f *Frame) ([]Correction, error) {
	out := make([]Correction, len(f.Ribs))
	for i, r := range f.Ribs {
		var err error
		if out[i], err = correctionOf(r); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// correctionOf solves the section anew half a millimeter either way, with the same
// turns and bilge radius, and compares the lengths on the blank.
func correctionOf(r Rib) (c Correction, err error) {
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
	c.Beam = (length(step/2, 0) - length(-step/2, 0)) / (2 * step)
	c.Depth = (length(0, step) - length(0, -step)) / (2 * step)
	return c, err
}
