package json

import (
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/water"
)

// TestRowNotAfloat: no figure that depends on the water is given of a boat that does
// not float under its rower.
func TestRowNotAfloat(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	b, err := aboard.New(f, weight.People(f.Design), f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	r := f.Design.Row()
	r.Mass, r.SeatAt = 200, 1000
	fit, err := rowing.New(b, r, w)
	if err != nil {
		t.Fatal(err)
	}
	got := parsed(t)(Row(fit, nil))
	if _, there := got["pages"]; there {
		t.Error("there are pages without sheets")
	}
	row := got["row"].(map[string]any)
	for _, key := range []string{"trim_deg", "freeboard_min_mm", "gm_mm", "rowlock_over_water_mm", "handle_driving_over_seat_mm", "hands_over_legs_mm"} {
		if v, there := row[key]; !there || v != nil {
			t.Errorf("%s is %v", key, v)
		}
	}
}
