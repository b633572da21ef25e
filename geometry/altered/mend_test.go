package altered

import (
	"math"
	"testing"

	"ribwright/geometry/finding"
)

// TestMend: a change is rounded away from what the measure is, to its step, says in which
// direction, and is none beyond the band, by nothing, or of what is not there.
func TestMend(t *testing.T) {
	d := shipped(t, "brook")
	for _, c := range []struct {
		m    Measure
		by   float64
		want finding.Change
	}{
		{Beam, 12.2, finding.Change{Measure: "beam", To: 733, Says: "make it 13 mm wider"}},
		{Beam, -12.2, finding.Change{Measure: "beam", To: 707, Says: "make it 13 mm narrower"}},
		{Depth, 3, finding.Change{Measure: "depth", To: 288, Says: "make it 3 mm deeper"}},
		{RibThickness, -0.31, finding.Change{Measure: "rib thickness", To: 5.6, Says: "make the ribs 0.4 mm thinner"}},
		{SeatPlace, -40, finding.Change{Measure: "seat place", To: -150, Says: "move the seats 40 mm aft"}},
		{Beam, 500, finding.Change{}}, {Beam, 0, finding.Change{}}, {SeatHeight, math.NaN(), finding.Change{}}, {Depth, math.Inf(1), finding.Change{}},
	} {
		got := c.m.Mend(d, c.by)
		if math.Abs(got.To-c.want.To) > 1e-9 || got.Measure != c.want.Measure || got.Says != c.want.Says {
			t.Errorf("%v by %g: %+v, want %+v", c.m, c.by, got, c.want)
		}
		if got.IsSet() && (!Within(d, got) || Within(d, finding.Change{Measure: got.Measure, To: 1e6})) {
			t.Errorf("%v: the band is not kept", c.m)
		}
	}
	d.Thwarts, d.Seats = nil, nil
	if ThwartPlace.Mend(d, 5).IsSet() || SeatHeight.Mend(d, 5).IsSet() || Within(d, finding.Change{Measure: "yacht"}) {
		t.Error("what the boat has not is changed")
	}
}
