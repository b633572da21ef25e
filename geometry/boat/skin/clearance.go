package skin

import "ribwright/geometry/boat/frame"

// Clearance is how the flat cloth clears the ribs.
type Clearance struct {
	Proud   []Proud // ribs that stand outside it, from aft forward
	Nearest Proud   // the rib that comes out farthest, whether or not it stands outside
	Cure    *Cure   // what keeps every rib inside; nil where none is needed or none is known
}

// ClearanceOf works out how the cloth clears the ribs of a frame.
func ClearanceOf(f *frame.Frame) *Clearance {
	c := &Clearance{}
	c.Proud, c.Nearest = ProudRibs(f)
	if len(c.Proud) > 0 {
		if cure, ok := CureOf(f); ok {
			c.Cure = &cure
		}
	}
	return c
}
