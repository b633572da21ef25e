package timber

import (
	"math"
	"testing"

	"ribwright/geometry/finding"
)

func wood(t *testing.T, name string) Species {
	t.Helper()
	s, err := Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestBands looks at both sides of every edge. The limits are a remembered
// printed bending table for 25 mm stock (white ash 110 and 330 mm, white oak 13
// and 330, red oak 25 and 290, western redcedar 890 and 940, Sitka spruce 900 and
// 900), 20 from a professional bender's craft book, and MOE over MOR from the
// Wood Handbook.
func TestBands(t *testing.T) {
	for _, c := range []struct {
		name  string
		at    float64 // edge, inner radius over thickness
		below Band
		above Band
	}{
		{"white ash", 4.4, TooTight, Strap},
		{"white ash", 13, Strap, Picked}, // 330 / 25 = 13.2, kept as 13
		{"white ash", 20, Picked, Steamed},
		{"white ash", 12000.0 / 103, Steamed, SprungDry},
		{"white oak", 0.5, TooTight, Strap},
		{"white oak", 13, Strap, Picked},
		{"white oak", 12300.0 / 105, Steamed, SprungDry},
		{"red oak", 11.5, Strap, Picked},
		// Where the free limit lies over 20 no bend is merely careful.
		{"western redcedar", 35, TooTight, Strap},
		{"western redcedar", 38, Strap, Steamed},
		{"western redcedar", 7700.0 / 52, Steamed, SprungDry},
		// And where both limits are one, no strap helps.
		{"Sitka spruce", 36, TooTight, Steamed},
	} {
		s := wood(t, c.name)
		if got := s.Band(c.at * (1 - 1e-9)); got != c.below {
			t.Errorf("%s just under %.4g: band %d, want %d", c.name, c.at, got, c.below)
		}
		if got := s.Band(c.at * (1 + 1e-9)); got != c.above {
			t.Errorf("%s just over %.4g: band %d, want %d", c.name, c.at, got, c.above)
		}
	}
	if s := wood(t, "white ash"); s.Band(math.NaN()) != TooTight || s.Band(math.Inf(1)) != SprungDry {
		t.Error("NaN must be too tight and straight must be dry")
	}
}

// TestStrains: 0.02 outside at a ratio of 12 shortens the inside by 0.0584615, a
// strap at 2.33333 by 0.30 (arithmetic on the two faces' lengths); a slight bend
// is t/(2 Ri + t) on both.
func TestStrains(t *testing.T) {
	outer, inner := Strains(12, false)
	near(t, outer, 0.02, 0, "outer")
	near(t, inner, 0.0584615, 5e-8, "inner")
	outer, inner = Strains(7.0/3, true)
	near(t, outer, 0, 0, "outer, strap")
	near(t, inner, 0.30, 1e-12, "inner, strap")
	outer, inner = Strains(100, false)
	near(t, outer, 6/(2*600.0+6), 1e-15, "outer, slight")
	near(t, inner, outer, 0, "inner, slight")
	// At the change-over both laws give 0.02: ratio 24.5.
	outer, inner = Strains(24.5, false)
	near(t, outer, 0.02, 1e-15, "outer, change-over")
	near(t, inner, 0.02, 1e-15, "inner, change-over")
	_, past := Strains(24.5*(1-1e-9), false)
	near(t, past, 0.02, 1e-9, "inner, just past it")
}

// TestFormRadius: 10 % of springback wants a radius 10 % tighter.
func TestFormRadius(t *testing.T) {
	near(t, FormRadius(100, 0.1), 90, 1e-12, "mm")
	near(t, FormRadius(100, 0), 100, 0, "mm")
	// On a form of R the wood ends at R / (1 - s), as a lamination does.
	lost, err := Springback([]float64{3, 3})
	if err != nil {
		t.Fatal(err)
	}
	near(t, FormRadius(1000, 0.25)/(1-lost), 1000, 1e-9, "mm, two plies")
}

// TestSteamTime: 8 mm at one hour for 25 mm is 19.2 minutes; drier stock takes 30
// minutes for 10 mm (from memory of the Wood Handbook).
func TestSteamTime(t *testing.T) {
	near(t, SteamTime(8, 25, false), 19.2, 1e-12, "min")
	near(t, SteamTime(8, 20, false), 19.2, 1e-12, "min")
	near(t, SteamTime(8, 19.9, false), 24, 1e-12, "min")
	near(t, SteamTime(8, 23, true), 24, 1e-12, "min, kiln-dried")
	for _, c := range []struct {
		band Band
		want float64
	}{{Steamed, 16}, {Picked, 23}, {Strap, 23}, {SprungDry, 0}} {
		near(t, LeastMoisture(c.band), c.want, 0, "%")
	}
}

// TestShrink: flat-sawn ash 8 mm thick going from 20 to 12 % moves 8 x 0.00274 x
// 8 = 0.18 mm (Wood Handbook Table 13-5, as copied).
func TestShrink(t *testing.T) {
	ash := wood(t, "white ash")
	near(t, Shrink(8, ash.Tangential, 20, 12), 0.17536, 1e-9, "mm")
	near(t, Shrink(8, ash.Tangential, 12, 20), -0.17536, 1e-9, "mm, taking up")
	for _, s := range All() {
		if s.Tangential != 0 && !(s.Tangential > s.Radial && s.Radial > 0 && s.Movement == finding.Common) {
			t.Errorf("%s moves %g along and %g across its rings (%s)", s.Name, s.Tangential, s.Radial, s.Movement)
		}
	}
}

// TestSlot: into a slot of 25 x 6 mm with half-round ends a sharp tenon 6 mm thick
// goes at 19 mm, one of 4.2 mm at 23.3 mm. Geometry.
func TestSlot(t *testing.T) {
	near(t, SquareTenon(25, 6, 6), 19, 1e-12, "mm")
	near(t, SquareTenon(25, 6, 4.2), 23.3, 0.02, "mm")
}
