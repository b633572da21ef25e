// Package curve holds the lines a boat is drawn with: straight lines, circular
// arcs and Bézier cubics joined into paths, the elastic batten, and tracks in
// space with their true lengths.
package curve

import "ribwright/geometry"

// Segment is one piece of a path. The set is closed: Line, Arc and Cubic, so
// that every consumer can switch over all kinds.
type Segment interface {
	// Start and End return the end points, mm.
	Start() geometry.Point
	End() geometry.Point
	// At returns the point at the parameter t in [0, 1]; t outside is extended.
	At(t float64) geometry.Point
	// Length returns the length along the segment in mm. Exact for lines and
	// arcs, to about 1e-6 of the length for cubics of less than a half turn.
	Length() float64
	// Bounds returns the smallest upright box around the segment.
	Bounds() geometry.Box
	// Reverse returns the same piece run the other way.
	Reverse() Segment
	segment()
}

// Every kind there is; a new one must be added here and to AllKinds.
var (
	_ Segment = Line{}
	_ Segment = Arc{}
	_ Segment = Cubic{}
)

// AllKinds returns one awkward example of each kind and case, for tests that
// must handle them all: an upright line, a line of no length, arcs both ways
// round and past a half turn, and a cubic with a loop in its handles.
func AllKinds() []Segment {
	return []Segment{
		Line{A: geometry.Point{X: 5, Y: -3}, B: geometry.Point{X: 5, Y: 40}},
		Line{A: geometry.Point{X: 1, Y: 2}, B: geometry.Point{X: 1, Y: 2}},
		Arc{Center: geometry.Point{X: 10, Y: 20}, Radius: 30, From: 0.5, Sweep: 2},
		Arc{Center: geometry.Point{X: -10, Y: 0}, Radius: 500, From: 3, Sweep: -4.5},
		Cubic{
			P0: geometry.Point{}, P1: geometry.Point{X: 90, Y: 60},
			P2: geometry.Point{X: -40, Y: 60}, P3: geometry.Point{X: 50, Y: 0},
		},
	}
}
