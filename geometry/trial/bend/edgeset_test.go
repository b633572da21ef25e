package bend

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
)

// TestEdgeSetLetGo: a set that the frame cannot hold is told with its cure, and the boat
// that follows the cure passes; a boat without a set is not judged.
func TestEdgeSetLetGo(t *testing.T) {
	with := func(bow, stern float64) *Report {
		return report(t, "river", func(d *design.Design) {
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = measure.Length(bow), measure.Length(stern)
		})
	}
	const about = "edge-set, frame let go"
	f := found(t, with(90, 90), about)
	if f.Verdict != finding.Missed || f.Value <= f.Limit {
		t.Fatalf("%+v", f)
	}
	var bow, stern float64
	_, rise, _ := strings.Cut(f.Cure, "or give it ")
	if _, err := fmt.Sscanf(rise, "%f mm of rise at the bow and %f mm", &bow, &stern); err != nil || !(bow < 90 && stern < 90) {
		t.Fatalf("%q: %v", f.Cure, err)
	}
	if f := found(t, with(bow, stern), about); f.Verdict != finding.Holds || f.Cure != "" {
		t.Errorf("with %.0f and %.0f mm: %+v", bow, stern, f)
	}
	if r := with(0, 0); r.EdgeSet != nil {
		t.Error("a boat without edge-set is judged")
	}
	for _, f := range with(0, 0).Findings {
		if strings.Contains(f.About, "edge-set") {
			t.Errorf("without edge-set: %s", f)
		}
	}
}

// TestKeelHoldsEdgeSet: a limp keel is bent by holding the set; its stress is its moment
// over b h²/6.
func TestKeelHoldsEdgeSet(t *testing.T) {
	r := report(t, "river", func(d *design.Design) {})
	f := found(t, r, "keel, holding the edge-set")
	d := r.Frame.Design.Keel
	near(t, "stress", f.Value, max(r.EdgeSet.Free.Keel, r.EdgeSet.Usual.Keel)*6/float64(d.Width*d.Depth*d.Depth), 1e-9)
}
