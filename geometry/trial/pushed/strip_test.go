package pushed

import (
	"math"
	"strconv"
	"testing"

	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/referencetest"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.7g, want %.7g within %.1g", what, got, want, tol)
	}
}

// evenly is a strip of n arcs that turns evenly through the given angle.
func evenly(n int, turn float64) *strip {
	s := &strip{turn: make([]float64, n)}
	for i := range s.turn {
		s.turn[i] = turn / float64(n)
	}
	return s
}

// elliptic returns the complete elliptic integrals K and E of the modulus p, by the
// arithmetic-geometric mean (Abramowitz and Stegun 17.6).
func elliptic(p float64) (k, e float64) {
	a, g, c := 1.0, math.Sqrt(1-p*p), p
	sum, two := c*c/2, 1.0
	for range 8 {
		a, g, c = (a+g)/2, math.Sqrt(a*g), (a-g)/2
		sum, two = sum+two*c*c, 2*two
	}
	k = math.Pi / (2 * a)
	return k, k * (1 - sum)
}

// TestStrut holds a strip to the strut that is bent far: fixed at its foot, loaded along
// its first direction. Source: S. P. Timoshenko and J. M. Gere, Theory of Elastic
// Stability, elastica: P / Pcr, x / l and y / l for the angle alpha at the top, by
// complete elliptic integrals of p = sin(alpha/2).
func TestStrut(t *testing.T) {
	for _, row := range [][4]float64{
		{20, 1.0154, 0.9697, 0.2194}, {40, 1.0637, 0.8812, 0.4222}, {60, 1.1517, 0.7410, 0.5932},
		{80, 1.2939, 0.5594, 0.7195}, {100, 1.5184, 0.3490, 0.7915}, {120, 1.8848, 0.1232, 0.8032},
		{140, 2.5423, -0.1069, 0.7504}, {160, 4.0301, -0.3403, 0.6246}, {176, 9.1162, -0.5772, 0.4214},
	} {
		alpha := row[0] * math.Pi / 180
		k, e := elliptic(math.Sin(alpha / 2))
		over, a := 4*k*k/(math.Pi*math.Pi), aim{x: 2*e/k - 1, y: 2 * math.Sin(alpha/2) / k}
		near(t, "P/Pcr of the table", over, row[1], 1e-4)
		near(t, "x/l of the table", a.x, row[2], 1e-4)
		near(t, "y/l of the table", a.y, row[3], 1e-4)
		const n = 256
		s := evenly(n, alpha)
		if !s.relax(a, newYield(n)) {
			t.Fatalf("%g deg: no rest", row[0])
		}
		near(t, "P/Pcr", s.push/(math.Pi*math.Pi/4), over, 1e-4*over)
		near(t, "force across", s.lift, 0, 1e-4*s.push)
		end := 0.0
		for _, turn := range s.turn {
			end += turn
		}
		near(t, "angle at the top", end, alpha, 1e-4)
	}
}

// TestSlightly holds slightly bent strips to the formulas of beams: one built in at one
// end and loaded at the other, and one whose ends both keep their direction. Their length
// is that of the bent line, to second order, so that nothing pushes along them.
func TestSlightly(t *testing.T) {
	const d, n = 0.002, 256
	for _, c := range []struct {
		name    string
		a       aim
		longer  float64 // integral of half the slope's square, over d squared
		lift    float64 // over d
		deflect func(x float64) float64
		bend    func(x float64) float64 // its second derivative
	}{
		{"cantilever", aim{}, 3.0 / 5, 3, func(x float64) float64 { return (3*x*x - x*x*x) / 2 }, func(x float64) float64 { return 3 - 3*x }},
		{"guided", aim{clamped: true}, 3.0 / 5, 12, func(x float64) float64 { return 3*x*x - 2*x*x*x }, func(x float64) float64 { return 6 - 12*x }},
	} {
		c.a.x, c.a.y = 1-c.longer*d*d, d
		s := evenly(n, 0)
		for i := range s.turn {
			s.turn[i] = 0.8 * d * c.bend((float64(i)+0.5)/n) / n // somewhere near
		}
		if !s.relax(c.a, newYield(n)) {
			t.Fatalf("%s: no rest", c.name)
		}
		near(t, c.name+": force", s.lift, c.lift*d, 1e-3*c.lift*d)
		near(t, c.name+": push", s.push, 0, 0.01) // it buckles at 2.5 or more
		half := s.chain(1)
		for x := 0.1; x < 1; x += 0.1 {
			p, _ := half.At(x)
			near(t, c.name+": deflection", p.Y/d, c.deflect(p.X), 3e-4)
		}
	}
}

// TestEnergy compares the energy with that of other curves of the same length and ends.
func TestEnergy(t *testing.T) {
	w := newWanted(section(t, 386, 310, 17, 120, 9, 0), nil)
	s := w.strip(arcs, nil)
	if !s.relax(aim{x: w.HalfBreadth / w.length, y: w.Depth / w.length}, newYield(arcs)) {
		t.Fatal("no rest")
	}
	least := energy(s.chain(w.length))
	for _, other := range []curve.Chain{w.Half, w.pushedIn(newYield(arcs)).Clamped.Half} {
		if e := energy(other); !(e > least) {
			t.Errorf("another curve of the same length and ends stores %.6g, the rest %.6g", e, least)
		}
	}
}

func energy(c curve.Chain) (sum float64) {
	for _, b := range c {
		if b.Radius != 0 {
			sum += b.Sweep * b.Sweep / b.Length / 2
		}
	}
	return sum
}

func section(t *testing.T, halfBreadth, depth, bottom, bilge, flare, top float64) hull.Section {
	t.Helper()
	const deg = math.Pi / 180
	s, err := hull.Solve(halfBreadth, depth, hull.Shape{BottomTurn: bottom * deg, BilgeRadius: bilge, Flare: flare * deg, TopsideCurve: top * deg})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestReference holds ribs to an independent solution by collocation and shooting,
// testdata/reference/pushed.py: places within 0.1 mm all along, forces within 0.3 %.
func TestReference(t *testing.T) {
	worst, last := 0.0, ""
	var r Rib
	var long float64
	for _, row := range referencetest.Table(t, "../../../testdata/reference/pushed.csv") {
		v := make([]float64, len(row))
		for i, s := range row {
			v[i], _ = strconv.ParseFloat(s, 64)
		}
		if row[0] != last {
			w := newWanted(section(t, v[1], v[2], v[3], v[4], v[5], v[6]), nil)
			w.stiff, long = 1e8, w.length
			if r = w.pushedIn(newYield(arcs)); r.Why != nil {
				t.Fatal(row[0], r.Why)
			}
			last = row[0]
		}
		h := r.Hinged
		if row[7] == "clamped" {
			h = r.Clamped
		}
		near(t, row[0]+": push", h.Push, v[8]*1e8, 0.003*math.Abs(v[8]*1e8))
		near(t, row[0]+": lift", h.Lift, -v[9]*1e8, 0.003*math.Hypot(v[8], v[9])*1e8)
		p, _ := h.Half.At(v[10] * long)
		worst = math.Max(worst, math.Hypot(p.X-v[11], p.Y-v[12]))
		if v[10] == 1 {
			near(t, row[0]+": flare", h.Flare*180/math.Pi, 90-v[13], 0.1)
		}
	}
	near(t, "worst distance of a place, mm", worst, 0, 0.1)
	t.Logf("worst distance %.4f mm", worst)
}
