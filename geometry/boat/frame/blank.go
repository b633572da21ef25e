package frame

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// The wood left for cutting outlines and long ends true, mm: round a part that is sawn to
// an outline, and at each end of a long stick. Common practice, no source.
const (
	Around  = 6.0
	EndTrim = 25.0
)

// Blank returns the rectangle of wood that an outline is sawn from, where it lies under the
// outline: its first side runs along the grain, which lies at an angle from x. It has so much
// to saw off at both ends and at both sides, to the next whole millimeter; sides of which
// nothing is sawn off are planed to the outline's width.
func Blank(outline curve.Path, grain, ends, sides float64) curve.Path {
	box := outline.Map(geometry.Turn(-grain)).Bounds()
	long, wide := math.Ceil(box.W()+2*ends), box.H()
	if sides > 0 {
		wide = math.Ceil(wide + 2*sides)
	}
	half, mid := geometry.Point{X: long / 2, Y: wide / 2}, box.Center()
	return curve.Rectangle(geometry.Box{Min: mid.Sub(half), Max: mid.Add(half)}).Map(geometry.Turn(grain))
}

// Blank returns what a stem is sawn from where it is no lamination.
func (s Stem) Blank() curve.Path { return Blank(s.Outline, s.Grain, Around, Around) }

// Blank returns what a breasthook is sawn from; its grain runs along the boat.
func (b Breasthook) Blank() curve.Path { return Blank(b.Outline, 0, Around, Around) }

// Blank returns what a cross piece is sawn from.
func (t Thwart) Blank() curve.Path { return Blank(t.Outline, 0, Around, 0) }
