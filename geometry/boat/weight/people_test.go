package weight

import (
	"testing"

	"ribwright/geometry/design"
)

// TestPeople: a design without a crew gets one person of 75 kg who kneels at its first seat,
// or on the floor amidships where it has none.
func TestPeople(t *testing.T) {
	d := &design.Design{}
	if p := People(d); len(p) != 1 || p[0].Mass != 75 || p[0].At != 0 || p[0].Seat != design.OnFloor || p[0].Posture != design.Kneeling {
		t.Errorf("assumed %+v", p)
	}
	d.Seats = []design.Seat{{Name: "Stern seat", At: -500}, {Name: "Bow seat", At: 500}}
	if p := People(d); len(p) != 1 || p[0].Seat != "Stern seat" || d.WeightAt(p[0]) >= 0 {
		t.Errorf("assumed at a seat %+v", p)
	}
	d.Crew = []design.Person{{Name: "A", Mass: 50}}
	if p := People(d); len(p) != 1 || p[0].Mass != 50 {
		t.Errorf("of the design %+v", p)
	}
}
