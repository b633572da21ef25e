package swamped

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/flotation"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
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

// TestArchimedes: in every case what lies under water weighs as much as everything: what
// the boat with its flotation lifts is what it carries of its people and gear.
func TestArchimedes(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name, nil)
		r := Of(b, 1000)
		own := Solids(b.Parts)
		for _, p := range r.Bags {
			own = append(own, p.Blocks...)
		}
		for _, l := range r.Fitted {
			if l.Fault != "" {
				t.Errorf("%s, %s: %s", name, l.Posture, l.Fault)
			}
			near(t, name+": carried, kg", l.Carried, awash.Lifted(own, 1000, l.Rest, 0), 1e-4)
			if l.Posture == Holding {
				near(t, name+": carried of people who hold on, kg", l.Carried, 0, 1e-4)
			} else if l.Midship > r.Fitted[0].Midship {
				t.Errorf("%s: lies higher with people in it", name)
			}
		}
	}
}

// TestBody: a body weighs what it does and where the list of weights has it, in blocks as
// heavy as water; under water to the navel it weighs half (masses of body segments, de
// Leva 1996, from memory: legs and pelvis 51 %).
func TestBody(t *testing.T) {
	for _, c := range []struct{ seat, share float64 }{{20, weight.FloorShare}, {185, weight.KneelShare}, {300, weight.BenchShare}} {
		const mass, sitting, floor = 80.0, 900.0, 45.0
		at := geometry.Point3{X: -300, Z: floor + c.seat + c.share*sitting}
		blocks := sitter(mass, sitting, floor+c.seat, floor, at)
		m, z := 0.0, 0.0
		for _, k := range blocks {
			m, z = m+k.Mass, z+k.Mass*k.At.Z
			near(t, "weight less lift, kg", k.Mass, k.Volume()*1e-6, 1e-9)
			if k.At.Z-k.Tall/2 < floor-30 {
				t.Errorf("on a seat of %.0f mm a body reaches %.0f mm under the floor", c.seat, floor-k.At.Z+k.Tall/2)
			}
		}
		near(t, "mass, kg", m, mass, 1e-9)
		near(t, "height, mm", z/m, at.Z, 1e-9)
		to := awash.Rest{Rise: floor + c.seat + navel*sitting}
		near(t, "to the navel, kg", -awash.Lifted(blocks, 1000, to, 0), 0.49*mass, 0.01*mass)
	}
}

// TestLow: every boat that is shipped, full of water, lies upright and with its sheer out
// of the water under people who hold on and under people who sit on its floor.
func TestLow(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, l := range Of(boat(t, name, nil), 1000).Fitted[:2] {
			if !l.Upright() || l.GM < 30 || l.Least() < 30 {
				t.Errorf("%s, %s: GM %.0f mm, sheer %.0f mm", name, l.Posture, l.GM, l.Least())
			}
		}
	}
}

// TestNobody: a boat without people has nobody to sit in it, and says nothing of them.
func TestNobody(t *testing.T) {
	r := Of(boat(t, "brook", func(d *design.Design) { d.Crew, d.Gear, d.Seats = nil, nil, nil }), 1000)
	if all := r.All(); len(all) != 1 || all[0].Posture != Holding || !all[0].Upright() || math.Signbit(all[0].Carried) {
		t.Errorf("%+v", all)
	}
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
