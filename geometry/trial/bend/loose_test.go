package bend

import (
	"errors"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/trial/pushed"
)

// TestLoose: every rib tells what it does when it is only pushed in, where it stands off
// its line has the name of the bend there, and a rib that finds no rest is noted and
// fails nothing.
func TestLoose(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	r, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	for i, rib := range r.Ribs {
		for _, a := range []pushed.Apart{rib.Pushed.Hinged.Out, rib.Pushed.Clamped.In} {
			along, want := 0.0, ""
			for j, b := range f.Ribs[i].Section.Half {
				if along += b.Length; a.At <= along && want == "" {
					want = rib.Parts[j]
				}
			}
			if got := rib.Where(a); got != want || got == "" {
				t.Errorf("rib %s, %.0f mm along: %q, want %q", rib.Name, a.At, got, want)
			}
		}
	}
	if got := (Rib{}).Where(pushed.Apart{Bend: 3}); got != "section" {
		t.Errorf("a bend without a name is called %q", got)
	}
	before := len(r.Findings)
	r.Ribs[0].Pushed = pushed.Rib{Why: errors.New("half of it is 10.0 mm long and its heads stand 20.0 mm from the keel")}
	r.loose()
	if len(r.Findings) != before+1 {
		t.Fatalf("%d findings more, want 1", len(r.Findings)-before)
	}
	f0 := r.Findings[before]
	if words := f0.String(); !strings.Contains(words, "rib A13 only pushed in: half of it is 10.0 mm long") || !f0.Verdict.Passes() || f0.Cure == "" {
		t.Error(words)
	}
}
