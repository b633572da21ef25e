package altered

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// TestFlareBand: a frame with ribs that lean as far as the band of the flare allows has
// its mortises, to the tenth of a degree, and one half a degree beyond is refused for the
// wood beside them; mortises cut and by gap, and leaning in and out.
func TestFlareBand(t *testing.T) {
	for _, way := range []design.MortiseWay{design.CutMortises, design.ByGap} {
		for _, name := range design.ShippedNames() {
			d := leaning(t, name, way)
			b, ok := Flare.Band(d)
			if !ok || !(b.Least < b.Now && b.Now < b.Most) {
				t.Fatalf("%s: the band is %+v", name, b)
			}
			for _, v := range []float64{b.Least, b.Most} {
				got, err := Of(d, Change{Flare, v})
				if err != nil {
					t.Fatal(err)
				}
				if _, err := frame.Build(got); err != nil && aboutHeads(err) {
					t.Errorf("%s, flare of %g deg, in its band: %v", name, v, err)
				}
				got.Hull.Sections[middle(got)].Flare += measure.Angle(math.Copysign(0.5, v-b.Now) * degree)
				if _, err := frame.Build(got); err == nil || !aboutHeads(err) {
					t.Errorf("%s, half a degree beyond a flare of %g deg: %v", name, v, err)
				}
			}
		}
	}
}

func aboutHeads(err error) bool {
	return strings.Contains(err.Error(), "mortise of rib") || strings.Contains(err.Error(), "head of rib")
}

// leaning is a shipped boat without seats, and its mortises so made.
func leaning(t *testing.T, name string, way design.MortiseWay) *design.Design {
	t.Helper()
	d := shipped(t, name)
	d.Seats, d.Crew = nil, nil
	if d.Gunwale.Mortises = way; way == design.ByGap {
		d.Gunwale.Width = measure.Length(d.Gunwale.Plies) * (d.Ribs.Thickness + d.Ribs.FitThickness)
	}
	if p := d.Check(); p != nil {
		t.Fatal(p)
	}
	return d
}

// TestFullestGunwales: with no moment amidships, a beam on midship, spreader and stem has
// the drop of three moments: worked by hand for a spreader half-way to the stem, 5/6 of
// the drop from there on is 1/6 of it all. The shipped boats can be built at both ends of
// the band, and 3 % of the beam beyond the upper one they run hollow.
func TestFullestGunwales(t *testing.T) {
	d := shipped(t, "brook")
	d.Hull.Length, d.Hull.Beam, d.Bow.Horn, d.Bow.Siding = 4000, 800, 0, 0
	if got := flat(d, design.Spreader{At: 1000}); math.Abs(got-5.0/6) > 1e-12 {
		t.Errorf("half-way to the stem the gunwales are %.6f of the beam, want 5/6", got)
	}
	for _, name := range design.ShippedNames() {
		d := shipped(t, name)
		b, _ := Fullness.Band(d)
		for _, v := range []float64{b.Least, b.Most} {
			got, err := Of(d, Change{Fullness, v})
			if err != nil {
				t.Fatal(err)
			}
			if _, err := frame.Build(got); err != nil {
				t.Errorf("%s, fullness of %g %%: %v", name, v, err)
			}
		}
		got, _ := Of(d, Change{Fullness, b.Most})
		for i := range got.Hull.Spreaders {
			got.Hull.Spreaders[i].Beam += got.Hull.Beam * 3 / 100
		}
		if _, err := frame.Build(got); err == nil || !strings.Contains(err.Error(), "hollow") {
			t.Errorf("%s, 3 %% fuller than the band: %v", name, err)
		}
	}
}

// TestFormKept: a change of flare leaves the ends' sections, one of fullness scales every
// spreader, and a wider boat is as full as it was.
func TestFormKept(t *testing.T) {
	d := shipped(t, "river")
	got, err := Of(d, Change{Beam, float64(d.Hull.Beam) * 1.1}, Change{Flare, 3}, Change{Fullness, 79})
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range got.Hull.Sections {
		want := d.Hull.Sections[i].Flare
		if s.At == 0 {
			want = 3 * degree
		}
		if s.Flare != want {
			t.Errorf("the section at %v flares %v, want %v", s.At, s.Flare, want)
		}
	}
	was, is := d.Hull.Spreaders, got.Hull.Spreaders
	if share := float64(is[0].Beam / got.Hull.Beam); math.Abs(share-0.79) > 0.001 {
		t.Errorf("the first spreader is %.4f of the beam, want 0.79", share)
	}
	if a, b := float64(is[1].Beam/is[0].Beam), float64(was[1].Beam/was[0].Beam); math.Abs(a-b) > 0.002 {
		t.Errorf("the second spreader is %.4f of the first, was %.4f", a, b)
	}
	before, _ := Fullness.Band(d)
	wide, _ := Of(d, Change{Beam, float64(d.Hull.Beam) * 1.1})
	if after, _ := Fullness.Band(wide); math.Abs(after.Now-before.Now) > 0.1 {
		t.Errorf("wider, it is %g %% full, was %g", after.Now, before.Now)
	}
	d.Hull.Sections, d.Hull.Spreaders = nil, nil
	for _, m := range []Measure{Flare, Fullness} {
		if _, ok := m.Band(d); ok {
			t.Errorf("a boat without sections and spreaders has %v", m)
		}
	}
}
