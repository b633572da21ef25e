package stow

import (
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/seat"
)

// seatStep is how far apart sections of a seat are looked at along the boat, mm.
const seatStep = 40.0

// seats gives what stands up of them: the top of each as wide as it is, the rails and
// hangers of one that hangs, the cheeks of one that stands.
func (w *wood) seats() {
	for _, s := range w.f.Seats {
		part := w.part(CrossPiece, strings.TrimSpace(s.Name))
		w.top(part, s)
		if s.Hung != nil {
			w.hung(part, s.Hung)
		}
	}
}

// top gives the upper face, and the sides down to the floor where it stands on it.
func (w *wood) top(part int, s seat.Seat) {
	n := int(s.Long/seatStep) + 1
	for i := range n + 1 {
		forward := s.Long * (float64(i)/float64(n) - 0.5)
		z := s.EdgeZ(forward)
		pts := []geometry.Point{{Y: z}, {X: s.Wide / 2, Y: z}}
		if s.Hung == nil {
			pts = append(pts, geometry.Point{X: s.Wide / 2, Y: s.Floor})
		}
		w.line(part, s.At+forward, pts)
	}
}

func (w *wood) hung(part int, h *seat.Hung) {
	for _, r := range []seat.Rail{h.Front, h.After} {
		g := r.Hanger
		for _, x := range []float64{-h.Width / 2, 0, h.Width / 2} {
			for _, z := range []float64{r.TopZ, r.TopZ - h.Depth} {
				w.line(part, r.Station+x, []geometry.Point{{Y: z}, {X: r.Length / 2, Y: z}})
			}
		}
		for _, x := range []float64{-g.Wide / 2, 0, g.Wide / 2} {
			w.line(part, g.Station+x, []geometry.Point{g.Point(0, g.Block+seat.Thick), g.Point(g.Length, g.Block+seat.Thick), g.Point(g.Length, g.Block)})
		}
	}
}
