package water

import (
	"math"
	"testing"
)

// TestITTC holds both to ITTC 7.5-02-01-03 as quoted in public source files, at
// its tolerances: density 0.01 %, viscosity 0.1 % fresh and 0.2 % salt at 15
// degrees, 0.5 % at 0 and 30.
func TestITTC(t *testing.T) {
	for _, c := range []struct {
		kind                        Kind
		celsius, density, viscosity float64
		tol                         float64
	}{
		{Fresh, 15, 999.1026, 1.1386e-6, 1e-3},
		{Salt, 15, 1026.021, 1.1892e-6, 2e-3},
		{Fresh, 0, 999.8425, 1.792e-6, 5e-3},
		{Fresh, 30, 995.6502, 0.801e-6, 5e-3},
	} {
		w, err := At(c.kind, c.celsius)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(w.Density/c.density-1) > 1e-4 {
			t.Errorf("%v at %g C: %.4f kg/m3, want %.4f", c.kind, c.celsius, w.Density, c.density)
		}
		if math.Abs(w.Viscosity/c.viscosity-1) > c.tol {
			t.Errorf("%v at %g C: %.5g m2/s, want %.5g", c.kind, c.celsius, w.Viscosity, c.viscosity)
		}
	}
}

// TestEOS80 has the check values of the UNESCO paper for 0 and 35 parts, and sea
// densities at 10 to 30 degrees from the constants of a public ocean code.
func TestEOS80(t *testing.T) {
	for _, c := range []struct {
		kind             Kind
		celsius, density float64
		tol              float64
	}{
		{Fresh, 5, 999.96675, 1e-5 / 1000}, {Fresh, 25, 997.04796, 1e-5 / 1000}, {Fresh, 15, 999.10157, 1e-8},
		{Salt, 5, 1027.67547, 1e-8}, {Salt, 25, 1023.34306, 1e-8}, {Salt, 15, 1025.97275, 1e-8},
		{Salt, 10, 1027.0000, 1e-4}, {Salt, 20, 1024.8103, 1e-4}, {Salt, 30, 1021.7694, 1e-4},
	} {
		if got := Density(c.kind, c.celsius); math.Abs(got/c.density-1) > c.tol {
			t.Errorf("%v at %g C: %.5f kg/m3, want %.5f", c.kind, c.celsius, got, c.density)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, celsius := range []float64{-1, 36, math.NaN(), math.Inf(1)} {
		if w, err := At(Fresh, celsius); err == nil {
			t.Errorf("water of %g C is %+v", celsius, w)
		}
	}
	if _, err := Parse("brine"); err == nil {
		t.Error("brine is accepted")
	}
	for _, k := range []Kind{Fresh, Salt} {
		if got, err := Parse(" " + k.String() + " "); err != nil || got != k {
			t.Errorf("%v is read as %v, %v", k, got, err)
		}
	}
}
