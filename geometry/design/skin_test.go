package design

import (
	"math"
	"strings"
	"testing"
)

// skinned is River with other lines in its [skin].
func skinned(t *testing.T, lines string) (*Design, error) {
	t.Helper()
	return decode(swap(t, text(t, "river"), "fiber = \"nylon\"\ncloth = 407\ncoats = 3", lines))
}

// TestSkinOfMass: an older design that gives the mass of the finished skin and no cloth
// has just that mass still, and its thickness, whatever the mass is.
func TestSkinOfMass(t *testing.T) {
	for _, c := range []struct {
		lines       string
		mass, thick float64
		coats       int
	}{
		{"mass = 700\nthickness = \"0.8 mm\"", 700, 0.8, 3},
		{"mass = 550", 550, 0.6, 3},
		{"mass = 550\nfiber = \"nylon\"\ncoats = 4", 550, 0.6, 4},
		{"mass = 150", 150, 0.6, 2}, // no cloth of 40 g/m2 is left under three coats
		{"mass = 30", 30, 0.6, 0},
		{"mass = 0", 0, 0.6, 0},
		{"mass = 5000", 5000, 0.6, 3},
	} {
		d, err := skinned(t, c.lines)
		if err != nil {
			t.Errorf("%s: %v", c.lines, err)
			continue
		}
		s := d.Skin
		if math.Abs(s.Mass()-c.mass) > 1e-9 || float64(s.Thickness()) != c.thick || s.Coats != c.coats || s.Weighed != 0 {
			t.Errorf("%s: %g g/m2, %g mm, %d coats: %+v", c.lines, s.Mass(), s.Thickness(), s.Coats, s)
		}
	}
}

// TestClothInOunces: ounces a square yard are no grams a square meter; 8 of them are the 271
// that the shipped boats have.
func TestClothInOunces(t *testing.T) {
	for text, says := range map[string]string{"cloth = 8": "a cloth of 8 oz/yd2 has 271", "cloth = 12": "12 oz/yd2 has 407", "cloth = 29.9": "accepted: 0, or 30 to 3000 g/m2", "cloth = 0": "", "cloth = 30": ""} {
		_, err := skinned(t, text)
		if says == "" && err != nil || says != "" && (err == nil || !strings.Contains(err.Error(), "skin.cloth: ") || !strings.Contains(err.Error(), says)) {
			t.Errorf("%s: %v, want %q", text, err, says)
		}
	}
}

// TestSkinContradicts: mass beside cloth is taken when it is what they make, and refused
// in one line when it is not.
func TestSkinContradicts(t *testing.T) {
	river, err := Shipped("river")
	if err != nil {
		t.Fatal(err)
	}
	d, err := skinned(t, "fiber = \"nylon\"\ncloth = 407\nmass = "+short(math.Round(river.Skin.Mass())))
	if err != nil || d.Skin != river.Skin {
		t.Errorf("%+v, %v", d, err)
	}
	for _, lines := range []string{"cloth = 407\nmass = 500", "coats = 6\nmass = 200", "cloth = 271\nmass = 1"} {
		if _, err := skinned(t, lines); err == nil || !strings.Contains(err.Error(), "skin.mass: ") || !strings.Contains(err.Error(), "leave mass out") || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v", lines, err)
		}
	}
}

// TestSkinUsual: a design that says nothing of its skin has 8 oz polyester under three
// coats, near the 600 g/m2 and 0.6 mm that such designs had before; 1 oz/yd2 is 33.906
// g/m2.
func TestSkinUsual(t *testing.T) {
	d, err := skinned(t, "tension = 0.3")
	if err != nil {
		t.Fatal(err)
	}
	s := d.Skin
	if math.Abs(s.Cloth/33.906-8) > 0.01 || math.Abs(s.Mass()-600) > 10 || math.Abs(float64(s.Thickness())-0.6) > 0.06 {
		t.Errorf("%+v: %g g/m2, %g mm", s, s.Mass(), s.Thickness())
	}
	s.Thick = 0.9
	if s.Thickness() != 0.9 {
		t.Error("a thickness that was measured is not taken")
	}
}

// TestOutsideWithin: a low gunwale or a narrow keel of a design that says nothing of what
// is outside gets strips that fit; one that asks for too much is refused.
func TestOutsideWithin(t *testing.T) {
	river := text(t, "river")
	from := strings.Index(river, "[outside]")
	to := from + strings.Index(river[from:], "[[")
	old := river[:from] + river[to:]
	narrow := swap(t, old, "[keel]\nspecies = \"douglas-fir\"\nwidth = \"45 mm\"", "[keel]\nspecies = \"douglas-fir\"\nwidth = \"18 mm\"")
	d, err := decode(narrow)
	if err != nil || d.Outside.KeelStripWidth != 18 || d.Outside.OutwaleHeight != 20 {
		t.Errorf("%+v, %v", d, err)
	}
	if _, err := decode(narrow[:from] + "[outside]\nkeel_strip_width = \"20 mm\"\n" + narrow[from:]); err == nil || !strings.Contains(err.Error(), "outside.keel_strip_width: 20 mm is more than the keel's width, 18 mm") {
		t.Error(err)
	}
	if _, err := decode(swap(t, river, "keel_strip_width = \"25 mm\"", "species = \"tin\"")); err == nil || !strings.Contains(err.Error(), "outside.species") {
		t.Error(err)
	}
}
