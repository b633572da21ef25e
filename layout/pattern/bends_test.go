package pattern

import (
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestBendsOnTheBodyPlan: where the arcs of a rib's outer face meet, a thin line crosses it,
// so that a gauge traced there gets its bend marks; and the lines are said to be that. A rib
// that is only pushed in is named on either side.
func TestBendsOnTheBodyPlan(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		d := BodyPlan(bent(t, f), units)
		met := func(p geometry.Point) bool {
			for _, s := range d.Strokes {
				if s.Pen != layout.Tick {
					continue
				}
				for _, piece := range s.Path {
					if piece.Start().Sub(p).Norm() < 0.01 || piece.End().Sub(p).Norm() < 0.01 {
						return true
					}
				}
			}
			return false
		}
		for i, r := range f.Ribs {
			if halved(f) && !onHalf(r.Station) {
				continue
			}
			side := 1.0
			if r.Station < 0 {
				side = -1
			}
			if len(r.Outer) != len(r.Section.Half) {
				t.Fatalf("rib %s has %d pieces for %d bends", r.Name, len(r.Outer), len(r.Section.Half))
			}
			for _, piece := range r.Outer[1:] {
				if p := geometry.Stretch(side, 1).Apply(piece.Start()); !met(p) {
					t.Errorf("rib %d, %s: no line crosses it at %.1f, %.1f where one bend passes into the next", i, r.Name, p.X, p.Y)
				}
			}
		}
		said := map[string]int{}
		for _, w := range d.Texts {
			said[w.Words]++
		}
		sides := 2
		if halved(f) {
			sides = 1
		}
		if said["bends begin, end"] != 2*sides || said["pushed in"] != 2*sides {
			t.Errorf("%d lines of bends and %d pushed-in ribs are named on %d sides, want two on each", said["bends begin, end"], said["pushed in"], sides)
		}
	})
}
