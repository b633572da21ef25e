package weight

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
)

func parts(t *testing.T, f *frame.Frame) []Item {
	t.Helper()
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	items, err := Boat(f, c)
	if err != nil {
		t.Fatal(err)
	}
	return items
}

// TestHand weighs parts of Brook that are plain sticks by hand: volume from the
// design file, densities from FPL-GTR-282 tables 5-3a and 5-3b (western redcedar
// 0.32, white ash 0.60 specific gravity, 12 % moisture).
func TestHand(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	items := parts(t, f)
	const cedar, ash = 0.32 * 1.12e-6, 0.60 * 1.12e-6 // kg/mm3
	keel := f.Keel.Fore - f.Keel.Aft
	ribs := 0.0
	for _, r := range f.Ribs {
		ribs += (r.Length + 2*18) * 20 * 6
	}
	mortises := float64(len(f.Ribs)) * 20.3 * 6.3 * 20
	for _, c := range []struct {
		name string
		want float64
	}{
		{"Keel", 40 * 12 * keel * cedar},
		{"Ribs", ribs * ash},
		{"Gunwales", 2 * (19*36*(f.Gunwale.Fore-f.Gunwale.Aft) - mortises) * cedar},
	} {
		for _, i := range items {
			if got := i.Load().Mass; i.Name == c.name && math.Abs(got/c.want-1) > 2e-3 {
				t.Errorf("%s: %.4f kg, by hand %.4f", c.name, got, c.want)
			}
		}
	}
	for _, i := range items {
		if at := i.Load().At; math.Abs(at.Y) > 1e-9 {
			t.Errorf("%s lies %g mm off the middle line", i.Name, at.Y)
		}
	}
}

// TestOldCanoes: W. H. Miller, Canoeing, Sailing and Motor Boating (about 1911),
// says that 14 ft of canvas on spruce and ash can come under 35 lb, 15.9 kg; his
// own decked one weighed 42 lb. Lake is 14 ft of spruce and ash.
func TestOldCanoes(t *testing.T) {
	items := parts(t, frametest.Shipped(t, "lake", nil))
	if m := Sum(items).Mass; m < 12 || m > 19 {
		t.Errorf("Lake weighs %.1f kg, want 12 to 19", m)
	}
}

// TestHeights has the weight of the median bodies of ANSUR II over the floor in
// three postures, from segment masses: within 12 mm, for one share serves all.
func TestHeights(t *testing.T) {
	d := &design.Design{Seats: []design.Seat{{Name: "Bench", Height: 250}, {Name: "Edge", Height: 230}, {Name: "Pad", Height: 40}}}
	on := map[design.Posture]string{design.Bench: "bench", design.Kneeling: "seat-2", design.Floor: design.OnFloor}
	for _, c := range []struct {
		posture design.Posture
		mass    float64
		want    float64
	}{
		{design.Bench, 66.8, 502}, {design.Bench, 84.6, 529},
		{design.Kneeling, 66.8, 434}, {design.Kneeling, 84.6, 463},
		{design.Floor, 66.8, 275}, {design.Floor, 84.6, 301},
	} {
		if got := Height(d, design.Person{Mass: c.mass, Posture: c.posture, Seat: on[c.posture]}); math.Abs(got-c.want) > 12 {
			t.Errorf("%.1f kg %v: %.0f mm over the floor, want %.0f", c.mass, c.posture, got, c.want)
		}
	}
	p := design.Person{Mass: 66.8, Posture: design.Floor, Seat: "Pad", Stature: 1626}
	if got := Height(d, p); math.Abs(got-(40+0.33*0.525*1626)) > 1e-9 {
		t.Errorf("with seat and stature given %.1f mm", got)
	}
}

// TestPlaces puts people and gear where the design has them, on the floor slats.
func TestPlaces(t *testing.T) {
	f := frametest.Shipped(t, "river", nil)
	crew, gear := Crew(f.Hull, f.Design, f.Design.Crew), Gear(f.Hull, f.Design.Gear)
	if len(crew) != 2 || len(gear) != 1 {
		t.Fatalf("%d people and %d lots of gear, want 2 and 1", len(crew), len(gear))
	}
	// Over the straight keel the floor lies at skin + keel + rib + slat.
	if got, want := gear[0].Load().At.Z, 0.7+14+7+6.5+150; math.Abs(got-want) > 1e-9 {
		t.Errorf("the packs' middle lies %.1f mm up, want %.1f", got, want)
	}
	// A kneeler's weight comes 100 mm ahead of the seat; the floor is that under the seat.
	if got := crew[0].Load().At.X; got != 910+100 {
		t.Errorf("the bow paddler's weight comes down at %.1f mm, want 1010", got)
	}
	if got, want := crew[1].Load().At.Z, f.Hull.FloorZ(-1470)+185+0.25*Sitting(f.Design.Crew[1]); math.Abs(got-want) > 1e-9 {
		t.Errorf("the stern paddler's weight lies %.1f mm up, want %.1f", got, want)
	}
	if got := Sum(append(crew, gear...)).Mass; got != 190 {
		t.Errorf("190 kg aboard weigh %g kg", got)
	}
}

// TestOwnWood: a builder's own density of a wood is weighed, not the table's.
func TestOwnWood(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	weigh := func() float64 {
		f, err := frame.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range parts(t, f) {
			if i.Name == "Keel" {
				return i.Load().Mass
			}
		}
		t.Fatal("no keel")
		return 0
	}
	before := weigh()
	wood, err := d.Wood(d.Keel.Species)
	if err != nil {
		t.Fatal(err)
	}
	d.Woods = append(d.Woods, design.Wood{Name: d.Keel.Species, Density: 2 * wood.Density})
	if after := weigh(); math.Abs(after-2*before) > 1e-9 {
		t.Errorf("the keel weighs %.4f kg, want twice %.4f", after, before)
	}
}
