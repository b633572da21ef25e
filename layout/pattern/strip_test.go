package pattern

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// TestCrossPiecesOnStrip: on the gunwale strip each dashed edge of a cross piece has the word
// for it beside it, and the circles of its bolts say how wide they are bored.
func TestCrossPiecesOnStrip(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		d := Mortises(bent(t, f), units)
		for i, c := range f.Thwarts {
			at, wide := c.At, float64(f.Design.Thwarts[i].Width)/2
			if d.Turns {
				at, _ = folded(at)
			}
			for _, x := range []float64{f.Gunwale.OnStock(at - wide), f.Gunwale.OnStock(at + wide)} {
				if !said(d, "edge", x, 2) {
					t.Errorf("%s: no word beside its edge at %.1f mm", c.Name, x)
				}
			}
			if !said(d, "holes "+units.Drill(c.Hole), f.Gunwale.OnStock(at), 0.5) {
				t.Errorf("%s: its holes have no width", c.Name)
			}
		}
	})
}

// said reports whether words have their place so near to a place along a strip.
func said(d layout.Drawing, words string, x, near float64) bool {
	for _, w := range d.Texts {
		if strings.HasPrefix(w.Words, words) && math.Abs(w.At.X-x) < near {
			return true
		}
	}
	return false
}

// TestStepApart: left of a stem's station line no words end so near to it that they are read on
// into those behind it in the same row: 5 mm (our own choice).
func TestStepApart(t *testing.T) {
	each(t, func(t *testing.T, f *frame.Frame, units measure.System) {
		b := bent(t, f)
		for end, s := range []frame.Stem{f.Stern, f.Bow} {
			d := Stem(b, end, "stem", "Stem", "make 1", units)
			for _, x := range d.Texts {
				for _, y := range d.Texts {
					gap := y.Bounds().Min.X - x.Bounds().Max.X
					if x.Angle == 0 && y.Angle == 0 && math.Abs(x.At.Y-y.At.Y) < 1 && x.Bounds().Max.X < s.ToeX && y.Bounds().Min.X > s.ToeX && gap < 5 {
						t.Errorf("%q is read on into %q, %.1f mm behind it", x.Words, y.Words, gap)
					}
				}
			}
		}
	})
}
