package timber

import (
	"fmt"
	"math"
	"testing"
)

// neutralRadius is the law that BendCorrection stands on: the radius of the line that
// keeps its length, max(Ri + t/2, (Ri + t) / (1 + e)).
func neutralRadius(inner, thickness, maxStrain float64) float64 {
	return math.Max(inner+thickness/2, (inner+thickness)/(1+maxStrain))
}

func TestNeutralRadius(t *testing.T) {
	inf := math.Inf(1)
	for _, row := range []struct {
		name                     string
		inner, thickness, strain float64
		want, tol                float64
	}{ // arithmetic; the strain limit itself is from memory
		{"rib of 8 at 150", 150, 8, 0.02, 154.902, 0.0005},
		{"slight bend stays at the middle", 300, 8, 0.02, 304, 0},
		{"the change-over", 24.5 * 8, 8, 0.02, 200, 1e-12},
		{"ratio 25", 25, 1, 0.02, 25.5, 0},
		{"ratio 40", 40, 1, 0.02, 40.5, 0},
		{"ratio 18.75", 18.75, 1, 0.02, 18.75 + 0.6127, 0.00005},
		{"ratio 12.5", 12.5, 1, 0.02, 12.5 + 0.7353, 0.00005},
		{"ratio 12", 12, 1, 0.02, 12 + 0.7451, 0.00005},
		{"strap", 150, 8, 0, 158, 0},
		{"no thickness", 150, 0, 0.02, 150, 0},
		{"straight", inf, 8, 0.02, inf, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := neutralRadius(row.inner, row.thickness, row.strain)
			if got != row.want {
				near(t, got, row.want, row.tol, "mm")
			}
		})
	}
	near(t, math.Pi*neutralRadius(150, 8, MaxTensileStrain), 486.64, 0.005, "mm, half turn")
	near(t, math.Pi*neutralRadius(150, 8, 0), 496.37, 0.005, "mm, half turn with a strap")
	if !math.IsNaN(neutralRadius(math.NaN(), 8, 0.02)) {
		t.Error("NaN does not stay NaN")
	}
}

// The short form used must be the same as sweep (Rn - R), and stay between 0
// and what the outer face would ask for.
func TestBendCorrection(t *testing.T) {
	for _, thickness := range []float64{1, 6, 8, 25} {
		for _, ratio := range []float64{0.5, 1, 3, 10, 19.25, 24.9, 25, 25.1, 200} {
			mid := ratio * thickness
			for _, sweep := range []float64{0, 0.3, math.Pi} {
				got := BendCorrection(mid, thickness, sweep)
				want := sweep * (neutralRadius(mid-thickness/2, thickness, MaxTensileStrain) - mid)
				near(t, got, want, 1e-9, "mm")
				if got < 0 || got > sweep*thickness/2 {
					t.Errorf("radius %g, thickness %g: correction %g leaves 0 to %g", mid, thickness, got, sweep*thickness/2)
				}
			}
		}
	}
	// 486.64 along the neutral line against 483.81 along the middle. Arithmetic.
	near(t, BendCorrection(154, 8, math.Pi), 486.64-483.81, 0.01, "mm")
	near(t, BendCorrection(154, 8, -math.Pi), 486.64-483.81, 0.01, "mm, bent the other way")
	near(t, BendCorrection(math.Inf(1), 8, 0.3), 0, 0, "mm, straight")
	near(t, BendCorrection(math.Inf(1), 8, 0), 0, 0, "mm, straight, no sweep")
	if !math.IsNaN(BendCorrection(math.NaN(), 8, 1)) {
		t.Error("NaN does not stay NaN")
	}
}

func TestStrain(t *testing.T) {
	for _, row := range []struct {
		name                        string
		ratio, tensile, compression float64
		tol                         float64
	}{ // arithmetic
		{"no strap at 12", 12, 0.02, 0.0584615, 5e-8},
		{"strap at 30 % crush", 7.0 / 3, 0, 0.30, 1e-15},
		{"strap that gives 1 %", 70.0 / 31, 0.01, 0.30, 1e-15},
	} {
		t.Run(row.name, func(t *testing.T) {
			near(t, CompressionStrain(row.ratio, row.tensile), row.compression, row.tol, "mm/mm")
		})
	}
	near(t, CompressionStrain(0, 0.02), 1, 0, "mm/mm")
	// Elastic bending has equal strains, 1/(2 ratio + 1). Beam theory.
	for _, ratio := range []float64{1, 20, 150} {
		e := 1 / (2*ratio + 1)
		near(t, CompressionStrain(ratio, e), e, 1e-14, "mm/mm")
	}
	if CompressionStrain(100, 0.02) >= 0 {
		t.Error("a slight bend cannot stretch the outer face by 2 %, so the result must be below 0")
	}
}

func TestSteamMinutes(t *testing.T) {
	for _, row := range []struct{ thickness, want, tol float64 }{ // common practice, one hour for 25 mm
		{8, 19.2, 1e-12}, {25, 60, 0}, {0, 0, 0},
	} {
		near(t, SteamMinutes(row.thickness), row.want, row.tol, "min")
	}
}

func ExampleBendCorrection() {
	// A rib 8 mm thick bent through a half turn of 154 mm at mid-thickness.
	fmt.Printf("%.2f mm longer than the mid-line\n", BendCorrection(154, 8, math.Pi))
	// Output: 2.83 mm longer than the mid-line
}
