package design

import (
	"strings"
	"testing"

	"ribwright/geometry/finding"
	"ribwright/geometry/wood/timber"
)

// TestWood gives a known wood other values and adds a new one.
func TestWood(t *testing.T) {
	d := mustDecode(t, text(t, "brook")+`
[[wood]]
name = "White Ash"
stiff = 11000
strength_standing = "measured"

[[wood]]
name = "sallow from the brook"
density = 550
stiff = 8000
strong = 70
strap_ratio = 3
free_ratio = 15
bending_standing = "common practice"
`)
	known, err := timber.Lookup("white ash")
	if err != nil {
		t.Fatal(err)
	}
	ash, err := d.Wood("white ash")
	if err != nil {
		t.Fatal(err)
	}
	want := known
	want.MOE, want.Strength = 11000, finding.Measured
	if ash != want {
		t.Errorf("got %+v, want %+v", ash, want)
	}
	sallow, err := d.Wood("Sallow from the brook")
	if err != nil || sallow.MOE != 8000 || sallow.Strength != finding.Measured || sallow.Bending != finding.Common || sallow.Tangential != 0 {
		t.Errorf("got %+v, %v", sallow, err)
	}
	oak, err := d.Wood("white oak")
	if plain, _ := timber.Lookup("white oak"); err != nil || oak != plain {
		t.Errorf("a wood not mentioned: %+v, %v", oak, err)
	}
	if _, err := d.Wood("wite oak"); err == nil || !strings.Contains(err.Error(), "white oak") {
		t.Errorf("got %v", err)
	}
	// A second name of a known wood brings the builder's values too.
	d.Woods = []Wood{{Name: "yellow cedar", Stiff: 9000}}
	if s, err := d.Wood("Alaska cedar"); err != nil || s.MOE != 9000 {
		t.Errorf("a second name: %+v, %v", s, err)
	}
}

// TestFaultBending has values of woods and bends that cannot be.
func TestFaultBending(t *testing.T) {
	brook := text(t, "brook")
	for _, c := range []struct{ more, want string }{
		{"[[wood]]\nstiff = 9000", "wood.name: is missing"},
		{"[[wood]]\nname = \"elder\"", `wood.density: is missing, or 0, and "elder" is no known wood; accepted: 100 to 1400`},
		{"[[wood]]\nname = \"white ash\"\nstiff = 9", "wood.stiff: 9 is out of range; accepted: 1000 to 30000"},
		{"[[wood]]\nname = \"white ash\"\nstiff = nan", "wood.stiff: NaN is out of range"},
		{"[[wood]]\nname = \"white ash\"\nfree_ratio = 2", "wood.free_ratio: 2 is less than the ratio with a strap, 4.4"},
		{"[[wood]]\nname = \"white ash\"\nstrength_standing = \"sure\"", `wood.strength_standing: "sure" is no standing; accepted: handbook`},
		{"[[wood]]\nname = \"white ash\"\n[[wood]]\nname = \"White-Ash\"", "is given twice"},
		{"[bending]\nmoisture = 80", "bending.moisture: 80 % is out of range; accepted: 8 to 40"},
		{"[bending]\nspringback = 0.5", "bending.springback: 0.5 is out of range; accepted: 0 to 0.4"},
		{"[bending]\nspringback = nan", "bending.springback: NaN is out of range"},
		{"[bending]\nglue_creep = 2", "bending.glue_creep: 2 is out of range"},
		{"[bending]\nstem_plies = 1", "bending.stem_plies: 1 is out of range; accepted: 2 to 40, or 0 for stems that are cut"},
		{"[bending]\nstem_plies = 8", "bending.stem_species: is missing"},
		{"[bending]\nstrap = \"yes\"", "bending.strap: takes true or false"},
	} {
		got := faultOf(t, brook+"\n"+c.more+"\n").Error()
		if !strings.Contains(got, c.want) {
			t.Errorf("%q:\n got %s\nwant %s", c.more, got, c.want)
		}
	}
	for _, c := range []struct{ old, with, want string }{
		{`glued = "bent"`, `glued = "hot"`, `gunwale.glued: "hot" is no way of gluing; accepted: straight, bent, form`},
		{"plies = 3", "plies = 1", `gunwale.glued: "bent" needs at least 2 plies`},
	} {
		if got := faultOf(t, swap(t, brook, c.old, c.with)).Error(); !strings.Contains(got, c.want) {
			t.Errorf("got %s\nwant %s", got, c.want)
		}
	}
	// Left out, the plies are glued straight, as one stick.
	if d := mustDecode(t, swap(t, brook, "glued = \"bent\"\n", "")); d.Gunwale.Glued != GluedStraight {
		t.Errorf("left out, glued is %q", d.Gunwale.Glued)
	}
}
