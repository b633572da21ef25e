package bend

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
)

// TestOutwale: without edge-set an outwale bends only about its weak way, as its gunwale
// does: stress E t / (2 R) at the tightest radius of the gunwale (beam theory), and one
// twice as thick bears twice as much.
func TestOutwale(t *testing.T) {
	for _, name := range design.ShippedNames() {
		with := func(thick float64) *Report {
			return report(t, name, func(d *design.Design) {
				d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
				d.Outside.Outwale = measure.Length(thick)
			})
		}
		r := with(6)
		wood, err := r.Frame.Design.Wood(r.Outside.Wood)
		if err != nil {
			t.Fatal(err)
		}
		f := found(t, r, "outwale")
		want := wood.MOE * 6 / (2 * r.Gunwale.Radius)
		if math.Abs(f.Value/want-1) > 1e-9 {
			t.Errorf("%s: %.2f N/mm2, a gunwale of that radius %.2f", name, f.Value, want)
		}
		if twice := found(t, with(12), "outwale"); math.Abs(twice.Value/f.Value-2) > 1e-9 {
			t.Errorf("%s: twice as thick %.2f N/mm2, once %.2f", name, twice.Value, f.Value)
		}
		if v := found(t, r, "strip under the keel"); v.Verdict != finding.Dry {
			t.Errorf("%s: %+v", name, v)
		}
	}
}

// TestSprungOutwale: an edge-set bends it in its tall way too: rise R over a run s is a
// radius of s2 / (2 R), and the two stresses meet at a corner.
func TestSprungOutwale(t *testing.T) {
	with := func(rise float64) (*Report, finding.Finding) {
		r := report(t, "brook", func(d *design.Design) {
			d.Outside.Outwale, d.Outside.OutwaleHeight = 8, 24
			d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = measure.Length(rise), measure.Length(rise)
		})
		return r, found(t, r, "outwale")
	}
	r, sprung := with(30)
	_, flat := with(0)
	wood, err := r.Frame.Design.Wood(r.Outside.Wood)
	if err != nil {
		t.Fatal(err)
	}
	run := r.Frame.Hull.Bow.GunwaleX - float64(r.Frame.Design.Gunwale.EdgeSetFrom)
	near(t, "more for 30 mm of rise", sprung.Value-flat.Value, wood.MOE*24/2*2*30/(run*run), 0.2)
}

// TestThickOutwale: one too thick for its bend does not pass as bent dry, and says how thin
// it must be; without one nothing is judged.
func TestThickOutwale(t *testing.T) {
	r := report(t, "lake", func(d *design.Design) { d.Outside.Outwale = 40 })
	if f := found(t, r, "outwale"); f.Verdict == finding.Dry || f.Verdict == finding.Holds {
		t.Errorf("40 mm: %+v", f)
	}
	r = report(t, "lake", func(d *design.Design) { d.Outside.Outwale, d.Outside.KeelStrip = 0, 0 })
	for _, f := range r.Findings {
		if f.About == "outwale" || f.About == "strip under the keel" {
			t.Errorf("%+v", f)
		}
	}
}

// TestOutwalePulled: the end screw holds E I / R over the way to the next one, by beam theory;
// in shipped boats it bears that. A low outwale is told of, and a thick one pulls harder.
func TestOutwalePulled(t *testing.T) {
	r := report(t, "lake", nil)
	o := r.Outside.Outwale
	f := about(r, "outwale's screws")
	flat, _ := r.gunwaleBends()
	ash, _ := r.Frame.Design.Wood("white ash")
	if len(f) != 1 || f[0].Verdict != finding.Holds {
		t.Fatalf("%+v", f)
	}
	near(t, "pull", f[0].Value, ash.MOE*20*9*9*9/12*flat/(o.Screws[1]-o.Screws[0]), 1e-6)
	for _, name := range design.ShippedNames() {
		for _, f := range about(report(t, name, nil), "outwale's screws") {
			if !f.Verdict.Passes() {
				t.Errorf("%s: %+v", name, f)
			}
		}
	}
	thick := about(report(t, "lake", func(d *design.Design) { d.Outside.Outwale = 14 }), "outwale's screws")
	if len(thick) != 1 || !(thick[0].Value > 2*f[0].Value) {
		t.Errorf("%+v", thick)
	}
	low := report(t, "lake", func(d *design.Design) { d.Outside.OutwaleHeight = 14 })
	i := slices.IndexFunc(low.Findings, func(f finding.Finding) bool { return strings.Contains(f.Text, "outside.outwale_height 18 mm") })
	if i < 0 {
		t.Error("a low outwale is not told of")
	}
}
