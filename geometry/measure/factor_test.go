package measure

import (
	"math"
	"testing"
)

// TestCloth: 8 oz/yd2 is 271.2 g/m2 by arithmetic from the exact ounce and yard.
func TestCloth(t *testing.T) {
	if oz := OuncesPerSquareYard(271.2); math.Abs(oz-8) > 0.002 {
		t.Errorf("271.2 g/m2 is %.4f oz/yd2, want 8", oz)
	}
	if oz := OuncesPerSquareYard(0); oz != 0 {
		t.Errorf("no mass is %v oz/yd2", oz)
	}
}

// TestFactors holds the constants to other exact statements of them: a pound-force is
// 4.4482216152605 N, a nautical mile 1.852 km.
func TestFactors(t *testing.T) {
	if f := Pound * Gravity; math.Abs(f-4.4482216152605) > 1e-13 {
		t.Errorf("a pound weighs %.13f N", f)
	}
	if kmh := Knot * 3.6; math.Abs(kmh-1.852) > 1e-12 {
		t.Errorf("a knot is %.6f km/h", kmh)
	}
}
