package afloat

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
)

// TestCarried: the boat balances where its parts do, by their moments; a yoke farther off
// than 50 mm is missed, with a place between ribs that the same finding accepts.
func TestCarried(t *testing.T) {
	d := shipped(t, "lake")
	d.Thwarts[0].At = 65
	r := run(t, d)
	moment, mass := 0.0, 0.0
	for _, p := range r.Boat.Parts {
		for _, l := range p.Loads {
			moment, mass = moment+l.Mass*l.At.X, mass+l.Mass
		}
	}
	if c := r.Carried; math.Abs(c.Balance-moment/mass) > 1e-9 || math.Abs(c.Mass-mass) > 1e-9 || c.By != "Yoke" || c.At != 65 {
		t.Errorf("%+v, want %g kg at %g mm", c, mass, moment/mass)
	}
	f := finding.Finding{}
	for _, v := range r.Findings {
		if v.About == "carrying" {
			f = v
		}
	}
	if f.Verdict != finding.Missed || !strings.Contains(f.Cure, "Yoke at -65.0 mm") {
		t.Errorf("%+v", f)
	}
	for _, name := range design.ShippedNames() {
		if c := run(t, shipped(t, name)).Carried; math.Abs(c.Off()) > CarryWithin {
			t.Errorf("%s is carried %.0f mm off its balance", name, c.Off())
		}
	}
}

// TestSwampedTold: with none, the boat says what it lacks; with people holding on and
// sitting, how it lies.
func TestSwampedTold(t *testing.T) {
	d := shipped(t, "brook")
	r := run(t, d)
	if text := r.about("swamped, people holding on"); !strings.Contains(text, "floats upright with the sheer") {
		t.Errorf("holding on: %q", text)
	}
	sit := r.Swamped.Fitted[1]
	if text := r.about("swamped, people sitting in it"); !sit.Upright() || strings.Contains(text, "hardly upright") != (sit.GM < steady) {
		t.Errorf("sitting, GM %.0f mm: %q", sit.GM, text)
	}
	d.Inside.Flotation = design.NoFlotation
	if r = run(t, d); !strings.Contains(r.about("swamped"), "has no flotation") || !strings.Contains(r.about("swamped, people sitting in it"), "it sinks") {
		t.Errorf("%q, %q", r.about("swamped"), r.about("swamped, people sitting in it"))
	}
	if weight.Sum(r.Boat.Parts).Mass >= run(t, shipped(t, "brook")).Carried.Mass {
		t.Error("flotation weighs nothing")
	}
}
