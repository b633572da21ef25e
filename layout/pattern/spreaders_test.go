package pattern

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// TestSpreadersOnTheStrip: a triangle stands where each spreader does, and beside it
// which way it holds; midship of every shipped boat pulls. The words lie clear of slots.
func TestSpreadersOnTheStrip(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		b := bent(t, f)
		d := Mortises(b, units)
		half := f.Gunwale.Width / 2
		said := map[string][]float64{}
		for _, w := range d.Texts {
			if at := strings.Index(w.Words, "hold "); at >= 0 {
				said[strings.Fields(w.Words[at:])[1]] = append(said[strings.Fields(w.Words[at:])[1]], w.At.X)
				wide := lettering.Width(w.Words, w.Height)
				for _, m := range f.Gunwale.Mortises {
					lo, hi := m.Ends()
					if w.At.X < hi && w.At.X+wide > lo && w.At.Y+w.Height > -m.Width/2 {
						t.Errorf("%q at %.1f mm lies on the mortise of %s", w.Words, w.At.X, m.Rib)
					}
				}
			}
		}
		apart, together := 0, 0
		for _, s := range b.Spread.Spreaders {
			if d.Turns && s.At < 0 {
				continue
			}
			if s.At == 0 {
				together++
			} else {
				apart++
			}
			found := false
			for _, p := range d.Strokes {
				box := p.Path.Bounds()
				if p.Pen == layout.Mark && math.Abs(box.Center().X-s.Along) < 1e-6 && math.Abs(box.Min.Y+half) < 1e-6 && math.Abs(box.H()-3) < 1e-6 {
					found = true
				}
			}
			if !found {
				t.Errorf("no triangle at %.1f mm on the strip", s.Along)
			}
		}
		if len(said["apart"]) != apart || len(said["TOGETHER"]) != together {
			t.Errorf("the strip says %v, want %d apart and %d together", said, apart, together)
		}
	})
}
