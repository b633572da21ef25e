package skin

import (
	"math"
	"testing"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

func cover(t testing.TB, f *frame.Frame) *Cloth {
	t.Helper()
	c, err := Of(f)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestDesigned holds the outside to what the design file says: its length, the
// keel's skin on the baseline, the sheer at the gunwale's upper edge outside the
// designed beam.
func TestDesigned(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		h := cover(t, f).Hull
		aft, fore := h.Ends()
		if l := float64(f.Design.Hull.Length); math.Abs(fore-aft-l) > 0.5 {
			t.Errorf("%s: %.2f mm long, designed %.0f mm", name, fore-aft, l)
		}
		if math.Abs(h.Deepest()) > 0.05 {
			t.Errorf("%s: the lowest skin lies at %.3f mm, want the baseline", name, h.Deepest())
		}
		d := f.Design
		cos, sin := math.Cos(float64(d.Gunwale.Tilt)), math.Sin(float64(d.Gunwale.Tilt))
		top := float64(d.Hull.Depth+d.Skin.Thickness()+d.Keel.Depth+d.Ribs.Thickness/2) + float64(d.Gunwale.Height)*cos - float64(d.Gunwale.Width)/2*sin
		at := h.Freeboard(float.Level(0)).Least
		if math.Abs(at-top) > 2 {
			t.Errorf("%s: the sheer stands %.1f mm over the baseline, the design gives %.1f mm", name, at, top)
		}
	}
}

// TestInsideArcs: cloth that bridges flat holds less than the arcs, by a few per
// cent at most with stringers a hand's breadth apart.
func TestInsideArcs(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		c := cover(t, f)
		flat := c.Hull
		round, err := Smooth(f, c)
		if err != nil {
			t.Fatal(err)
		}
		for _, z := range []float64{60, 100, 150, 200} {
			a, b := flat.Immerse(float.Level(z)), round.Immerse(float.Level(z))
			if share := a.Volume / b.Volume; share > 1.0001 || share < 0.95 {
				t.Errorf("%s: at a draft of %.0f mm the cloth holds %.2f %% of the arcs' volume", name, z, share*100)
			}
		}
	}
}

// TestEnds doubles the stations in the ends.
func TestEnds(t *testing.T) {
	for _, name := range design.ShippedNames() {
		f := frametest.Shipped(t, name, nil)
		volume := func(steps int) float64 {
			c, err := New(framed{f}, steps)
			if err != nil {
				t.Fatal(err)
			}
			return c.Hull.Immerse(float.Level(float64(f.Design.Hull.Waterline))).Volume
		}
		if a, b := volume(endSteps), volume(4*endSteps); math.Abs(a/b-1) > 1e-3 {
			t.Errorf("%s: %.0f stations in an end change the volume by %.2g", name, 4.0*endSteps, a/b-1)
		} else {
			t.Logf("%s: %.2g", name, a/b-1)
		}
	}
}
