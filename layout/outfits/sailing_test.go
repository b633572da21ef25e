package outfits

import (
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
)

// sailed is a shipped boat under a sail of so many m2 with three reefs.
func sailed(t *testing.T, boat string, r design.Rig, area float64) *sail.Fit {
	t.Helper()
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	b := ladenBoat(t, boat)
	s := b.Frame.Design.Sail()
	s.Rig, s.Area, s.Reefs = r, area, 3
	f, err := sail.New(b, s, w)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestSailNotes: a sail that is carried to 7.9 m/s, where all sail comes down, has no
// reef to take in.
func TestSailNotes(t *testing.T) {
	lines := SailNotes(sailed(t, "lake", design.Vee, 0.5), Options{})[0].Lines
	if all := strings.Join(lines, " "); strings.Contains(all, "next reef") || !strings.Contains(all, "No reef is needed") {
		t.Errorf("%q", lines)
	}
}
