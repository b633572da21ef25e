package float

import (
	"math"
	"testing"

	"ribwright/geometry"
)

const degree = math.Pi / 180

// trough is a hull of one section all along, m read as mm x 1000.
func trough(t testing.TB, half ...geometry.Point) *Hull {
	t.Helper()
	var s []Station
	for i := range 5 {
		s = append(s, Station{X: float64(i-2) * 2500, Half: half})
	}
	h, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// levers gives GZ in m at the angles, deg, for a trough at a draft with KG, mm.
func levers(t *testing.T, h *Hull, draft, kg float64, angles []float64) []float64 {
	t.Helper()
	l := Load{h.Immerse(Level(draft)).Volume * 1e-6, geometry.Point3{Z: kg}}
	heels := make([]float64, len(angles))
	for i := range angles {
		heels[i] = angles[i] * degree
	}
	v, err := sweep(h, l, 1000, heels)
	if err != nil {
		t.Fatal(err)
	}
	out := make([]float64, len(v))
	for i := range v {
		out[i] = v[i].GZ / 1000
	}
	return out
}

// sweep returns GZ at the heels given, whether or not water comes in, each
// started from the one before.
func sweep(h *Hull, l Load, density float64, heels []float64) ([]Lever, error) {
	out := make([]Lever, 0, len(heels))
	var from *Plane
	for _, heel := range heels {
		v, err := h.Righting(l, density, heel, from)
		if err != nil {
			return out, err
		}
		out = append(out, v)
		from = &v.Plane
	}
	return out, nil
}

// TestExactLevers compares GZ with sections clipped at constant area, worked out
// independently to the digits shown; tolerance 0.2 % of the greatest lever. Each
// table runs past where the bilge comes out or the deck goes in, where the
// wall-sided formula no longer holds.
func TestExactLevers(t *testing.T) {
	for _, c := range []struct {
		name           string
		half           []geometry.Point
		draft, kg      float64
		angles, levers []float64
	}{
		{"barge", []geometry.Point{{X: 500}, {X: 500, Y: 500}}, 200, 250,
			[]float64{5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80},
			[]float64{.023381, .047431, .072890, .100645, .128540, .147825, .161582, .147572, .119618, .083613, .042910}},
		{"canoe-like box", []geometry.Point{{X: 400}, {X: 400, Y: 350}}, 120, 300,
			[]float64{5, 10, 15, 20, 25, 30, 35, 40},
			[]float64{.017967, .036701, .057044, .075909, .084038, .085429, .082045, .072255}},
		{"45 degree wedge", []geometry.Point{{}, {X: 2000, Y: 2000}}, 1000, 1000,
			[]float64{5, 10, 20, 30}, []float64{.029499, .061568, .147589, .316497}},
	} {
		t.Run(c.name, func(t *testing.T) {
			most := 0.0
			for _, v := range c.levers {
				most = math.Max(most, v)
			}
			worst := 0.0
			for i, got := range levers(t, trough(t, c.half...), c.draft, c.kg, c.angles) {
				d := math.Abs(got - c.levers[i])
				worst = math.Max(worst, d/most)
				if d > 2e-3*most {
					t.Errorf("at %g deg GZ is %.6f m, want %.6f", c.angles[i], got, c.levers[i])
				}
			}
			t.Logf("worst %.1e of the greatest lever", worst)
		})
	}
}

// wallSided is GZ = sin(p) (GM + BM/2 tan2 p). Source: Barrass and Derrett, Ship
// Stability for Masters and Mates, p. 130.
func wallSided(gm, bm, heel float64) float64 {
	tan := math.Tan(heel)
	return math.Sin(heel) * (gm + bm/2*tan*tan)
}

// TestWallSided holds the clipped levers to the formula inside its range, and
// away from it outside: bilge out at 21.801 deg, deck in at 30.964 deg. The
// formula itself is checked against the book's examples.
func TestWallSided(t *testing.T) {
	near64(t, "example 1", wallSided(.5, 3, 25*degree), 0.349152, 1e-5)
	near64(t, "example 1 moment as printed", 6000*wallSided(.5, 3, 25*degree), 2100, 3e-3)
	for i, want := range []float64{.0881564, .1817465, .2866926, .4099835, .5604612, .7500000} {
		near64(t, "GM 1, BM 3", wallSided(1, 3, float64(5*(i+1))*degree), want, 1e-6)
	}
	h := trough(t, geometry.Point{X: 500}, geometry.Point{X: 500, Y: 500})
	for _, deg := range []float64{1, 5, 10, 15, 20, 21.8} {
		got := levers(t, h, 200, 250, []float64{deg})[0]
		near64(t, "inside the range", got, wallSided(.2666666667, .4166666667, deg*degree), 1e-6)
	}
	for _, deg := range []float64{25, 30, 40} {
		got, line := levers(t, h, 200, 250, []float64{deg})[0], wallSided(.2666666667, .4166666667, deg*degree)
		if math.Abs(got/line-1) < 0.01 {
			t.Errorf("at %g deg GZ %.6f m still follows the wall-sided %.6f m", deg, got, line)
		}
	}
}

// TestBoxExample has the box of Barrass and Derrett p. 130: 65 x 12 x 8 m at 4 m,
// KG 4 m, salt water: 3198 t, GM 1, BM 3; moments at 5 and 25 degrees.
func TestBoxExample(t *testing.T) {
	var s []Station
	for i := range 5 {
		s = append(s, Station{X: float64(i-2) * 65000 / 4, Half: []geometry.Point{{X: 6000}, {X: 6000, Y: 8000}}})
	}
	h, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	l := Load{3198e3, geometry.Point3{Z: 4000}}
	p, _, err := h.Settle(l, 1025)
	if err != nil {
		t.Fatal(err)
	}
	o := h.Upright(p, l, 1025)
	near64(t, "draft", o.Draft, 4000, 1e-9)
	near64(t, "BM", o.BM, 3000, 1e-9)
	near64(t, "GM", o.GM, 1000, 1e-9)
	for _, c := range []struct{ deg, moment, tol float64 }{{5, 278.72 * (1 + 1.5*math.Pow(math.Tan(5*degree), 2)), 1e-4}, {25, 1792.36, 1e-5}} {
		v, err := h.Righting(l, 1025, c.deg*degree, nil)
		if err != nil {
			t.Fatal(err)
		}
		near64(t, "moment", v.GZ/1000*3198, c.moment, c.tol)
	}
}

// TestFixedMetacenter has a half-round trough, whose metacenter is its axis at
// every heel: GZ = 0.1 sin p with the weight 0.1 m under the axis, R 0.4 m, until
// the rim dips. Closed form; at 10, 30 and 60 degrees .0173648, .05, .0866025.
func TestFixedMetacenter(t *testing.T) {
	var half []geometry.Point
	const n = 200
	for i := range n + 1 {
		a := float64(i) / n * 2.6 // up to 149 deg from straight down: the rim stands clear
		half = append(half, geometry.Point{X: 400 * math.Sin(a), Y: 400 - 400*math.Cos(a)})
	}
	h := trough(t, half...)
	worst := 0.0
	for deg := 2.5; deg <= 60; deg += 2.5 {
		got, want := levers(t, h, 400, 300, []float64{deg})[0], .1*math.Sin(deg*degree)
		near64(t, "GZ", got, want, 1e-3)
		worst = math.Max(worst, math.Abs(got/want-1))
	}
	t.Logf("worst %.1e", worst)
}

// TestFlooding ends the curve where the deck edge of the barge dips. Plane
// geometry: by then the bilge is out, the wet section is a triangle with the side
// 0.5 m as one leg, and its area 0.2 m2 makes tan p = 0.5 0.5 / (2 0.2), 32.005
// deg (30.964 if the bilge had stayed in).
func TestFlooding(t *testing.T) {
	h := trough(t, geometry.Point{X: 500}, geometry.Point{X: 500, Y: 500})
	l := Load{h.Immerse(Level(200)).Volume * 1e-6, geometry.Point3{Z: 250}}
	for _, step := range []float64{2.5 * degree, -2.5 * degree} {
		c, err := h.Curve(l, 1000, step)
		if err != nil {
			t.Fatal(err)
		}
		near64(t, "flooding", math.Abs(c.Flooding), math.Atan(0.625), 1e-6)
		for _, v := range c.Levers {
			if math.Abs(v.Heel) > math.Abs(c.Flooding) {
				t.Errorf("GZ is given at %.1f deg, past the flooding at %.3f deg", v.Heel/degree, c.Flooding/degree)
			}
		}
	}
}

// TestReference holds levers with free trim to a plain solver in numpy and scipy
// on the same stations: testdata/reference/float.py.
func TestReference(t *testing.T) {
	h := canoe(t)
	l := Load{120, geometry.Point3{X: -40, Z: 250}}
	for heel, want := range map[float64]float64{2.5: 1.465113, 10: 6.490428, 20: 16.310499, 30: 29.851121, 40: 36.285707, 45: 35.207822} {
		v, err := h.Righting(l, 1000, heel*degree, nil)
		if err != nil || math.Abs(v.GZ-want) > 2e-6 {
			t.Errorf("at %g deg GZ is %.6f mm (%v), want %.6f", heel, v.GZ, err, want)
		}
	}
}
