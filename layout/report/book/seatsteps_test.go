package book

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/boat/seat"
	"ribwright/geometry/measure"
)

// TestSeatCanBeBored: hangers nearer than a drill with its bit is long, some 250 mm (common
// practice), are bored one pair before the other is bolted on, and the room is told as the bolts'
// places and the boards' breadths leave it; pegs to be pulled stand out of their holes by a
// finger, 15 to 25 mm (common practice), and driven ones by a little that is cut off.
func TestSeatCanBeBored(t *testing.T) {
	for _, name := range []string{"lake", "river"} {
		b := facts(t, shipped(t, name), measure.Metric)
		w := &writer{Facts: b}
		for _, s := range b.Frame.Seats {
			h := s.Hung
			f, a := h.Front.Hanger, h.After.Hanger
			room := (f.Bolts[0]+f.Bolts[1])/2 - f.Wide/2 - (a.Bolts[0]+a.Bolts[1])/2 - a.Wide/2
			said := strings.Join(w.hangSteps(s), "\n")
			want := fmt.Sprintf("Bore the front ones before the after ones are bolted on: between them only %d mm", int(room))
			if strings.Contains(said, want) != (room < 250) {
				t.Errorf("%s, %s: %.1f mm between hangers: %s", name, s.Name, room, said)
			}
			inOrder(t, said, "Pin each end of both rails", fmt.Sprintf("%.0f mm deep", h.Front.IntoRail()), fmt.Sprintf("The pegs, %.0f mm long, have no glue", h.Front.PegLong()),
				"The frame:", fmt.Sprintf("%.0f mm deep, drive a peg of hardwood %.0f mm long", h.IntoSpreader(), h.SpreaderPegLong()), "straps", "Hang it")
			for _, r := range []seat.Rail{h.Front, h.After} { // the table has what the pattern shows on this face
				m := r.Mouth(h.Width, h.Depth, true)
				if top, slot := m[0].Lerp(m[1], 0.5), r.SlotInboard(); top.Sub(slot).Norm() > 0.01 {
					t.Errorf("%s: a slot at %.2f, its mouth at %.2f", s.Name, slot, top)
				}
			}
			if out := h.Front.PegLong() - h.Front.IntoRail(); out < 15 || out > 25 {
				t.Errorf("%s: pegs stand out by %.1f mm", s.Name, out)
			}
			if out := h.SpreaderPegLong() - h.IntoSpreader(); out < 3 || out > 10 {
				t.Errorf("%s: driven pegs stand out by %.1f mm", s.Name, out)
			}
		}
	}
}

// TestMortiseBit: a bit for a mortise is sold, and no wider than it.
func TestMortiseBit(t *testing.T) {
	for wide, want := range map[float64][2]string{6.3: {"6.0 mm", "3/16 in"}, 7: {"7.0 mm", "1/4 in"}, 6.8: {"6.5 mm", "1/4 in"}} {
		for i, u := range []measure.System{measure.Metric, measure.Imperial} {
			w := &writer{}
			w.Letters.Units = u
			if got := w.mortiseBit(wide); got != want[i] {
				t.Errorf("a mortise of %.1f mm: a bit of %s, want %s", wide, got, want[i])
			}
		}
	}
}
