package inside

import (
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// TestLiveCargo: who does not paddle lies on slats from back to feet and gets neither
// footbrace nor backrest.
func TestLiveCargo(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	before := Of(f)
	f.Design.Crew = append(f.Design.Crew,
		design.Person{Name: "Child", Role: design.Passenger, Mass: 20, Stature: 1150, Posture: design.Floor, Seat: design.OnFloor, At: 900},
		design.Person{Name: "Dog", Role: design.Dog, Mass: 27, Posture: design.Floor, Seat: design.OnFloor, At: -600})
	got := Of(f)
	if len(got.Braces) != len(before.Braces) || len(got.Backs) != len(before.Backs) {
		t.Errorf("%d footbraces and %d backrests, %d and %d without live cargo", len(got.Braces), len(got.Backs), len(before.Braces), len(before.Backs))
	}
	// By hand: a child of 1150 mm sits from 150 mm abaft its weight to 345 mm ahead; a dog of
	// 27 kg takes up 630 mm.
	aft, fore, ok := Reach(f.Design)
	if !ok || aft > -600-315+0.5 || fore < 900+345-0.5 {
		t.Errorf("people reach from %.0f to %.0f mm", aft, fore)
	}
}
