package afloat

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/outfit"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
)

// tried floats the lake design with outfit tables added to its file.
func tried(t *testing.T, o *design.Outfit) *Report {
	t.Helper()
	f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Outfit = o })
	b, fit := fittedOut(t, f)
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Run(b, Options{Water: w, Freeboard: 150, Speeds: []float64{1}, Outfits: fit})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// fittedOut is the boat of a frame with the outfits of its design.
func fittedOut(t *testing.T, f *frame.Frame) (aboard.Boat, *outfit.Outfits) {
	t.Helper()
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	s, err := outfit.NewShip(f, f.Design.Gear, w)
	if err != nil {
		t.Fatal(err)
	}
	o := outfit.Of(s)
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err == nil {
		b, err = o.PutAboard(b)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b, o
}

// TestFitted: outfits aboard weigh what their own lists say, where they lie: the boat
// floats at the sum of all masses about the center that sums of moments give, and
// sinks by the mass over the waterplane.
func TestFitted(t *testing.T) {
	plain := tried(t, nil)
	d, _ := design.Shipped("lake")
	s, p, r := d.Sail(), d.Pair(), d.Row()
	p.Purpose = design.OpenWater
	for _, c := range []struct {
		name   string
		outfit design.Outfit
		items  int
		about  string
	}{
		{"sail", design.Outfit{Sail: &s}, 3, "windage"},
		{"pair", design.Outfit{Pair: &p}, 1, "outfit"},
		{"row", design.Outfit{Row: &r}, 3, "outfit"},
		{"all", design.Outfit{Sail: &s, Pair: &p, Row: &r}, 7, "windage"},
	} {
		got := tried(t, &c.outfit)
		if len(got.Boat.Outfits) != c.items || c.name != "all" && len(got.Boat.Notes) != 0 {
			t.Errorf("%s: %d items, notes %q", c.name, len(got.Boat.Outfits), got.Boat.Notes)
		}
		add := weight.Sum(got.Boat.Outfits)
		if !(add.Mass > 1 && add.Mass < 40) {
			t.Errorf("%s weighs %.1f kg", c.name, add.Mass)
		}
		want := float.Total(plain.Load, add)
		if math.Abs(got.Load.Mass-want.Mass) > 1e-9 || got.Load.At.Sub(want.At).Norm() > 1e-6 {
			t.Errorf("%s: %+v all up, want %+v", c.name, got.Load, want)
		}
		if len(got.Entries()) != len(plain.Entries())+c.items {
			t.Errorf("%s: %d entries, want %d", c.name, len(got.Entries()), len(plain.Entries())+c.items)
		}
		// Parallel sinkage: mass over density and the mean waterplane. Trim moves the
		// deepest point a little.
		sunk := add.Mass / 999.1 * 1e9 / ((plain.Rest.Waterplane + got.Rest.Waterplane) / 2)
		if off := got.Rest.Volume - plain.Rest.Volume - add.Mass/999.1026*1e9; math.Abs(off) > 1e3 {
			t.Errorf("%s: the volume rises by %.0f mm3 too much", c.name, off)
		}
		if down := plain.Rest.Freeboard.Least - got.Rest.Freeboard.Least; math.Abs(down-sunk) > 4 {
			t.Errorf("%s: the gunwale sinks %.1f mm, want about %.1f", c.name, down, sunk)
		}
		found := false
		for _, f := range got.Findings {
			found = found || f.About == c.about
		}
		if !found {
			t.Errorf("%s: no finding about %s", c.name, c.about)
		}
	}
}

// TestTooMuch: an outfit under which the boat does not stay upright is named and not
// weighed.
func TestTooMuch(t *testing.T) {
	f := frametest.Shipped(t, "brook", func(d *design.Design) {
		s := d.Sail()
		s.Area = 8
		d.Outfit = &design.Outfit{Sail: &s}
		d.Gear = []design.Gear{{Name: "Statue", Mass: 70, Height: 1000}} // a metre up
	})
	b, _ := fittedOut(t, f)
	if len(b.Outfits) > 0 || len(b.Notes) != 1 || !strings.Contains(b.Notes[0], "the sail is not counted: ") || !strings.Contains(b.Notes[0], "capsizes") {
		t.Errorf("%d items, notes %q", len(b.Outfits), b.Notes)
	}
}
