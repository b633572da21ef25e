package fabric

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}

// TestSpread: paint texts have it that a liter of pure solids covers 1000 m2 by 1 um, and
// that m2/L is volume solids in percent times 10 over the dry film in um.
func TestSpread(t *testing.T) {
	near(t, "pure solids, 1 um", Spread(1, 1), 1000, 1e-9)
	for _, c := range []struct{ percent, film float64 }{{70, 60}, {50, 40}, {100, 125}, {38, 30}} {
		near(t, "m2/L", Spread(c.percent/100, c.film), c.percent*10/c.film, 1e-9)
	}
	if Loss < 0.10 || Loss > 0.20 {
		t.Errorf("losses of %g; paint makers' calculators have 10 to 20 %%", Loss)
	}
}

// TestFilmByHand: 0.4 L/m2 of 70 % solids leave 0.28 L, a film of 280 um, which weighs
// 308 g at 1.1 kg/L.
func TestFilmByHand(t *testing.T) {
	c := Coats{Count: 2, Coating: Coating{Solids: 0.7, Density: 1.1, Film: 280}} // no cloth: only the second coat stays
	near(t, "liquid, L/m2", c.Liquid(), 0.4, 1e-12)
	near(t, "mass, g/m2", c.Mass(), 308, 1e-9)
	near(t, "thickness, mm", c.Thickness(), 0.28, 1e-12)
}

// TestVoids: what cloth of a known thickness holds besides its fiber, by the densities
// of textile tables: polyester of 271 g/m2, 0.45 mm thick, 0.45 - 0.271/1.38 = 0.254
// L/m2; nylon of 407 g/m2, 0.62 mm thick, 0.263 L/m2. The thicknesses are from memory,
// so a tenth of them is all that is asked.
func TestVoids(t *testing.T) {
	near(t, "polyester, mm", Polyester.Thickness(271), 0.45, 0.01)
	near(t, "polyester, L/m2", Polyester.Voids(271), 0.45-0.271/1.38, 0.01)
	near(t, "nylon, mm", Nylon.Thickness(407), 0.62, 0.01)
	near(t, "nylon, L/m2", Nylon.Voids(407), 0.62-0.407/1.14, 0.01)
	near(t, "wet nylon of 305 g/m2, g/m2 of water", 305*Nylon.Regain(), 14, 0.5)
}

// TestWhole: fiber and voids are all there is of a cloth, whatever it weighs, and a first
// coat of pure solids fills it to the brim.
func TestWhole(t *testing.T) {
	for _, f := range Fibers() {
		for _, cloth := range []float64{60, 271, 900} {
			near(t, f.String()+", mm", cloth/1000/f.Density()+f.Voids(cloth), f.Thickness(cloth), 1e-12)
			c := Coats{Fiber: f, Cloth: cloth, Count: 1, Coating: Coating{Solids: 1, Density: 1, Film: 50}}
			near(t, f.String()+", g/m2", c.Mass(), cloth+1000*(f.Thickness(cloth)-cloth/1000/f.Density()), 1e-9)
			near(t, "first coat, m2/L", FirstSpread(f, cloth)*c.First(), 1, 1e-12)
		}
	}
}

// TestClothUnder undoes Mass for every fiber and count of coats.
func TestClothUnder(t *testing.T) {
	for _, f := range Fibers() {
		for count := range 7 {
			c := Coats{Fiber: f, Cloth: 305, Count: count, Coating: Usual()}
			near(t, f.String(), c.ClothUnder(c.Mass()), 305, 1e-9)
		}
	}
}

// TestCoats: bare cloth weighs itself; each coat after the first adds as much as the one
// before it, and 3 or 4 coats of two-part urethane on 8 to 10 oz cloth take 0.3 to 0.6
// L/m2 and weigh 300 to 600 g/m2 (common practice, no source).
func TestCoats(t *testing.T) {
	at := func(f Fiber, cloth float64, count int) Coats { return Coats{f, cloth, count, Usual()} }
	near(t, "bare, g/m2", at(Nylon, 339, 0).Mass(), 339, 0)
	near(t, "bare, mm", at(Nylon, 339, 0).Thickness(), Nylon.Thickness(339), 0)
	near(t, "bare, L/m2", at(Nylon, 339, 0).Liquid(), 0, 0)
	second := at(Polyester, 271, 2).Mass() - at(Polyester, 271, 1).Mass()
	near(t, "the fifth coat, g/m2", at(Polyester, 271, 5).Mass()-at(Polyester, 271, 4).Mass(), second, 1e-9)
	near(t, "a coat of 60 um at 1.1 kg/L, g/m2", second, 66, 1e-9)
	for _, f := range []Fiber{Polyester, Nylon} {
		for _, cloth := range []float64{271, 339} {
			for _, count := range []int{3, 4} {
				c := at(f, cloth, count)
				if l, m := c.Liquid(), c.Mass()-c.Cloth; l < 0.3 || l > 0.6 || m < 250 || m > 600 {
					t.Errorf("%v of %g g/m2, %d coats: %.2f L/m2, %.0f g/m2", f, cloth, count, l, m)
				}
			}
		}
	}
}

// TestHeat: no step is hotter than the ceiling, and the ceiling is well under melting.
func TestHeat(t *testing.T) {
	for _, f := range Fibers() {
		i := f.Ironing()
		last := 0.0
		for _, s := range i.Steps {
			if s <= last || s > i.Most {
				t.Errorf("%v: step of %g C after %g, at most %g", f, s, last, i.Most)
			}
			last = s
		}
		if i.Most > i.Melts-50 {
			t.Errorf("%v: ironed at %g C, melts at %g", f, i.Most, i.Melts)
		}
		if r := f.Tension(); !(r.Low < r.Likely && r.Likely < r.High) {
			t.Errorf("%v: %+v", f, r)
		}
	}
}
