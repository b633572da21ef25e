// Package pack lays flat parts close together in a small rectangle. Parts may overlap
// while it searches: it makes the rectangle smaller, pushes the overlap out again, and
// begins anew. Overlap of two parts is judged by true shapes: each is parted into convex
// pieces, and two pieces overlap where one lies inside the half planes of the other's
// no-fit shape.
//
// The way of the search follows "An open-source heuristic to reboot 2D nesting research"
// (arXiv:2509.13329): overlap with weights that grow where it stays, samples and descents
// for each part, exploring first and compressing at the end.
package pack

import (
	"math"

	"ribwright/geometry"
)

// Part is an outline that is laid, mm.
type Part struct {
	Outer []geometry.Point   // the outer edge, either way round
	Holes [][]geometry.Point // where another part may lie
	Turns []int              // how it may lie, in steps of the compass, counterclockwise; at least one
}

// Compass is how many steps make a full turn.
const Compass = 24

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
	Steps     int // of work; some millions of them take a tenth of a second
	Seed      uint64
}

// Spot is where a part lies: its origin, and its turn in steps of the compass.
type Spot struct {
	X, Y float64
	Turn int
}

// Move is the transform that lays a part at the spot.
func (s Spot) Move() geometry.Affine {
	t := turned[s.Turn]
	return geometry.Affine{A: t.cos, B: t.sin, C: -t.sin, D: t.cos, E: s.X, F: s.Y}
}

// Nest is parts laid in a rectangle from the origin, mm.
type Nest struct {
	W, H  float64
	Spots []Spot
}

// rotation is one step of the compass.
type rotation struct{ cos, sin float64 }

// turned are all steps of the compass, rounded so that every processor has the same.
var turned = func() (out [Compass]rotation) {
	const fine = 1 << 40
	for k := range out {
		s, c := math.Sincos(2 * math.Pi * float64(k) / Compass)
		out[k] = rotation{math.Round(c*fine) / fine, math.Round(s*fine) / fine}
	}
	return out
}()

// at turns a point; products are rounded one by one, so that every processor agrees.
func (r rotation) at(p geometry.Point) geometry.Point {
	return geometry.Point{X: float64(r.cos*p.X) - float64(r.sin*p.Y), Y: float64(r.sin*p.X) + float64(r.cos*p.Y)}
}

// Close searches for a small rectangle that the parts fill. The same task gives the same
// nest. ok is false when no nest was found that fits in the room.
func Close(t Task) (Nest, bool) {
	s := newSearch(t)
	if !s.start(t.Steps) {
		return Nest{}, false
	}
	s.explore(t.Steps - t.Steps/pressing)
	s.press(t.Steps)
	return s.best.nest(), true
}
