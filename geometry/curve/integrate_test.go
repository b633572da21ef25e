package curve

import (
	"fmt"
	"math"
	"testing"
)

// Property of five-point Gauss-Legendre: exact for x^0 to x^9.
func TestIntegratePowers(t *testing.T) {
	for power := range 10 {
		for _, panels := range []int{1, 3} {
			t.Run(fmt.Sprintf("x^%d in %d panels", power, panels), func(t *testing.T) {
				const a, b = -0.7, 1.3
				got := Integrate(func(x float64) float64 { return math.Pow(x, float64(power)) }, a, b, panels)
				n := float64(power + 1)
				near(t, fmt.Sprintf("x^%d from %g to %g", power, a, b), got, (math.Pow(b, n)-math.Pow(a, n))/n, 1e-14, "")
			})
		}
	}
}

// The first power it misses, by exactly 2^11 5!^4 / (11 10!^2) over [-1, 1].
// Source: Abramowitz and Stegun, 25.4.29.
func TestIntegrateFirstMiss(t *testing.T) {
	got := Integrate(func(x float64) float64 { return math.Pow(x, 10) }, -1, 1, 1)
	near(t, "2/11 less the integral of x^10", 2.0/11-got, 2048*math.Pow(120, 4)/(11*math.Pow(3628800, 2)), 1e-14, "")
}

func TestIntegrateKnown(t *testing.T) {
	for _, row := range []struct {
		name      string
		f         func(float64) float64
		a, b      float64
		panels    int
		want, tol float64
	}{ // calculus
		{"sine over half a turn", math.Sin, 0, math.Pi, 8, 2, 1e-14},
		{"exponential", math.Exp, 0, 1, 4, math.E - 1, 1e-15 * 4},
		{"backwards", math.Exp, 1, 0, 4, 1 - math.E, 1e-15 * 4},
		{"over nothing", math.Exp, 3, 3, 4, 0, 0},
		{"no panels means one", func(x float64) float64 { return x * x }, 0, 3, 0, 9, 1e-14},
		{"panels below zero mean one", func(x float64) float64 { return x * x }, 0, 3, -7, 9, 1e-14},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, row.name, Integrate(row.f, row.a, row.b, row.panels), row.want, row.tol, "")
		})
	}
}

// Property: the error of a smooth function falls with the tenth power of the
// panel width.
func TestIntegrateOrder(t *testing.T) {
	for _, row := range []struct {
		name    string
		f       func(float64) float64
		a, b    float64
		exact   float64
		panels  int // doubled for the second try
		low, up float64
	}{
		{"exp", math.Exp, 0, 8, math.Exp(8) - 1, 4, 9.8, 10.2},
		{"sin", math.Sin, 0, 3 * math.Pi, 2, 4, 9.8, 10.3},
	} {
		t.Run(row.name, func(t *testing.T) {
			coarse := math.Abs(Integrate(row.f, row.a, row.b, row.panels) - row.exact)
			fine := math.Abs(Integrate(row.f, row.a, row.b, 2*row.panels) - row.exact)
			if order := math.Log2(coarse / fine); !(order >= row.low && order <= row.up) {
				t.Errorf("errors %g in %d panels and %g in %d: order %.2f, want %g to %g",
					coarse, row.panels, fine, 2*row.panels, order, row.low, row.up)
			}
		})
	}
}

// The function is called five times a panel, always inside the interval.
func TestIntegrateCalls(t *testing.T) {
	calls := 0
	Integrate(func(x float64) float64 {
		calls++
		if !(x > 2 && x < 5) {
			t.Errorf("called at %g, outside 2 to 5", x)
		}
		return x
	}, 2, 5, 7)
	if calls != 35 {
		t.Errorf("%d calls, want 35", calls)
	}
}
