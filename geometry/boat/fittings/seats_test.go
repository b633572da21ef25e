package fittings

import (
	"testing"

	"ribwright/geometry/boat/frame/frametest"
)

// TestSeatPegs: a hung seat is pegged at both ends of its two rails and of its two
// spreaders, so eight pegs are bought for it and the work on them is counted.
func TestSeatPegs(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	for _, s := range f.Seats {
		k := Seat(s)
		pegs := 0.0
		for _, v := range k.Things {
			if v.Key == "peg" {
				pegs += v.Amount
			}
		}
		if s.Hung == nil || pegs != 2*2+2*2 {
			t.Errorf("%s: %.0f pegs", s.Name, pegs)
		}
		// Each goes through its wood into the next by three diameters at least.
		if into := s.Hung.IntoSpreader() - s.Hung.Width; into < 3*6 {
			t.Errorf("%s: the pegs of spreaders hold %.0f mm", s.Name, into)
		}
		if deep, slot := s.Hung.Front.IntoRail(), s.Hung.Front.Hanger.Wide/2+s.Hung.Front.Hanger.Off-s.Hung.Width/2; deep-slot < 3*6 {
			t.Errorf("%s: the pegs of rails hold %.0f mm", s.Name, deep-slot)
		}
	}
}
