package bend

import (
	"math"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/wood/timber"
)

// TestDrying: stock steamed wet shrinks by its thickness times the coefficient of its
// wood times what it dries; dry stock does not, and the moistest bend decides.
func TestDrying(t *testing.T) {
	for _, moisture := range []float64{10, 12, 20} {
		r := report(t, "lake", func(d *design.Design) { d.Bending.Moisture = moisture })
		want := float64(r.Frame.Design.Ribs.Thickness) * r.Boat.Ribs.Tangential * math.Max(0, moisture-timber.ServiceMoisture)
		if math.Abs(r.Shrink-want) > 1e-12 {
			t.Errorf("from %.0f %%: %.3f mm, want %.3f", moisture, r.Shrink, want)
		}
		least := 0.0
		for _, rib := range r.Ribs {
			for _, a := range rib.Arcs {
				least = math.Max(least, timber.LeastMoisture(a.Band))
			}
		}
		if r.LeastMoisture != least {
			t.Errorf("bends want %.0f %%, want %.0f", r.LeastMoisture, least)
		}
	}
}

// TestSquareTenon: the corners of the widest square tenon lie on the half-round ends
// of the mortise.
func TestSquareTenon(t *testing.T) {
	r := report(t, "lake", nil)
	m, thick := r.Frame.Gunwale.Mortises[0], float64(r.Frame.Design.Ribs.Thickness)
	corner := math.Hypot((r.SquareTenon-(m.Length-m.Width))/2, thick/2)
	if math.Abs(corner-m.Width/2) > 1e-9 {
		t.Errorf("the corner lies %.3f mm from the middle of an end of %.3f mm radius", corner, m.Width/2)
	}
}
