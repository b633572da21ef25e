package curve

import "ribwright/geometry"

// Line is the straight piece from A to B. mm.
type Line struct{ A, B geometry.Point }

// Start returns A.
func (l Line) Start() geometry.Point { return l.A }

// End returns B.
func (l Line) End() geometry.Point { return l.B }

// At returns the point the share t of the way from A to B.
func (l Line) At(t float64) geometry.Point { return l.A.Lerp(l.B, t) }

// Length returns the distance from A to B in mm.
func (l Line) Length() float64 { return l.B.Sub(l.A).Norm() }

// Bounds returns the box with A and B at opposite corners.
func (l Line) Bounds() geometry.Box { return geometry.Around(l.A, l.B) }

// Reverse returns the line from B to A.
func (l Line) Reverse() Segment { return Line{l.B, l.A} }

func (Line) segment() {}
