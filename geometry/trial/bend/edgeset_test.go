package bend

import (
	"fmt"
	"math"
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
	made := func(mm float64) *Report {
		return report(t, "river", func(d *design.Design) {
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft, d.Gunwale.EdgeSetMade = 90, 60, measure.Length(mm)
		})
	}
	for _, had := range []float64{0, 10} { // some may be made already
		var make float64
		f := found(t, made(had), about)
		if _, err := fmt.Sscanf(f.Cure, "saw or laminate %f mm of it into the gunwales (gunwale.edge_set_made)", &make); err != nil || make <= had {
			t.Fatalf("with %.0f mm made: %q: %v", had, f.Cure, err)
		}
		if f := found(t, made(make), about); f.Verdict != finding.Holds || f.Cure != "" {
			t.Errorf("with %.0f mm made: %+v", make, f)
		}
		if f := found(t, made(make-5), about); f.Verdict.Passes() {
			t.Errorf("5 mm less than %.0f mm made do as well", make)
		}
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

// TestAllMade: a set that is all made leaves no stress in the tall way, no force on foot or
// end rib and no finding of a spring, and its grain runs out by the slope of the curve:
// 2 e/run, the stock leaning. An outwale that goes on straight is bent by all of it still.
func TestAllMade(t *testing.T) {
	with := func(made measure.Length) *Report {
		return report(t, "river", func(d *design.Design) { d.Gunwale.EdgeSetMade = made })
	}
	r, sprung := with(54), with(0)
	if r.EdgeSet != nil || len(r.Gunwale.EdgeSets) != 0 || r.Joints.Head.Glued != 0 {
		t.Errorf("all is made, and held: %+v, %+v, %d ribs glued", r.EdgeSet, r.Gunwale.EdgeSets, r.Joints.Head.Glued)
	}
	for _, x := range r.Boat.Rests(r.AtRest) {
		if x.Edge != 0 {
			t.Fatalf("%.2f N/mm2 from edge-set at %.0f mm", x.Edge, x.X)
		}
	}
	for _, f := range r.Findings {
		if strings.Contains(f.About, "edge-set") {
			t.Errorf("all is made: %s", f)
		}
	}
	near(t, "outwale", r.Outside.Outwales.Value, sprung.Outside.Outwales.Value, 1e-9)
	const about = "slope of grain where the sheer is sawn into the gunwales, 1 in"
	run := r.Frame.Hull.Bow.GunwaleX - float64(r.Frame.Design.Gunwale.EdgeSetFrom)
	f := found(t, r, about)
	near(t, "grain", f.Value, run/(2*54*math.Cos(10.5*math.Pi/180)), 1e-6)
	if f.Verdict != finding.Holds {
		t.Errorf("%+v", f)
	}
	steep := report(t, "river", func(d *design.Design) {
		d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetMade = 100, 100
	})
	if f := found(t, steep, about); f.Verdict != finding.Caution || !strings.Contains(f.Cure, "laminate") {
		t.Errorf("1 in 9: %+v", f)
	}
}
