package aboard

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// TestLoad weighs Lake with people, gear and an outfit of known masses: sums and
// moments by hand.
func TestLoad(t *testing.T) {
	f := frametest.Shipped(t, "lake", nil)
	people := []design.Person{{Name: "A", Mass: 60, At: 500}, {Name: "B", Mass: 80, At: -400}}
	b, err := New(f, people, []design.Gear{{Name: "Bag", Mass: 10, At: 1000}})
	if err != nil {
		t.Fatal(err)
	}
	b.Outfits = []weight.Item{{Name: "Rig", Loads: []float.Load{{Mass: 5, At: geometry.Point3{X: 200, Z: 900}}}}}
	own, light, all := b.Own(), b.Light(), b.Load(float.Load{Mass: 1})
	if math.Abs(light.Mass-own.Mass-5) > 1e-9 || math.Abs(all.Mass-own.Mass-156) > 1e-9 {
		t.Errorf("%.3f kg itself, %.3f kg with outfits, %.3f kg all up", own.Mass, light.Mass, all.Mass)
	}
	want := (own.Mass*own.At.X + 5*200 + 60*500 - 80*400 + 10*1000) / all.Mass
	if math.Abs(all.At.X-want) > 1e-9 {
		t.Errorf("all up lies at %.6f mm, want %.6f", all.At.X, want)
	}
	if len(b.Notes) > 0 || len(b.Aboard()) != 3 || len(b.People) != len(b.Crew) {
		t.Errorf("%d aboard, notes %q", len(b.Aboard()), b.Notes)
	}
	if high := b.Floor(0); math.Abs(high-float64(f.Design.Skin.Thickness()+f.Design.Keel.Depth+f.Design.Ribs.Thickness)) > 1e-9 {
		t.Errorf("the floor lies %.3f mm up", high)
	}
	if nobody, _ := New(f, nil, nil); len(nobody.Notes) != 1 || !strings.Contains(nobody.Notes[0], "nobody is aboard") {
		t.Errorf("with nobody aboard: %q", nobody.Notes)
	}
}

// TestOfHull: a hull's whole weight lies amidships at the height given, or at the
// assumed one, which is told.
func TestOfHull(t *testing.T) {
	known := []string{"stations are counted from midship"}
	for _, c := range []struct{ given, want float64 }{{200, 200}, {0, AssumedHeight}} {
		b := OfHull("Box", &float.Hull{}, known, 120, c.given)
		if l := b.Load(); l != (float.Load{Mass: 120, At: geometry.Point3{Z: c.want}}) {
			t.Errorf("%+v, want 120 kg at %.0f mm", l, c.want)
		}
		if told := len(b.Notes) > len(known); told != (c.given == 0) || b.Frame != nil || b.Own().Mass != 0 {
			t.Errorf("height %.0f mm given: notes %q", c.given, b.Notes)
		}
	}
}
