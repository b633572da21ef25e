package afloat

import (
	"errors"
	"math"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/water"
	"ribwright/geometry/water/float"
	"ribwright/geometry/wood/timber"
)

// TestLooseRibs: ribs as drawn leave the boat as drawn, and so do ribs whose shape is not
// known; ribs only pushed in carry the same load, on the buoyancy that the sections
// themselves tell: fuller low down, so less deep, on a narrower waterline.
func TestLooseRibs(t *testing.T) {
	ash, err := timber.Lookup("white ash")
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, 15)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
		if err != nil {
			t.Fatal(err)
		}
		same, none := make([]pushed.Rib, len(f.Ribs)), make([]pushed.Rib, len(f.Ribs))
		for i, r := range f.Ribs {
			h := pushed.Head{Half: r.Section.Half, Flare: r.Section.Shape.Flare}
			same[i], none[i] = pushed.Rib{Hinged: h, Clamped: h}, pushed.Rib{Why: errors.New("no rest")}
		}
		for _, ribs := range [][]pushed.Rib{same, none} {
			if l := LooseRibs(b, ribs, w); l.Hinged != l.Drawn || l.Clamped != l.Drawn || l.Drawn.Fault != nil {
				t.Errorf("%s as drawn: GM %.3f and %.3f, drawn %.3f", name, l.Hinged.Rest.GM, l.Clamped.Rest.GM, l.Drawn.Rest.GM)
			}
		}
		ribs := pushed.Of(f, ash)
		l := LooseRibs(b, ribs, w)
		for _, v := range []Lying{l.Hinged, l.Clamped} {
			if v.Fault != nil || math.Abs(v.Rest.Displacement-l.Drawn.Rest.Displacement) > 1e-6*l.Drawn.Rest.Displacement {
				t.Errorf("%s: %v, %.3f kg for %.3f", name, v.Fault, v.Rest.Displacement, l.Drawn.Rest.Displacement)
			}
			if v.Rest.Draft >= l.Drawn.Rest.Draft || v.Rest.BWL >= l.Drawn.Rest.BWL || v.Rest.KB >= l.Drawn.Rest.KB {
				t.Errorf("%s: draft %.1f, breadth %.1f, KB %.1f; drawn %.1f, %.1f, %.1f", name, v.Rest.Draft, v.Rest.BWL, v.Rest.KB, l.Drawn.Rest.Draft, l.Drawn.Rest.BWL, l.Drawn.Rest.KB)
			}
		}
		for i := range same {
			same[i].Clamped = ribs[i].Clamped
		}
		if m := LooseRibs(b, same, w); m.Hinged != l.Drawn || m.Clamped != l.Clamped {
			t.Errorf("%s: loose heads and tight ones are mixed up", name)
		}
		t.Logf("%s: GM %.0f drawn, %.0f hinged, %.0f clamped", name, l.Drawn.Rest.GM, l.Hinged.Rest.GM, l.Clamped.Rest.GM)
		b.Gear = nil
		b.Parts = append(b.Parts, b.Parts[0])
		b.Parts[len(b.Parts)-1].Loads = []float.Load{{Mass: 1e5}}
		if l := LooseRibs(b, ribs, w); l.Drawn.Fault == nil || l.Hinged.Fault == nil {
			t.Errorf("%s carries 100 tonnes", name)
		}
	}
}
