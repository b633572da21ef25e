package figure

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/water"
	"ribwright/layout"
)

func tried(t *testing.T, name string, posture design.Posture, mass float64) *afloat.Report {
	t.Helper()
	f := frametest.Shipped(t, name, func(d *design.Design) { d.Crew[0].Posture, d.Crew[0].Mass = posture, mass })
	b, err := aboard.New(f, f.Design.Crew, f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Salt, 10)
	if err != nil {
		t.Fatal(err)
	}
	r, err := afloat.Run(b, afloat.Options{Water: w, Freeboard: 150, Speeds: []float64{1, 2, 3}})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestSheet draws all four plots and the sheer plan, whose waterline lies at the
// draft in the plan's own scale, and letters over each other nowhere.
func TestSheet(t *testing.T) {
	for _, name := range design.ShippedNames() {
		r := tried(t, name, design.Floor, 70)
		d := Afloat(r, measure.Metric)
		for _, want := range []string{"Righting lever", "Displacement and least freeboard, level", "Effort, for comparing designs", "Power at the paddle", "water comes in", "buoyancy"} {
			found := false
			for _, w := range d.Texts {
				found = found || strings.Contains(w.Words, want)
			}
			if !found {
				t.Errorf("%s: no %q is lettered", name, want)
			}
		}
		for i, a := range d.Texts {
			for _, b := range d.Texts[i+1:] {
				if over := overlap(a, b); over > 1.5 {
					t.Errorf("%s: %q and %q lie %.1f mm over each other", name, a.Words, b.Words, over)
				}
			}
		}
		if b := d.Bounds(); b.W() > 330 || b.H() > 330 || !b.Min.Finite() {
			t.Errorf("%s: %.0f by %.0f mm", name, b.W(), b.H())
		}
		if !strings.Contains(AfloatAbout(r), r.Boat.Title) {
			t.Errorf("%s: about %q", name, AfloatAbout(r))
		}
	}
	if d := Afloat(tried(t, "brook", design.Bench, 120), measure.Metric); len(d.Strokes) == 0 {
		t.Error("a boat that does not stay upright draws nothing")
	}
}

// overlap is how far two level texts lie over each other, mm, the lesser way.
func overlap(a, b layout.Text) float64 {
	if a.Angle != 0 || b.Angle != 0 {
		return 0
	}
	p, q := a.Bounds(), b.Bounds()
	w := math.Min(p.Max.X, q.Max.X) - math.Max(p.Min.X, q.Min.X)
	h := math.Min(p.Max.Y, q.Max.Y) - math.Max(p.Min.Y, q.Min.Y)
	return math.Min(w, h)
}
