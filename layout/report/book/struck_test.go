package book

import (
	"math"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/report"
)

// struck returns the words of a drawing that a line runs through, or other words lie on.
func struck(d layout.Drawing) []string {
	var out []string
	for i, t := range d.Texts {
		box := t.Bounds().Grow(-0.05)
		hit := false
		for _, s := range d.Strokes {
			pts := s.Path.Flatten(0.05)
			for k := 1; k < len(pts) && !hit; k++ {
				n := int(math.Ceil(pts[k].Sub(pts[k-1]).Norm()/0.2)) + 1
				for j := range n + 1 {
					hit = hit || box.Holds(pts[k-1].Lerp(pts[k], float64(j)/float64(n)))
				}
			}
		}
		for _, o := range d.Texts[:i] {
			hit = hit || box.Overlaps(o.Bounds().Grow(-0.25))
		}
		if hit {
			out = append(out, t.Words)
		}
	}
	return out
}

// TestNothingStruck: in no figure a line runs through words, or words lie on others.
func TestNothingStruck(t *testing.T) {
	for _, name := range []string{"brook", "lake", "river"} {
		for _, units := range []measure.System{measure.Metric, measure.Imperial} {
			if units == measure.Imperial && name != "lake" {
				continue // the longest words, on one boat
			}
			found := 0
			for _, b := range sharedBook(t, facts(t, shipped(t, name), units)).Blocks {
				f, ok := b.(report.Figure)
				if !ok {
					continue
				}
				found++
				for _, w := range struck(f.Drawing) {
					t.Errorf("%s, %v, %s: a line or other words lie on %q", name, units, f.Drawing.Name, w)
				}
			}
			if found < 8 {
				t.Errorf("%s: only %d figures of joints and seats", name, found)
			}
		}
	}
}

// TestStruck knows words that a line crosses from words beside it.
func TestStruck(t *testing.T) {
	var d layout.Drawing
	d.Write(0, 0, small, layout.Left, "crossed")
	d.Write(0, 10, small, layout.Left, "clear")
	d.Straight(layout.Mark, -5, 1, 30, 1)
	if got := struck(d); len(got) != 1 || got[0] != "crossed" {
		t.Errorf("struck: %v", got)
	}
}
