package layout

import (
	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// Part is one piece to cut from sheet stock, in its own coordinates.
type Part struct {
	Name    string
	Cut     []curve.Path // closed; holes before the outline round them
	Marks   []curve.Path // lines to draw on the piece
	Letters []Text       // engraved
}

// Bounds returns the box around everything the cutter touches.
func (p Part) Bounds() geometry.Box {
	b := geometry.EmptyBox()
	for _, set := range [][]curve.Path{p.Cut, p.Marks} {
		for _, c := range set {
			b = b.Union(c.Bounds())
		}
	}
	return b
}

// Placed is a part laid on a plate.
type Placed struct {
	Part Part
	Move geometry.Affine // turn and shift, never a mirror or a stretch
}

// Plate is what one cutter file holds: parts side by side on a sheet of W by H
// mm, measured from its lower left corner, and a square to check the scale by.
type Plate struct {
	Title string
	W, H  float64
	Parts []Placed
	Check geometry.Box
}
