package frame

import (
	"math"
	"testing"

	"ribwright/geometry/boat/hull"
)

// TestAdjustClosedForms: a square U with rounded corners (flat bottom, plumb sides)
// is longer by what it is wider and by twice what it is deeper; a half-round keeps
// its shape when width and depth grow together, so both together are pi/2 per mm of
// beam and depth of half that. Plane geometry.
func TestAdjustClosedForms(t *testing.T) {
	solve := func(half, depth float64, s hull.Shape) Rib {
		sec, err := hull.Solve(half, depth, s)
		if err != nil {
			t.Fatal(err)
		}
		return Rib{Name: "x", Thickness: 0, Section: sec}
	}
	c, err := correctionOf(solve(360, 280, hull.Shape{BilgeRadius: 100}))
	if err != nil || math.Abs(c.Beam-1) > 1e-6 || math.Abs(c.Depth-2) > 1e-6 {
		t.Errorf("square U: %.6f per beam, %.6f per depth, %v; want 1 and 2", c.Beam, c.Depth, err)
	}
	// A half-round of radius R and straight sides: length pi R + 2 (d - R) with R =
	// beam/2, so pi/2 - 1 per mm of beam and 2 per mm of depth.
	c, err = correctionOf(solve(300, 320, hull.Shape{BottomTurn: 0.3, BilgeRadius: 400}))
	if err != nil || math.Abs(c.Beam-(math.Pi/2-1)) > 1e-4 || math.Abs(c.Depth-2) > 1e-4 {
		t.Errorf("half-round: %.6f per beam, %.6f per depth, %v; want %.6f and 2", c.Beam, c.Depth, err, math.Pi/2-1)
	}
}

// TestAdjustAgainstBuilding builds each shipped boat 10 mm wider all along and
// compares rib lengths with what the adjustment says.
func TestAdjustAgainstBuilding(t *testing.T) {
	everyShipped(t, func(t *testing.T, f *Frame) {
		for _, r := range f.Ribs {
			c, err := correctionOf(r)
			if err != nil {
				t.Fatal(err)
			}
			s, err := hull.Solve(r.Section.HalfBreadth+5, r.Section.Depth+10, r.Section.Shape)
			if err != nil {
				t.Fatal(err)
			}
			want := 2*s.Half.Length() - 2*r.Section.Half.Length()
			if got := 10*c.Beam + 10*c.Depth; math.Abs(got-want) > 0.6 {
				t.Errorf("rib %s 10 mm wider and deeper: %.2f mm, want %.2f", r.Name, got, want)
			}
		}
	})
}
