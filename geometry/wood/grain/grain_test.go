package grain

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g within %.2g", what, got, want, tol)
	}
}

func rad(deg float64) float64 { return deg * math.Pi / 180 }

// TestHankinson: a worked page gives 38.244, 14.584 and 3.911 for P 87.6, Q 2, n 2. The
// table is by hand from strengths of the Wood Handbook in pounds, to the last digit.
func TestHankinson(t *testing.T) {
	for deg, want := range map[float64]float64{0: 87.6, 10: 38.244, 20: 14.584, 45: 3.911, 90: 2} {
		near(t, "published", Hankinson(87.6, 2, rad(deg), Mean), want, 0.0006)
	}
	type row struct{ deg, ash2, ash15, spruce2, spruce15, cedar2, cedar15, ashC, spruceC float64 }
	for _, r := range []row{
		{0, 106.2, 106.2, 70.3, 70.3, 51.7, 51.7, 51.1, 38.7},
		{3.81, 99.4, 83.1, 62.9, 47.9, 45.1, 32.7, 49.9, 37.3},
		{5.71, 92.1, 70.5, 55.7, 37.9, 39.0, 25.1, 48.5, 35.6},
		{7.13, 85.9, 62.3, 49.9, 32.1, 34.3, 20.9, 47.2, 34.1},
		{11.31, 66.7, 44.4, 34.8, 20.9, 22.8, 13.2, 42.3, 29.0},
		{20, 37.9, 25.4, 17.1, 10.9, 10.6, 6.7, 31.3, 19.2},
		{30, 21.9, 16.1, 9.2, 6.7, 5.6, 4.0, 21.8, 12.2},
		{45, 12.2, 10.3, 4.9, 4.1, 2.9, 2.5, 13.8, 7.3},
		{90, 6.48, 6.48, 2.55, 2.55, 1.52, 1.52, 8.00, 4.00},
	} {
		const digit = 0.11
		near(t, "ash 2", Hankinson(106.2, 6.48, rad(r.deg), Mean), r.ash2, digit)
		near(t, "ash 1.5", Hankinson(106.2, 6.48, rad(r.deg), Cautious), r.ash15, digit)
		near(t, "spruce 2", Hankinson(70.3, 2.55, rad(r.deg), Mean), r.spruce2, digit)
		near(t, "spruce 1.5", Hankinson(70.3, 2.55, rad(r.deg), Cautious), r.spruce15, digit)
		near(t, "cedar 2", Hankinson(51.7, 1.52, rad(r.deg), Mean), r.cedar2, digit)
		near(t, "cedar 1.5", Hankinson(51.7, 1.52, rad(r.deg), Cautious), r.cedar15, digit)
		near(t, "ash pressed", Hankinson(51.1, 8.00, rad(r.deg), Mean), r.ashC, digit)
		near(t, "spruce pressed", Hankinson(38.7, 4.00, rad(r.deg), Mean), r.spruceC, digit)
	}
	near(t, "either way", Hankinson(100, 5, -0.7, Cautious), Hankinson(100, 5, math.Pi-0.7, Cautious), 1e-12)
	near(t, "1 in 10", math.Tan(Short), 0.1, 1e-9)
}

func TestOff(t *testing.T) {
	for _, c := range [][3]float64{{0.3, 0.1, 0.2}, {0.1, math.Pi, 0.1}, {-1.5, 1.5, math.Pi - 3}, {0, math.Pi / 2, math.Pi / 2}, {7, 7, 0}} {
		near(t, "off", Off(c[0], c[1]), c[2], 1e-12)
	}
}

// TestOnEdge: plies along the stress alone at both ways, Diagonal between them, and
// smooth where the halves meet.
func TestOnEdge(t *testing.T) {
	for _, c := range [][2]float64{{0, 0.6}, {90, 0.4}, {45, Diagonal}, {180, 0.6}, {-90, 0.4}} {
		near(t, "share", OnEdge(5, rad(c[0])), c[1], 1e-9)
	}
	near(t, "45 both sides", OnEdge(7, rad(45-1e-9)), OnEdge(7, rad(45+1e-9)), 1e-6)
	for a := 0.0; a < math.Pi; a += 0.01 {
		if s := OnEdge(7, a); !(s >= Diagonal-1e-9 && s <= 4.0/7+1e-9) {
			t.Errorf("at %.2f rad the share is %.3f", a, s)
		}
	}
}

// TestRadialTension: 50 N m on 20 x 30 mm at 150 mm pull 0.83 N/mm2 apart.
func TestRadialTension(t *testing.T) {
	near(t, "radial", RadialTension(50000, 150, 20, 30), 0.8333, 1e-4)
}
