package weight_test

import (
	"math"
	"ribwright/geometry/boat/joint"
	"ribwright/geometry/curve"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
	"ribwright/geometry/water/float"
)

func built(t *testing.T, name string, change func(*design.Design)) (*frame.Frame, []weight.Item) {
	t.Helper()
	f := frametest.Shipped(t, name, change)
	c, err := skin.Of(f)
	if err != nil {
		t.Fatal(err)
	}
	items, err := weight.Boat(f, c)
	if err != nil {
		t.Fatal(err)
	}
	return f, items
}

// massOf returns the mass of the items whose name begins so, kg.
func massOf(t *testing.T, items []weight.Item, begins string) float64 {
	t.Helper()
	sum, found := 0.0, false
	for _, i := range items {
		if strings.HasPrefix(i.Name, begins) {
			sum, found = sum+i.Load().Mass, true
		}
	}
	if !found {
		t.Fatalf("nothing is called %s", begins)
	}
	return sum
}

// TestWeighsItsCutList: what stays of the sticks of the cut list, by their volume and
// the density of their wood, is what the list of weights has, part by part. The
// lists are worked out apart.
func TestWeighsItsCutList(t *testing.T) {
	names := map[cutlist.Family]string{cutlist.Gunwale: "Gunwales", cutlist.Rib: "Ribs", cutlist.Keel: "Keel", cutlist.Stringer: "Stringers",
		cutlist.Stem: "Stems", cutlist.Breasthook: "Stems", cutlist.Thwart: "Cross pieces"}
	for _, name := range design.ShippedNames() {
		f, items := built(t, name, nil)
		want := map[string]float64{}
		for _, s := range cutlist.Heat(nil).Sticks(f) {
			wood, err := f.Design.Wood(s.Species)
			if err != nil {
				t.Fatal(err)
			}
			want[names[s.Family]] += s.Net * wood.Density * 1e-9
		}
		// Stems of plywood are no sticks: Douglas-fir, gravity 0.48 (FPL-GTR-282 table 5-3b).
		for _, s := range []frame.Stem{f.Bow, f.Stern} {
			want["Stems"] += math.Abs(curve.Area(s.Outline.Flatten(0.01))) * s.Thickness * 480 * 1.12 * 1e-9
		}
		for part, kg := range want {
			if got := massOf(t, items, part); math.Abs(got/kg-1) > 3e-3 {
				t.Errorf("%s: %s weigh %.4f kg, the cut list's %.4f", name, part, got, kg)
			}
		}
	}
}

// TestClothBetweenBareAndBought: the cloth on a boat is more than its bare outside,
// for hems and the turn over the gunwales, and less than the sheet that is bought.
func TestClothBetweenBareAndBought(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f, items := built(t, name, nil)
		c, err := skin.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		const under = 1e6 // mm of water
		j, err := joint.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		n := materials.Count(j, c, cutlist.Heat(nil).Make(f))
		bare := c.Hull.Wetted(float.Level(under)) * f.Design.Skin.Mass() * 1e-9
		sheet := n.Cloth.Bought() * f.Design.Skin.Mass() * 1e-9
		if got := massOf(t, items, "Cloth"); got <= bare || got >= sheet {
			t.Errorf("%s: cloth of %.2f kg; bare outside %.2f, sheet %.2f", name, got, bare, sheet)
		}
	}
}

// TestTwiceAsHeavy: a cloth twice as heavy weighs twice as much and nothing else
// changes; so does a stem of twice the thickness, and what binds the wood grows
// with the wood.
func TestTwiceAsHeavy(t *testing.T) {
	_, light := built(t, "brook", nil)
	_, heavy := built(t, "brook", func(d *design.Design) {
		d.Skin.Thick = d.Skin.Thickness() // the boat stays as large
		d.Skin.Cloth, d.Skin.Coats = 2*d.Skin.Mass(), 0
	})
	for i, a := range light {
		times := 1.0
		if strings.HasPrefix(a.Name, "Cloth") {
			times = 2
		}
		if got := heavy[i].Load().Mass / a.Load().Mass; math.Abs(got-times) > 1e-9 {
			t.Errorf("%s: %.4f times as heavy, want %g", a.Name, got, times)
		}
	}
	_, oak := built(t, "brook", func(d *design.Design) {
		for _, s := range []string{"western redcedar", "white ash", "Douglas-fir"} {
			w, err := d.Wood(s)
			if err != nil {
				t.Fatal(err)
			}
			d.Woods = append(d.Woods, design.Wood{Name: s, Density: 2 * w.Density})
		}
	})
	for i, a := range light {
		times := 2.0
		if strings.HasPrefix(a.Name, "Cloth") {
			times = 1
		}
		if got := oak[i].Load().Mass / a.Load().Mass; math.Abs(got-times) > 1e-9 {
			t.Errorf("twice as dense: %s: %.4f times as heavy, want %g", a.Name, got, times)
		}
	}
}

// TestEndsAlike: in a boat whose ends are alike every part weighs alike forward and
// aft of midship, cross pieces aside, and lies inside the boat.
func TestEndsAlike(t *testing.T) {
	f, items := built(t, "brook", nil)
	if !f.Design.Hull.Symmetric {
		t.Fatal("brook's ends are not alike: this shows nothing")
	}
	top := math.Max(f.Hull.Bow.TopZ, f.Hull.Stern.TopZ) + f.Gunwale.Height
	for _, i := range items {
		if strings.HasPrefix(i.Name, "Cross pieces") || strings.HasPrefix(i.Name, "Cord") { // the cord lies where the wood does
			continue
		}
		l := i.Load()
		if math.Abs(l.At.X) > 0.5 {
			t.Errorf("%s lie %.1f mm off midship", i.Name, l.At.X)
		}
		if l.At.Z <= 0 || l.At.Z >= top {
			t.Errorf("%s lie %.0f mm up in a boat of %.0f mm", i.Name, l.At.Z, top)
		}
		ahead, astern := 0.0, 0.0
		for _, p := range i.Loads {
			if p.At.X > 0 {
				ahead += p.Mass * p.At.X
			} else {
				astern -= p.Mass * p.At.X
			}
		}
		if math.Abs(ahead-astern) > 1e-3*ahead {
			t.Errorf("%s: moment ahead %.1f, astern %.1f kg mm", i.Name, ahead, astern)
		}
	}
}

// TestStemsInTheEnds: stems and breasthooks stand at their own ends, near the tips.
func TestStemsInTheEnds(t *testing.T) {
	f, items := built(t, "lake", nil)
	for _, i := range items {
		if !strings.HasPrefix(i.Name, "Stems") {
			continue
		}
		var ahead, astern int
		for _, p := range i.Loads {
			if math.Abs(p.At.X) < f.Hull.Length/4 {
				t.Errorf("an end piece lies %.0f mm from midship", p.At.X)
			}
			if p.At.X > 0 {
				ahead++
			} else {
				astern++
			}
		}
		if ahead != 2 || astern != 2 {
			t.Errorf("%d pieces ahead and %d astern, want a stem and a breasthook each", ahead, astern)
		}
	}
}
