package beam

import (
	"math"
	"testing"
)

// TestTwistStress holds the shear of twisted bars to the factors printed by Timoshenko
// and Goodier, Theory of Elasticity, for long over short sides: stress over g, twist
// and the short side.
func TestTwistStress(t *testing.T) {
	for _, c := range []struct{ ratio, factor float64 }{{1, 0.675}, {1.2, 0.759}, {1.5, 0.848}, {2, 0.930}, {2.5, 0.968}, {3, 0.985}, {4, 0.997}, {5, 0.999}, {100, 1}} {
		for _, got := range []float64{TwistStress(10*c.ratio, 10, 700, 0.001), TwistStress(10, 10*c.ratio, 700, 0.001)} {
			if want := c.factor * 700 * 0.001 * 10; math.Abs(got/want-1) > 1e-3 {
				t.Errorf("%g by 1: %.4f N/mm2, want %.4f", c.ratio, got, want)
			}
		}
	}
	if TwistStress(20, 10, 700, 0) != 0 {
		t.Error("a straight stick is in shear")
	}
}
