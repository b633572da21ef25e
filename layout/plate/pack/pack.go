// Package pack lays flat parts close together in a small rectangle. Parts may overlap
// while it searches: it makes the rectangle smaller, pushes the overlap out again, and
// begins anew. Overlap of two parts is judged by true shapes: each is parted into convex
// pieces, and two pieces lie apart where a side of one, or the line between two corners,
// has the gap between them.
//
// The search follows "An open-source heuristic to reboot 2D nesting research"
// (arXiv:2509.13329): overlap with weights that grow where it stays, samples and descents
// for each part, exploring first and compressing at the end. Our own are that all parts are
// pushed apart at once before any looks for another place, that they turn as they are
// pushed, that neighbors are taken out and laid anew where they touch most, and that parts
// which lie close in one another are laid as one before they are laid alone.
package pack

import "ribwright/geometry"

// Part is an outline that is laid, mm.
type Part struct {
	Outer []geometry.Point   // the outer edge, either way round
	Holes [][]geometry.Point // where another part may lie
	Turns []float64          // how it may lie, radians counterclockwise; none for any way
}

// Room is the rectangle that the parts may fill, mm.
type Room struct {
	W, H  float64
	Strip bool // as high as it is, and only its width is made smaller
}

// Task is what is to be laid, and how long the search may take.
type Task struct {
	Parts []Part
	Room  Room
	Gap   float64 // least distance between two parts, mm; 0 lets them touch
	// Tolerance is how far an outline may be grown where that leaves corners out, mm.
	Tolerance float64
	Steps     int // of work; one or two millions of them take a tenth of a second
	Seed      uint64
}

// Spot is where a part lies: its origin, and its turn in radians.
type Spot struct{ X, Y, Turn float64 }

// Move is the transform that lays a part at the spot.
func (s Spot) Move() geometry.Affine {
	t := rotated(s.Turn)
	return geometry.Affine{A: t.cos, B: t.sin, C: -t.sin, D: t.cos, E: s.X, F: s.Y}
}

// Nest is parts laid in a rectangle from the origin, mm.
type Nest struct {
	W, H  float64
	Spots []Spot
}

// How much finer outlines are than the tolerance when the best nest is pressed, and the
// share of all steps that is kept for that. Our own choices.
const (
	finer    = 8
	pressing = 10
)

// Close searches for a small rectangle that the parts fill. The same task gives the same
// nest. ok is false when no nest was found that fits in the room.
func Close(t Task) (Nest, bool) {
	s := newSearch(t)
	if !s.begin(levels, t.Steps, t.Steps) {
		return Nest{}, false
	}
	s.explore(t.Steps - t.Steps/pressing)
	s.from.copied(&s.best)
	if t.Tolerance > 0 {
		t.Tolerance /= finer
		if f := newSearch(t); f.takes(s) {
			s = f
		}
	}
	s.squeeze(bold, smallest, s.done+t.Steps/pressing)
	s.best.copied(&s.from)
	return s.nest(), true
}
