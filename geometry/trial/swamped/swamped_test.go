package swamped

import (
	"math"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/water/awash"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g within %g", what, got, want, tol)
	}
}

func boat(t testing.TB, name string, change func(*design.Design)) aboard.Boat {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestSolids: the blocks weigh and lift what the list of weights does, soaked.
func TestSolids(t *testing.T) {
	b := boat(t, "lake", func(d *design.Design) { d.Inside.Flotation = design.NoFlotation })
	_, soaked := flotation.Own(b.Parts)
	near(t, "lift, kg", awash.Lift(Solids(b.Parts), 1000), soaked, 1e-9)
}

// TestArchimedes: in every case the volume under water weighs as much as everything, and
// what it could carry more is what the flotation lifts over its load.
func TestArchimedes(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		r := Of(b, 1000)
		own := awash.Lift(Solids(b.Parts), 1000)
		for _, l := range r.Fitted {
			if l.Fault != "" {
				t.Errorf("%s, %s: %s", name, l.Posture, l.Fault)
			}
			lift := own
			for _, p := range r.Bags {
				lift += p.Liters - p.Mass
			}
			near(t, name+": spare, kg", l.Spare, lift-l.Carried, 1e-6)
			if l.Carried > 0 && l.Midship > r.Fitted[0].Midship {
				t.Errorf("%s: lies higher with people in it", name)
			}
		}
	}
}

// TestPerson: half of a person of mass m at zg over water that carries the other half at
// zb weighs m/2 at 2 zg - zb; by the body's own numbers Brook's paddler of 865 mm sitting
// height on a pad of 20 mm: 2 x 0.33 - 0.10 of it over the pad.
func TestPerson(t *testing.T) {
	b := boat(t, "brook", func(d *design.Design) { d.Gear, d.Crew[0].Stature = nil, 865/0.525 })
	p := Sitting(b)[0]
	near(t, "kg", p.Mass, 32.5, 1e-9)
	near(t, "mm over the floor", p.At.Z-b.Frame.Hull.FloorZ(-110), 20+0.56*865, 1e-6)
}

// TestSidesRight: flotation at the sides rights the boat under people who sit in it more
// than as much in the ends, as BM goes with the square of the distance from the middle.
func TestSidesRight(t *testing.T) {
	for _, name := range []string{"brook", "lake"} {
		r := Of(boat(t, name, nil), 1000)
		if r.Sides.Righting <= r.Ends.Righting {
			t.Errorf("%s: %.2f N m a degree with flotation at the sides, %.2f in the ends", name, r.Sides.Righting, r.Ends.Righting)
		}
	}
}
