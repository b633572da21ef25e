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
