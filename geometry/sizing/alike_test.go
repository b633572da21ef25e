package sizing

import (
	"math"
	"slices"
	"testing"

	"ribwright/geometry/sizing/family"
)

// TestAlike: boats that share a board have sections in whole steps and one share of their
// length as pitch, as the family's file says; and they stand as well as those that do not:
// no check fails that did not fail before.
func TestAlike(t *testing.T) {
	pitches := map[string]float64{"pack": 0.0355, "solo": 0.0304, "tandem": 0.0286} // of the length, written in the families
	for _, name := range family.Names() {
		f := shipped(t, name)
		steps := map[int]bool{}
		bodies := some(8, 24)
		for n := range bodies {
			b := Trying{Family: f}.Body(n)
			own, err := Size(f, b)
			if err != nil {
				t.Fatal(err)
			}
			a, err := SizeAlike(f, b, Sharing{})
			if err != nil {
				t.Fatal(err)
			}
			fill := a.Case.run.Number("fill")
			if steps[a.Step] = true; math.Abs(fill-float64(a.Step)/2) > 1e-12 || fill < own.Case.run.Number("fill")-0.03 {
				t.Errorf("%s %d: fill %.3f at step %d, %.3f without steps", name, n, fill, a.Step, own.Case.run.Number("fill"))
			}
			if off := float64(a.Design.Ribs.Pitch) - pitches[name]*a.Case.run.Number("length"); math.Abs(off) > 1e-5 {
				t.Errorf("%s %d: the pitch is %.6f mm off its share of the length", name, n, off)
			}
			var failed []string
			for _, v := range own.Failures() {
				failed = append(failed, v.About)
			}
			for _, v := range a.Failures() {
				if !slices.Contains(failed, v.About) {
					t.Errorf("%s %d: fails newly: %s", name, n, v)
				}
			}
		}
		if len(steps) < 2 {
			t.Errorf("%s: all of %d bodies come to one step", name, bodies)
		}
	}
}

// TestWiderAlike: a boat that is asked wider is as much wider, and its section no fuller.
func TestWiderAlike(t *testing.T) {
	f := shipped(t, "pack")
	for n := range some(4, 12) {
		b := Trying{Family: f}.Body(n)
		own, err := SizeAlike(f, b, Sharing{})
		if err != nil {
			t.Fatal(err)
		}
		wide, err := SizeAlike(f, b, Sharing{Wider: 12})
		if err != nil {
			t.Fatal(err)
		}
		base, err := Size(f, b)
		if err != nil {
			t.Fatal(err)
		}
		if by := float64(wide.Design.Hull.Beam - base.Design.Hull.Beam); math.Abs(by-12) > 1 || wide.Step > own.Step {
			t.Errorf("body %d: %.0f mm wider, section %d after %d", n, by, wide.Step, own.Step)
		}
	}
}
