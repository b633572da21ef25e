package pattern

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestMiddlePly: every block stands on the pattern at its full size, as tall as a mortise
// is deep, between the places of the slots that the strip of the mortises shows, and its
// number and length are lettered; a half shows the blocks of both halves.
func TestMiddlePly(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, func(d *design.Design) { d.Gunwale.Mortises = design.ByGap })
		b := bent(t, f)
		all := All(b, measure.Metric, Strips)
		if all[1].Name != "middle-ply" {
			t.Fatalf("%s: the second pattern is %s", name, all[1].Name)
		}
		d, g := all[1], &f.Gunwale
		boxes := map[string]bool{}
		for _, s := range d.Strokes {
			if s.Pen == layout.Cut && s.Path.Closed() {
				k := s.Path.Bounds()
				boxes[fmt.Sprintf("%.3f %.3f %.3f %.3f", k.Min.X, k.Min.Y, k.Max.X, k.Max.Y)] = true
			}
		}
		half, said, drawn := f.Design.EndsAlike(), words(d), 0
		for i, z := range g.Blocks {
			if half && z.To <= 0 {
				continue
			}
			drawn++
			from := z.From
			if half {
				from = math.Max(from, -20)
			}
			if want := fmt.Sprintf("%.3f %.3f %.3f %.3f", from, 0.0, z.To, g.Mortises[0].Depth); !boxes[want] {
				t.Errorf("%s: block %d is not drawn at %s", name, i+1, want)
			}
			if want := measure.MM(z.To-z.From, 1) + " mm"; z.From >= 0 && !strings.Contains(said, want) {
				t.Errorf("%s: no block is said to be %s long", name, want)
			}
		}
		if extra := len(boxes) - drawn; extra < 1 || extra > 2 { // the gauge, and what a half shows over midship
			t.Errorf("%s: %d outlines to cut for %d blocks and a gauge", name, len(boxes), drawn)
		}
		if !strings.Contains(said, fmt.Sprintf("%d of hardwood, waxed", len(g.Mortises))) {
			t.Errorf("%s: the count of gauges is not said: %s", name, said)
		}
		for i, a := range d.Texts {
			for _, c := range d.Texts[:i] {
				if overlap(a, c) {
					t.Errorf("%s: %q lies on %q", name, a.Words, c.Words)
				}
			}
		}
		if _, err := Guide(f, 16, 6); err == nil || !strings.Contains(err.Error(), `gunwale.mortises = "cut"`) {
			t.Errorf("%s: a router guide for gaps: %v", name, err)
		}
	}
	if cut := All(bent(t, frametest.Shipped(t, "brook", nil)), measure.Metric, Strips); cut[1].Name == "middle-ply" {
		t.Error("a gunwale with cut mortises has a pattern of its middle ply")
	}
}
