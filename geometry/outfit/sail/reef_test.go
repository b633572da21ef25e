package sail

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// TestReefInTheCloth: the reefed sail is what of this cloth lies over the line of the reef,
// and with what lies under it makes all of the sail. Its center is that of what is left,
// let down by the luff that was taken in.
func TestReefInTheCloth(t *testing.T) {
	for _, r := range []design.Rig{design.Spritsail, design.LegOfMutton, design.Lug} {
		f := fitted(t, r)
		c := f.Plan.Corners
		foot := c[len(c)-1].Sub(c[0])
		luff, leech, ok := f.Plan.ReefLine(1)
		if !ok || math.Abs(leech.Sub(luff).Unit().Cross(foot.Unit())) > 1e-9 {
			t.Fatalf("%v: no line along the foot", r)
		}
		side := func(way float64) []geometry.Point {
			return geometry.Beside(c, func(q geometry.Point) float64 { return way * leech.Sub(luff).Cross(q.Sub(luff)) })
		}
		over, under := side(-1), side(1)
		near(t, r.String()+": area of the reefed sail", f.States[1].Area, math.Abs(curve.Area(over))/1e6, 1e-9)
		near(t, r.String()+": both parts", math.Abs(curve.Area(over))+math.Abs(curve.Area(under)), f.Plan.Area()*1e6, 1e-3)
		down := 0.24 * (c[1].Y - c[0].Y)
		near(t, r.String()+": center", f.States[1].Center.Y, Centroid(over).Y-down, 1e-6)
		near(t, r.String()+": arm", f.States[1].Arm, (f.Tack+f.States[1].Center.Y-f.Resists().Y)/1000, 1e-9)
	}
}

// TestReefOnPanels: on the panels of a cut sail the lines of a reef join at the seams, reach
// from edge to edge, and are as long as the line on the sail.
func TestReefOnPanels(t *testing.T) {
	for _, r := range []design.Rig{design.Spritsail, design.LegOfMutton, design.Lug} {
		f := fitted(t, r)
		whole := 0.0
		for i, p := range f.Cloth.Panels {
			edge := p.Edge
			if !math.IsNaN(p.Seam) { // what the next panel lies over is told twice
				edge = geometry.Beside(edge, func(q geometry.Point) float64 { return p.Seam - q.Y })
			}
			if a, b, ok := f.ReefIn(1, edge); ok {
				whole += b.Sub(a).Norm()
			} else if i == 0 {
				t.Errorf("%v: no reef on the leech's panel", r)
			}
		}
		a, b, _ := f.ReefIn(1, f.Cloth.Finished)
		near(t, r.String()+": the line on all panels", whole, b.Sub(a).Norm(), 1e-6)
		luff, leech, _ := f.Plan.ReefLine(1)
		round := 1.1 * f.Sail.Roach * f.Plan.Corners[1].Norm() // of the luff, met nearly square
		if long, straight := b.Sub(a).Norm(), leech.Sub(luff).Norm(); long < straight-1e-6 || long > straight+round {
			t.Errorf("%v: %.1f mm from edge to edge, %.1f between the corners' lines", r, long, straight)
		}
	}
}

// TestOneReefForASprit: a sprit comes down with its sail, and two reefs would bring its heel
// under the partner: 0.28 less 0.48 of the luff is under the tack by a fifth of it.
func TestOneReefForASprit(t *testing.T) {
	for reefs, want := range map[int]bool{1: false, 2: true} {
		b := boat(t, "lake")
		s := b.Frame.Design.Sail()
		s.Area, s.Reefs = 3, reefs
		f, err := New(b, s, fresh(t))
		if err != nil {
			t.Fatal(err)
		}
		got := false
		for _, n := range f.Findings {
			got = got || n.About == "reefs" && !n.Verdict.Passes()
		}
		if got != want {
			t.Errorf("%d reefs: %v", reefs, got)
		}
	}
}
