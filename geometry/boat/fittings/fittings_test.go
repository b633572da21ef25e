package fittings

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/seat"
)

// TestStraps reckons the straps of River's seats by hand: the way between two members, once
// round each, 60 mm doubled at both ends and 100 mm to pull by, to the next 10 mm; what is
// bought is all of them, to the next meter.
func TestStraps(t *testing.T) {
	for _, s := range frametest.Shipped(t, "river", nil).Seats {
		h := s.Hung
		rail, spreader := 2*(h.Width+h.Depth), 2*(seat.SpreadWide+h.Depth)
		along := 10 * math.Ceil((h.Spreader+2*rail+2*60+100)/10)
		across := 10 * math.Ceil((s.Wide+2*spreader+2*60+100)/10)
		want := fmt.Sprintf("%s, %d straps of %.0f mm and %d of %.0f mm", s.Name, h.Along, along, h.Across, across)
		found := false
		for _, k := range Seat(s).Things {
			if k.Key != "webbing" {
				continue
			}
			found = true
			if sum := (float64(h.Along)*along + float64(h.Across)*across) / 1000; k.How != want || k.Amount < sum || k.Amount >= sum+1 {
				t.Errorf("%g m of webbing, %q; want %g m, %q", k.Amount, k.How, sum, want)
			}
		}
		if !found {
			t.Errorf("%s is bottomed with no webbing", s.Name)
		}
	}
}
