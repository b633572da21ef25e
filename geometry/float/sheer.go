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

// FreeboardAt returns the height of the sheer over the water at a share of the
// hull's length from aft (0) to forward (1), mm.
func (h *Hull) FreeboardAt(p Plane, share float64) float64 {
	aft, fore := h.Ends()
	x := aft + (fore-aft)*share
	for i := 1; i < len(h.sections); i++ {
		a, b := &h.sections[i-1], &h.sections[i]
		if x <= b.x {
			t := (x - a.x) / (b.x - a.x)
			q := a.sheer().Lerp(b.sheer(), t)
			return p.Above(geometry.Point3{X: x, Y: q.X, Z: q.Y})
		}
	}
	s := &h.sections[len(h.sections)-1]
	return p.Above(geometry.Point3{X: s.x, Y: s.sheer().X, Z: s.sheer().Y})
}
