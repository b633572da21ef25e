package design

import (
	"reflect"
	"strings"
	"testing"

	"ribwright/geometry/measure"
)

func TestAllSpreaders(t *testing.T) {
	for _, c := range []struct {
		name      string
		symmetric bool
		given     []Spreader
		want      []Spreader
	}{
		{"midship alone", true, nil, []Spreader{{At: 0, Beam: 800}}},
		{"mirrored", true, []Spreader{{At: 900, Beam: 500}}, []Spreader{{At: -900, Beam: 500}, {At: 0, Beam: 800}, {At: 900, Beam: 500}}},
		{"out of order", true, []Spreader{{At: 900, Beam: 500}, {At: 300, Beam: 700}}, []Spreader{{At: -900, Beam: 500}, {At: -300, Beam: 700}, {At: 0, Beam: 800}, {At: 300, Beam: 700}, {At: 900, Beam: 500}}},
		{"as given", false, []Spreader{{At: 900, Beam: 500}, {At: -700, Beam: 600}}, []Spreader{{At: -700, Beam: 600}, {At: 0, Beam: 800}, {At: 900, Beam: 500}}},
	} {
		d := &Design{Hull: Hull{Beam: 800, Symmetric: c.symmetric, Spreaders: c.given}}
		before := append([]Spreader(nil), c.given...)
		if got := d.AllSpreaders(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
		if !reflect.DeepEqual(d.Hull.Spreaders, before) {
			t.Errorf("%s: the design itself was changed to %v", c.name, d.Hull.Spreaders)
		}
	}
}

func TestAllSections(t *testing.T) {
	at := func(x, r measure.Length) Section { return Section{At: x, BilgeRadius: r} }
	for _, c := range []struct {
		name      string
		symmetric bool
		given     []Section
		want      []Section
	}{
		{"midship is not mirrored", true, []Section{at(0, 1)}, []Section{at(0, 1)}},
		{"mirrored", true, []Section{at(0, 1), at(900, 2)}, []Section{at(-900, 2), at(0, 1), at(900, 2)}},
		{"out of order", false, []Section{at(900, 2), at(-400, 3), at(0, 1)}, []Section{at(-400, 3), at(0, 1), at(900, 2)}},
	} {
		d := &Design{Hull: Hull{Symmetric: c.symmetric, Sections: c.given}}
		before := append([]Section(nil), c.given...)
		if got := d.AllSections(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
		if !reflect.DeepEqual(d.Hull.Sections, before) {
			t.Errorf("%s: the design itself was changed to %v", c.name, d.Hull.Sections)
		}
	}
}

// TestMirror checks which values of the after half follow the bow.
func TestMirror(t *testing.T) {
	d := mustDecode(t, text(t, "brook"))
	for _, c := range []struct {
		name      string
		got, want measure.Length
	}{
		{"rocker", d.Hull.RockerStern, 25}, {"edge-set", d.Gunwale.EdgeSetAft, 30}, {"last rib", d.Ribs.FromStern, 330},
	} {
		if c.got != c.want {
			t.Errorf("%s at the stern is %v, want the bow's %v", c.name, c.got, c.want)
		}
	}
	// In any design a value that is left out follows the bow, one of zero stays.
	loose := &Design{Hull: Hull{RockerBow: 25}, Gunwale: Gunwale{EdgeSetBow: 40}}
	loose.settle(func(key string) bool { return key == "gunwale.edge_set_stern" })
	if loose.Hull.RockerStern != 25 || loose.Gunwale.EdgeSetAft != 0 {
		t.Errorf("rocker %v and edge-set %v at the stern, want the bow's 25 mm and the given 0 mm", loose.Hull.RockerStern, loose.Gunwale.EdgeSetAft)
	}
}

func TestKind(t *testing.T) {
	for _, k := range []Kind{PlainThwart, Yoke} {
		text, err := k.MarshalText()
		var back Kind = -1
		if err != nil || back.UnmarshalText(text) != nil || back != k {
			t.Errorf("%v is written %q (%v) and read back as %v", k, text, err, back)
		}
	}
	// A file from before seats were parts is told in one line what to write instead.
	if err := new(Kind).UnmarshalText([]byte("seat bar")); err == nil || !strings.Contains(err.Error(), "[[seat]]") || strings.Contains(err.Error(), "\n") {
		t.Errorf("a seat bar: %v", err)
	}
	k := Yoke
	if err := k.UnmarshalText([]byte("Thwart")); err == nil || k != Yoke {
		t.Errorf("a kind in capitals gives %v, %v, want an error and no change", k, err)
	}
}
