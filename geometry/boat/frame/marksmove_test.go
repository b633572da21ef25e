package frame_test

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
)

// TestMarksMove: where a rib is longer for more beam or depth, its bend marks move as the two
// equations of a section say, whose turns and bilge radius stay: for b and d more
//
//	sin(t1) dR + cos(t2) ds = db
//	(1 - cos(t1)) dR + sin(t2) ds = dd
//
// the bottom grows by t1 dR and the topside by ds.
func TestMarksMove(t *testing.T) {
	f := frametest.Shipped(t, "brook", nil)
	all, err := frame.Corrections(f)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range f.Ribs {
		half := r.Section.Half
		if len(half) != 3 {
			t.Fatalf("rib %s has %d pieces", r.Name, len(half))
		}
		t1 := half[0].Sweep
		t2 := t1 + half[1].Sweep
		a, b, c, d := math.Sin(t1), math.Cos(t2), 1-math.Cos(t1), math.Sin(t2)
		det := a*d - b*c
		for _, v := range []struct {
			what           string
			db, dd         float64
			mark, wholeRib float64
		}{{"beam", 0.5, 0, all[i].MarkBeam, all[i].Beam}, {"depth", 0, 1, all[i].MarkDepth, all[i].Depth}} {
			dR, ds := (d*v.db-b*v.dd)/det, (a*v.dd-c*v.db)/det
			if math.Abs(v.mark-t1*dR) > 0.005 || math.Abs(v.wholeRib-2*(t1*dR+ds)) > 0.01 {
				t.Errorf("rib %s, 1 mm more %s: marks move %.4f, want %.4f; longer by %.4f, want %.4f", r.Name, v.what, v.mark, t1*dR, v.wholeRib, 2*(t1*dR+ds))
			}
		}
	}
}
