package effort

import (
	"math"
	"testing"

	"ribwright/geometry/measure"
)

// TestTogether holds two parabolic hulls to what the thin-ship law demands: four
// times one hull's waves at no spacing, twice at a very large one (within 1 %), the
// same whichever is left and whichever is named first, and nothing new for a hull
// that is cut in two halves.
func TestTogether(t *testing.T) {
	g := parabola(4800, 720, 120, 41, 15)
	other := Sample(4200, 110, 41, 15, func(x, d float64) float64 {
		u := 2*x/4200 - 1
		return 320 * (1 - u*u) * (1 + 0.3*u) * (1 - d*d/110/110)
	})
	for _, u := range []float64{1.2, 1.7, 2.2, 2.8} {
		one := g.Waves(1000, u)
		if k := Together(g, g, 0, 0, 1000, u) / one; math.Abs(k-4) > 1e-4 {
			t.Errorf("at %g m/s, spacing 0: %.6f times one hull", u, k)
		}
		if k := Together(g, g, 0, 150000, 1000, u) / one; math.Abs(k-2) > 0.02 {
			t.Errorf("at %g m/s, 150 m apart: %.4f times one hull, want 2 within 1 %%", u, k)
		}
		if k := Together(g, other, 0, 150000, 1000, u) / (one + other.Waves(1000, u)); math.Abs(k-1) > 0.01 {
			t.Errorf("at %g m/s, unequal and far apart: %.4f of their sum", u, k)
		}
		for _, s := range []float64{900, 2400} {
			ab, ba := Together(g, other, 300, s, 1000, u), Together(other, g, -300, s, 1000, u)
			if math.Abs(ab/ba-1) > 1e-4 {
				t.Errorf("at %g m/s, %g apart: %.6f N one way, %.6f the other", u, s, ab, ba)
			}
			if m := Together(g, other, 300, -s, 1000, u); m != ab {
				t.Errorf("at %g m/s: %.6f N mirrored, %.6f", u, m, ab)
			}
			if k := Together(g, g, 0, s, 1000, u) / one; k < 0 || k > 4 {
				t.Errorf("at %g m/s, %g apart: %.3f times one hull", u, s, k)
			}
		}
	}
	if Together(g, g, 0, 1000, 1000, 0) != 0 {
		t.Error("waves at rest")
	}
}

// TestCentrePlane: a hull of twice the breadth on one middle line is two hulls at
// spacing 0, and a hull moved whole along the water makes the same waves.
func TestCentrePlane(t *testing.T) {
	g, twice := parabola(4800, 720, 120, 41, 15), parabola(4800, 1440, 120, 41, 15)
	nothing := parabola(4800, 0, 120, 41, 15)
	for _, u := range []float64{1.4, 2.3} {
		if k := Together(g, g, 0, 0, 1000, u) / twice.Waves(1000, u); math.Abs(k-1) > 1e-4 {
			t.Errorf("at %g m/s: %.6f of the one of twice the breadth", u, k)
		}
		if k := Together(nothing, g, 1700, 2000, 1000, u) / g.Waves(1000, u); math.Abs(k-1) > 1e-3 {
			t.Errorf("at %g m/s: %.6f of itself when moved", u, k)
		}
	}
}

// TestFirstPrinciples adds the free waves of two hulls over all directions by plain
// sums, both halves of the wake, with the hulls at plus and minus half the spacing,
// and compares.
func TestFirstPrinciples(t *testing.T) {
	a, b := parabola(4800, 720, 120, 41, 15), parabola(4200, 500, 90, 41, 15)
	hullA, hullB := a.steps(), b.steps()
	const u, apart, ahead = 1.9, 1.6, 0.35
	k0 := measure.Gravity / (u * u)
	sum := 0.0
	const n, most = 40000, 3.2 // of v, both ways
	for i := range n {
		v := -most + 2*most*(float64(i)+0.5)/n
		l, across := math.Cosh(v), k0*math.Cosh(v)*math.Sinh(v)
		pa, qa := hullA.amplitude(k0, l)
		pb, qb := hullB.amplitude(k0, l)
		A := complex(pa, qa) * complex(math.Cos(across*apart/2), math.Sin(across*apart/2))
		B := complex(pb, qb) * complex(math.Cos(k0*l*ahead-across*apart/2), math.Sin(k0*l*ahead-across*apart/2))
		e := A + B
		sum += (real(e)*real(e) + imag(e)*imag(e)) * l * l * 2 * most / n
	}
	want := scale(1000, u) * sum / 2
	if got := Together(a, b, ahead*1000, apart*1000, 1000, u); math.Abs(got/want-1) > 1e-3 {
		t.Errorf("%.5f N, by plain sums over all directions %.5f", got, want)
	}
}
