package sizing

import (
	"math"
	"math/rand/v2"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/family"
)

// TestSketchAgainstFrame holds the quick drawing to the finished frame with its own
// list of weights and its cloth from batten to batten, which are tested against
// closed forms and measured canoes in their own rooms: the shipped designs, and
// random boats of the families.
func TestSketchAgainstFrame(t *testing.T) {
	var all []*design.Design
	for _, name := range design.ShippedNames() {
		d, err := design.Shipped(name)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, d)
	}
	r := rand.New(rand.NewPCG(1, 1))
	for _, name := range family.Names() {
		f := shipped(t, name)
		for range 6 {
			boat, err := Size(f, briefFor(f, body.Random(r), 40*r.Float64()))
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, boat.Design)
		}
	}
	b := DefaultBrief()
	for _, d := range all {
		f, err := frame.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		at := seats{-400, 700}
		boat, err := aboard.New(f, d.Crew, d.Gear)
		if err != nil {
			t.Fatal(err)
		}
		want, _, err := b.floatFrame(boat, at)
		if err != nil {
			t.Fatal(err)
		}
		got, _, err := b.floatSketch(d, at, nil, densities{}, asked{true, true})
		if err != nil {
			t.Fatal(err)
		}
		for name, tol := range map[string]float64{
			"draft": 1.5, "freeboard": 2, "gm": 4, "km": 4, "boat_center": 12, "seat_width": 2.5, "partner_seat_width": 4,
			"extreme_beam": 1, "girth": 0.5, "gunwale_stick": 0.01, "waterline_length": 25, "waterline_beam": 4, "rib_stick": 10,
		} {
			if d := math.Abs(got[name] - want[name]); !(d <= tol) {
				t.Errorf("%s: %s %.1f mm by the sketch, %.1f mm by the frame", f.Design.Title, name, got[name], want[name])
			}
		}
		for name, share := range map[string]float64{"boat_weight": 0.025, "wetted": 0.015, "effort": 0.07 /* only for comparing, and most from the ends, which are straight in a sketch */, "tightest_rib": 0.01, "all_up": 0.01} {
			if d := math.Abs(got[name]/want[name] - 1); !(d <= share) {
				t.Errorf("%s: %s %.4g by the sketch, %.4g by the frame", f.Design.Title, name, got[name], want[name])
			}
		}
	}
}

// TestSketchCloth: at every rib the sketch wears the cloth of the finished frame. Its
// gunwales alone are simpler: their faces are taken square across the boat.
func TestSketchCloth(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		s, err := newSketch(f.Design)
		if err != nil {
			t.Fatal(err)
		}
		c, err := skin.Of(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range f.Ribs {
			want, got := c.At(r.Station), s.cloth.At(r.Station)
			if len(got) != len(want) {
				t.Fatalf("%s at rib %s: %d corners, want %d", name, r.Name, len(got), len(want))
			}
			rail := len(want) - 3 // the corner before the gunwale leans on it
			for k := range want {
				tol := 1e-9
				if k >= rail {
					tol = 1
				}
				if off := got[k].Sub(want[k]).Norm(); off > tol {
					t.Errorf("%s at rib %s: corner %d of the sketch lies %.3f mm off", name, r.Name, k, off)
				}
			}
		}
		for side, a := range s.cloth.Stations()[:endSketch] {
			if b := c.Stations()[2*side]; math.Abs(a-b) > 1e-3 {
				t.Errorf("%s: station %d of the sketch at %.3f mm, want %.3f", name, side, a, b)
			}
		}
	}
}
