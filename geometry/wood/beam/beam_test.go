package beam

import (
	"math"
	"testing"

	"ribwright/geometry/wood/timber"
)

// numeric integrates E I y” = M twice over a stick of length 1 under load 1 with
// E I 1, from the bending moment alone, and returns the greatest moment and sag.
func numeric(moment func(x float64) float64, slope0 func(area func(float64) float64) float64) (most, sag float64) {
	const n = 20000
	first := make([]float64, n+1) // integral of the moment
	for i := 1; i <= n; i++ {
		x := (float64(i) - 0.5) / n
		first[i] = first[i-1] + moment(x)/n
		most = math.Max(most, math.Abs(moment(x)))
	}
	second := make([]float64, n+1)
	for i := 1; i <= n; i++ {
		second[i] = second[i-1] + (first[i-1]+first[i])/2/n
	}
	s := slope0(func(x float64) float64 { return second[int(math.Round(x*n))] })
	for i := 0; i <= n; i++ {
		sag = math.Max(sag, math.Abs(second[i]+s*float64(i)/n))
	}
	return most, sag
}

// TestCases integrates the bending line of each case from its moments.
func TestCases(t *testing.T) {
	rests := func(y func(float64) float64) float64 { return -y(1) } // no sag at either end
	held := func(func(float64) float64) float64 { return 0 }        // no slope at the first end
	for _, c := range []struct {
		name   string
		got    Case
		moment func(x float64) float64
		slope  func(func(float64) float64) float64
	}{
		{"middle", Middle(), func(x float64) float64 { return -math.Min(x, 1-x) / 2 }, rests},
		{"on 300 of 700 mm", Patch(3.0 / 7), func(x float64) float64 {
			return -(math.Min(x, 1-x) - square(math.Max(0, 1.5/7-math.Abs(x-0.5)))*7/3) / 2
		}, rests},
		{"even", Even(), func(x float64) float64 { return -x * (1 - x) / 2 }, rests},
		{"tip", Tip(), func(x float64) float64 { return 1 - x }, held},
		{"sway", Sway(), func(x float64) float64 { return 0.5 - x }, held},
	} {
		most, sag := numeric(c.moment, c.slope)
		if math.Abs(most-c.got.Moment) > 1e-4 || math.Abs(sag-c.got.Sag) > 1e-5 {
			t.Errorf("%s: moment %.5f and sag %.6f, by integration %.5f and %.6f", c.name, c.got.Moment, c.got.Sag, most, sag)
		}
	}
}

func square(x float64) float64 { return x * x }

// TestPatch: a stick of 20 x 40 mm on edge, 700 mm long, of E 12 GPa, under 1.5 times
// 100 kg, 1471.0 N, by M = F (L - c/2)/4 and the section modulus 5333 mm3; worked by hand.
func TestPatch(t *testing.T) {
	const p, long = 1471.0, 700.0
	s := Rectangle(20, 40)
	for _, c := range []struct {
		what     string
		load, on float64
		moment   float64 // N m
		stress   float64 // N/mm2
		sag      float64 // mm
	}{
		{"half, even", p / 2, 700, 64.4, 12.1, 2.6},
		{"half, even, by more than its length", p / 2, 900, 64.4, 12.1, 2.6},
		{"half on 300 mm", p / 2, 300, 101.1, 19.0, 3.8},
		{"all on 300 mm", p, 300, 202.3, 37.9, 7.5},
		{"all at a point", p, 0, 257.4, 48.3, 8.2},
	} {
		on := Patch(c.on / long)
		m, sag := on.Bending(c.load, long), on.Gives(c.load, long, 12000, s)
		if math.Abs(m/1000-c.moment) > 0.06 || math.Abs(m/s.Modulus-c.stress) > 0.06 || math.Abs(sag-c.sag) > 0.06 {
			t.Errorf("%s: %.1f N m, %.1f N/mm2, sag %.1f mm; want %g, %g, %g", c.what, m/1000, m/s.Modulus, sag, c.moment, c.stress, c.sag)
		}
	}
	if Patch(0) != Middle() {
		t.Errorf("on no length at all: %v, on the middle %v", Patch(0), Middle())
	}
}

// TestWorked: a 50 x 100 mm stick of E 10 000 N/mm2 over 2 m with 1 kN in the
// middle: M 0.5 kN m, stress 6 N/mm2, sag 4.0 mm, by hand. A 40 mm round of 2 m
// buckles at 3.1006 kN.
func TestWorked(t *testing.T) {
	s := Rectangle(50, 100)
	m := Middle().Bending(1000, 2000)
	if math.Abs(m-5e5) > 1e-6 || math.Abs(m/s.Modulus-6) > 1e-12 || math.Abs(Middle().Gives(1000, 2000, 10000, s)-4) > 1e-12 {
		t.Errorf("moment %g, stress %g, sag %g", m, m/s.Modulus, Middle().Gives(1000, 2000, 10000, s))
	}
	if got := Buckling(2000, 10000, Round(40)); math.Abs(got-3100.628) > 0.01 {
		t.Errorf("buckles at %.3f N, want 3100.628", got)
	}
	d := RoundFor(1e6, 20)
	if got := 1e6 / Round(d).Modulus; math.Abs(got-20) > 1e-9 {
		t.Errorf("a stick sized for 20 N/mm2 carries %g", got)
	}
	if got := Working(timber.Species{MOR: 100}); got != 25 {
		t.Errorf("working stress %g", got)
	}
}
