package outfits

import (
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
)

// TestBracketGoesTogether: on every boat and rig with a leeboard the straight cheeks
// clear the curved gunwale all along by their gap, the bolt's hole lies outside the
// outer cheek with wood beyond it, the bar goes through the cheeks' holes, and the
// blade passes under the bar as it swings up. By the boat's own gunwale at each
// station.
func TestBracketGoesTogether(t *testing.T) {
	for _, boat := range design.ShippedNames() {
		for _, r := range []design.Rig{design.Spritsail, design.LegOfMutton, design.Lug} {
			f := fitted(t, boat, r).Sail
			boards := map[string]Board{}
			for _, b := range SailBoards(f, measure.Metric) {
				boards[b.Name] = b
			}
			bar, cheek, blade := boards["bracket"], boards["bracket-cheek"], boards["leeboard"]
			pegs := 0
			inner := f.CheeksAt() - 2*sail.CheekThick - f.Board.Thick - sail.BladeRoom // inner cheek's inner face
			for x := f.BracketAt() - sail.CheekLong/2; x <= f.BracketAt()+sail.CheekLong/2; x++ {
				if _, outer := f.Boat.GunwaleTop(x); outer.Y > inner-sail.CheekGap+0.05 {
					t.Fatalf("%s, %v: at %.0f mm the gunwale stands %.1f mm out, the cheek at %.1f", boat, r, x, outer.Y, inner)
				}
			}
			end := bar.Outline.Bounds().Max.X
			for _, h := range bar.Holes {
				if box := h.Bounds(); box.Min.X > f.CheeksAt() && box.Max.X < end-5 {
					pegs++
				}
			}
			if pegs != 1 {
				t.Errorf("%s, %v: %d holes outside the cheeks on one side, want 1", boat, r, pegs)
			}
			hole := cheek.Holes[0].Bounds()
			if b := bar.Outline.Bounds(); hole.W() < b.H() || hole.H() < bar.Thick || hole.W() > b.H()+2 || hole.H() > bar.Thick+2 {
				t.Errorf("%s, %v: a bar of %.1f x %.1f mm in a hole of %.1f x %.1f", boat, r, b.H(), bar.Thick, hole.W(), hole.H())
			}
			// Turning about its bolt the blade's neck sweeps its half width, its head the
			// way from the bolt to its farthest corner.
			pivot := geometry.Pt(sail.BladeHead, 0)
			for _, p := range blade.Outline.Flatten(0.5) {
				if p.X < sail.BladeHead && p.Sub(pivot).Norm() > sail.PivotDown {
					t.Errorf("%s, %v: the blade's head strikes the bar, %.0f mm from its bolt", boat, r, p.Sub(pivot).Norm())
					break
				}
				if p.X < sail.BladeHead+sail.CheekLong/2-20 && math.Abs(p.Y) > sail.PivotDown {
					t.Errorf("%s, %v: the blade's neck is %.0f mm wide beside the bar", boat, r, 2*math.Abs(p.Y))
					break
				}
			}
		}
	}
}
