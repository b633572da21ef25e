package sail

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// TestSway: a rib of straight sides and a straight bottom is the portal frame of the
// tables with hinged feet, upside down: pushed aside by F it has F h / 2 at each corner
// and gives F h2 (L + 2 h) / 12 E I, with the height h and the span L.
func TestSway(t *testing.T) {
	const half, high, wide, thick, moe = 350.0, 280.0, 35.0, 6.0, 10000.0
	r := frame.Rib{Thickness: thick, Outer: curve.Polyline(geometry.Pt(0, 40), geometry.Pt(half, 40), geometry.Pt(half, 40+high))}
	most, _ := sway(r)
	near(t, "corner", most, high/2, 1e-9)
	inertia := wide * thick * thick * thick / 12
	near(t, "gives", ribGives(r, wide, moe), high*high*(2*half+2*high)/(12*moe*inertia), 1e-9)
}

// TestBoxHolds: the couple of step and partner comes back as the couple of the rods and
// as that of the gunwales; what the ribs take is a small part of it, and what box and
// ribs take together is all.
func TestBoxHolds(t *testing.T) {
	for _, name := range design.ShippedNames() {
		for _, r := range []design.Rig{design.Spritsail, design.Vee} {
			b := boat(t, name)
			s := b.Frame.Design.Sail()
			s.Rig = r
			f, err := New(b, s, fresh(t))
			if err != nil {
				t.Fatal(err)
			}
			inner, outer := b.GunwaleTop(f.Mast.At)
			want := f.Mast.Step * (f.Mast.PartnerZ - f.Mast.StepZ)
			near(t, name+": gunwales", f.Bed.Lift*(inner.Y+outer.Y), want, 1e-6*want)
			near(t, name+": rods", f.Bed.Rod*2*2*f.RodsAt(), want, 1e-6*want)
			if f.Bed.Share > 0.05*f.Mast.Step || f.Bed.Stress > f.Bed.Asked || f.Bed.Partner > f.Bed.Boards {
				t.Errorf("%s, %v: %+v of %.0f N", name, r, f.Bed, f.Mast.Step)
			}
			if n := len(f.Bed.Ribs); n < leastRibs || f.Bed.Ribs[0].Station > f.Mast.At || f.Bed.Ribs[n-1].Station < f.Mast.At {
				t.Errorf("%s, %v: the bed lies on %s, the mast stands at %.0f", name, r, Names(f.Bed.Ribs), f.Mast.At)
			}
		}
	}
}

// TestSeats: in the middle people sit where the design has them, and inside as high.
func TestSeats(t *testing.T) {
	for _, name := range design.ShippedNames() {
		b := boat(t, name)
		want, mid, in := weight.Sum(b.Crew), seated(b, Middle), seated(b, Inside)
		near(t, name+": along", mid.At.X, want.At.X, 1e-9)
		near(t, name+": height", mid.At.Z, want.At.Z, 1e-9)
		near(t, name+": height inside", in.At.Z, want.At.Z, 1e-9)
		if want.Mass == 0 || math.Abs(mid.At.Y) > 1e-9 || in.At.Y < 50 {
			t.Errorf("%s: %+v in the middle, %+v inside", name, mid, in)
		}
	}
}
