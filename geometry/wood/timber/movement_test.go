package timber

import "testing"

// TestMovement holds the movement of each wood for 1 % of moisture, along and across
// its rings, at Wood Handbook table 13-5 as a second hand copied it; a wood that is
// not there is not told to move.
func TestMovement(t *testing.T) {
	want := map[string][2]float64{
		"white oak": {0.00365, 0.00180}, "red oak": {0.00369, 0.00158}, "white ash": {0.00274, 0.00169}, "hickory": {0.00411, 0.00259},
		"western redcedar": {0.00234, 0.00111}, "Douglas-fir": {0.00267, 0.00165}, "yellow-poplar": {0.00289, 0.00158}, "eastern white pine": {0.00212, 0.00071},
	}
	for _, s := range All() {
		near(t, s.Tangential, want[s.Name][0], 0, s.Name+", along the rings")
		near(t, s.Radial, want[s.Name][1], 0, s.Name+", square to them")
	}
}

// TestLittleWoodsBend: the woods that old bending tables call the best, ash, oak, elm,
// hickory and locust, bend steamed without a strap to 15 times their thickness or
// less; the cedars and spruces that battens are made of do not come near that.
func TestLittleWoodsBend(t *testing.T) {
	for _, name := range []string{"white ash", "black ash", "white oak", "red oak", "American elm", "hickory", "black locust", "European ash", "European oak"} {
		if s := wood(t, name); s.FreeRatio > 15 || s.StrapRatio > 6 {
			t.Errorf("%s bends to %g, with a strap to %g", name, s.FreeRatio, s.StrapRatio)
		}
	}
	for _, name := range []string{"western redcedar", "Sitka spruce", "white spruce"} {
		if s := wood(t, name); s.FreeRatio < 30 {
			t.Errorf("%s bends to %g", name, s.FreeRatio)
		}
	}
}
