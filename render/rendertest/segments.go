package rendertest

import (
	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// Segments returns one awkward example of each kind and case, for tests that
// must handle them all: an upright line, a line of no length, arcs both ways
// round and past a half turn, and a cubic with a loop in its handles.
func Segments() []curve.Segment {
	return []curve.Segment{
		curve.Line{A: geometry.Point{X: 5, Y: -3}, B: geometry.Point{X: 5, Y: 40}},
		curve.Line{A: geometry.Point{X: 1, Y: 2}, B: geometry.Point{X: 1, Y: 2}},
		curve.Arc{Center: geometry.Point{X: 10, Y: 20}, Radius: 30, From: 0.5, Sweep: 2},
		curve.Arc{Center: geometry.Point{X: -10, Y: 0}, Radius: 500, From: 3, Sweep: -4.5},
		curve.Cubic{
			P0: geometry.Point{}, P1: geometry.Point{X: 90, Y: 60},
			P2: geometry.Point{X: -40, Y: 60}, P3: geometry.Point{X: 50, Y: 0},
		},
	}
}
