package float

import (
	"math"

	"ribwright/geometry"
)

// Freeboard is the least height of the sheer above the water.
type Freeboard struct {
	Least float64         // mm, negative when the sheer is under
	At    geometry.Point3 // the place of the sheer, mm
}

// Freeboard returns the lowest point of the sheer over a plane, on either side.
func (h *Hull) Freeboard(p Plane) Freeboard {
	out := Freeboard{Least: math.Inf(1)}
	for i := range h.sections {
		s := &h.sections[i]
		q := s.sheer()
		for _, side := range [2]float64{1, -1} {
			at := geometry.Point3{X: s.x, Y: side * q.X, Z: q.Y}
			if v := p.Above(at); v < out.Least {
				out = Freeboard{v, at}
			}
		}
	}
	return out
}
