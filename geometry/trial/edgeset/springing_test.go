package edgeset

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
)

// TestSpringing holds the pulls to the beam on two supports inside its ends, alike at both:
// between the trestles, a off midship, the moment N is even and the middle dips by N a²/(2 E I);
// each end, c beyond its trestle, comes w over the middle, with
//
//	E I w = N (a c + a²/2 + c²/3)
//
// and N/c on each support. Timoshenko, Strength of Materials.
func TestSpringing(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	m, err := modelOf(f)
	if err != nil {
		t.Fatal(err)
	}
	holds, err := m.springing(f)
	if err != nil {
		t.Fatal(err)
	}
	s, ei, a := f.Hull.Sheer.BowSet, m.Gunwales.Bend, holds[2].At
	near(t, "the trestle half way between F6 and F7", a, (750+875)/2.0, 1e-9)
	if holds[2].Between != [2]string{"F6", "F7"} || holds[1].Between != [2]string{"A7", "A6"} {
		t.Errorf("trestles stand between %v and %v", holds[1].Between, holds[2].Between)
	}
	c := m.Gunwales.To - a
	moment := ei * s.Rise / (a*c + a*a/2 + c*c/3)
	drawn := math.Pow(a-s.From, 2) / (2 * s.Radius())
	for i, want := range []float64{-moment / c, moment / c, moment / c, -moment / c} {
		near(t, "share of the pull", holds[i].Down/want, 1, 0.01)
	}
	near(t, "over what is drawn", holds[1].Over, moment*a*a/(2*ei)-drawn, 0.1)
	near(t, "both trestles", holds[1].Over, holds[2].Over, 1e-9)
}

// TestSpringingOneEnd: with a set at the bow alone, the stern asks for far less; few ribs leave the
// trestles at the quarters.
func TestSpringingOneEnd(t *testing.T) {
	f := frametest.Shipped(t, "lake", func(d *design.Design) { d.Gunwale.EdgeSetAft = 0 })
	r, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	if bow, stern := r.Holds[3].Down, r.Holds[0].Down; bow >= 0 || math.Abs(stern) > math.Abs(bow)/2 {
		t.Errorf("the bow is held with %.1f N, the stern with %.1f", bow, stern)
	}
	few := *f
	few.Ribs = []frame.Rib{f.Nearest(0)}
	if h := trestle(&few, 1); h.At != f.Hull.Length/4 || h.Between != [2]string{} {
		t.Errorf("with one rib the trestle stands at %v", h)
	}
}
