package sizing

import (
	"math"
	"testing"

	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/family"
)

// TestShippedFromFamilies: each shipped boat comes out of its own family, within 3 %
// of length, beam, depth and seat height, for the people and the gear that it is drawn
// for. The designs do not say how tall these are; they are taken as men
// of 1.80 m, whose arms reach over the boats at their seats.
func TestShippedFromFamilies(t *testing.T) {
	for name, use := range map[string]string{"brook": "pack", "lake": "solo", "river": "tandem"} {
		d, err := design.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		f := shipped(t, use)
		b := DefaultBrief()
		b.Title = name
		for _, p := range d.Crew {
			b.Crew = append(b.Crew, Paddler{Person: body.Person{Weight: p.Mass, Stature: 1800, Sex: body.Man}, Posture: map[design.Posture]string{
				design.Kneeling: family.Kneeling, design.Bench: family.Sitting, design.Floor: family.Either}[p.Posture]})
		}
		b.Gear = 0
		for _, g := range d.Gear {
			b.Gear += g.Mass
		}
		boat, err := Size(f, b)
		if err != nil {
			t.Fatal(err)
		}
		got := boat.Design
		for what, v := range map[string][2]float64{
			"length": {float64(got.Hull.Length), float64(d.Hull.Length)}, "beam": {float64(got.Hull.Beam), float64(d.Hull.Beam)},
			"depth": {float64(got.Hull.Depth), float64(d.Hull.Depth)}, "seat": {float64(got.Seats[0].Height), float64(d.Seats[0].Height)},
		} {
			t.Logf("%s: %s %.0f mm, drawn %.0f mm (%.1f %%)", name, what, v[0], v[1], 100*(v[0]/v[1]-1))
			if off := math.Abs(v[0]/v[1] - 1); !(off <= 0.03) {
				t.Errorf("%s: %s %.0f mm, drawn %.0f mm (%.1f %%)", name, what, v[0], v[1], 100*(v[0]/v[1]-1))
			}
		}
		t.Logf("%s: firm %.2f, lever %.1f, %v", name, boat.Case.run.Number("firm"), boat.Standing.Most, boat.Failures())
	}
}
