package afloat

import (
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/design"
	"ribwright/geometry/water"
)

// TestClothFinding moves a stringer off the bilge: the ribs that come through are
// told of with a change that, made, ends the finding.
func TestClothFinding(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	told := func() string {
		f, err := frame.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		b, err := aboard.New(f, d.Crew, d.Gear)
		if err != nil {
			t.Fatal(err)
		}
		r, err := Run(b, Options{Water: water.Water{Density: 1000, Viscosity: 1.1e-6}, Freeboard: 150, Speeds: []float64{1}})
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range r.Findings {
			if v.About == "skin" {
				return v.Text
			}
		}
		return ""
	}
	if text := told(); text != "" {
		t.Errorf("the shipped boat: %s", text)
	}
	d.Stringers.At = []float64{0.27, 0.5, 0.74}
	text := told()
	for _, want := range []string{"between stringer 2 and stringer 3", "rib M stands 4.1 mm", "of A5 to F5", "move stringer 3 from 0.74 to 0.7"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not say %q", text, want)
		}
	}
	f, err := frame.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	cure, _ := skin.CureOf(f)
	d.Stringers.At = cure.At
	if text := told(); text != "" {
		t.Errorf("cured by %v: %s", cure.At, text)
	}
}
