package outfits

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
)

// TestSailFirst: a sail that is carried to 7.9 m/s, where all sail comes down, has no
// reef to take in.
func TestSailFirst(t *testing.T) {
	b := manned(t, "lake", nil).Boat
	s := b.Frame.Design.Sail()
	s.Rig, s.Area, s.Reefs = design.Vee, 0.5, 3
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	f, err := sail.New(b, s, w)
	if err != nil {
		t.Fatal(err)
	}
	lines := SailFirst(f, measure.Metric).Notes[0].Lines
	if all := strings.Join(lines, " "); strings.Contains(all, "next reef") || !strings.Contains(all, "No reef is needed") {
		t.Errorf("%q", lines)
	}
}
