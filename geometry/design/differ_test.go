package design

import (
	"reflect"
	"testing"
)

// TestDiffer names each key that differs, with both values, and no other.
func TestDiffer(t *testing.T) {
	old := mustDecode(t, text(t, "river"))
	new := old.Copy()
	if got := Differ(old, new); got != nil {
		t.Fatalf("a design differs from its copy in %v", got)
	}
	new.Edition, new.Changed = "2", "wider"
	new.Hull.Beam += 20
	new.Hull.Sections[1].Flare = 0.1
	new.Seats = nil
	new.Gunwale.Scarfs = append(new.Gunwale.Scarfs, 100)
	new.Keel.Species = "white oak"
	var keys []string
	for _, d := range Differ(old, new) {
		keys = append(keys, d.Key)
		if d.Old == d.New || d.Old == "" || d.New == "" {
			t.Errorf("%s: %q and %q", d.Key, d.Old, d.New)
		}
	}
	want := []string{"hull.beam", "hull.section.1.flare", "gunwale.scarfs", "keel.species", "seat"}
	if !reflect.DeepEqual(keys, want) {
		t.Errorf("differ in %v, want %v", keys, want)
	}
}

// TestCopy: what is done to a copy leaves the design as it is.
func TestCopy(t *testing.T) {
	d, same := mustDecode(t, text(t, "river")), mustDecode(t, text(t, "river"))
	c := d.Copy()
	if !reflect.DeepEqual(c, d) {
		t.Fatal("the copy differs")
	}
	c.Hull.Sections[0].Flare++
	c.Stringers.At[0] = 0
	c.Thwarts[0].Name = "x"
	if c.Stern != nil {
		c.Stern.Rake++
	}
	if !reflect.DeepEqual(d, same) {
		t.Error("the design changed with its copy")
	}
}

// TestToward goes the whole way, none of it, and half of it in whole steps.
func TestToward(t *testing.T) {
	old := mustDecode(t, text(t, "brook"))
	new := old.Copy()
	new.Hull.Beam += 21
	new.Keel.Species = "white oak"
	all := map[string]float64{"hull.beam": 1, "keel.species": 1}
	if got := Toward(old, new, all); !reflect.DeepEqual(got, new) {
		t.Errorf("the whole way leaves %v", Differ(got, new))
	}
	if got := Toward(old, new, nil); !reflect.DeepEqual(got, old) {
		t.Errorf("no way leaves %v", Differ(got, old))
	}
	half := Toward(old, new, map[string]float64{"hull.beam": 0.5, "keel.species": 0.5})
	if half.Hull.Beam != 731 || half.Keel.Species != old.Keel.Species {
		t.Errorf("half the way is a beam of %v in %s", half.Hull.Beam, half.Keel.Species)
	}
	if a, b := Steps(old, new, "hull.beam"), Steps(old, new, "keel.species"); a != 21 || b != 1 {
		t.Errorf("%d and %d steps, want 21 and 1", a, b)
	}
}

// TestNext counts editions on.
func TestNext(t *testing.T) {
	for _, c := range [][2]string{{"", "2"}, {"1", "2"}, {"9", "10"}, {"spring 2027", "spring 2027, 2"}, {"spring 2027, 2", "spring 2027, 3"}, {"b", "b, 2"}, {"-4", "-4, 2"}} {
		d := Defaults()
		d.Next(&Design{Edition: c[0]}, "wider")
		if d.Edition != c[1] || d.Changed != "wider" {
			t.Errorf("after %q comes %q (%s), want %q", c[0], d.Edition, d.Changed, c[1])
		}
	}
}
