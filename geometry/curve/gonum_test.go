package curve

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/interp"
)

// Against the natural cubic spline of gonum, an independent program.
func TestBattenAgainstGonum(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 14))
	for trial := range 30 {
		x, y := randomPins(random, 2+trial%12)
		b := mustBatten(t, x, y)
		var want interp.NaturalCubic
		if err := want.Fit(x, y); err != nil {
			t.Fatal(err)
		}
		first, last := x[0], x[len(x)-1]
		for k := 0; k <= 97; k++ {
			at := first + (last-first)*float64(k)/97
			got, slope, _ := b.At(at)
			what := fmt.Sprintf("pins %v, %v at %g", x, y, at)
			near(t, what, got, want.Predict(at), 1e-9, "mm")
			near(t, what, slope, want.PredictDerivative(at), 1e-9, "mm per mm")
		}
	}
}

// Against the interpolator of the same name in gonum, an independent program
// with the same formula, inside and at both ends.
func TestEaseAgainstGonum(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	for trial := range 40 {
		x, y := randomPins(random, 2+trial%9)
		e := mustEase(t, x, y)
		var want interp.FritschButland
		if err := want.Fit(x, y); err != nil {
			t.Fatal(err)
		}
		for i := range x {
			near(t, fmt.Sprintf("controls %v, %v: slope at control %d", x, y, i), e.d[i], want.PredictDerivative(x[i]), 1e-12, "per mm")
		}
		first, last := x[0], x[len(x)-1]
		for k := 0; k <= 97; k++ {
			at := first + (last-first)*float64(k)/97
			near(t, fmt.Sprintf("controls %v, %v at %g", x, y, at), e.At(at), want.Predict(at), 1e-10, "")
		}
	}
}
