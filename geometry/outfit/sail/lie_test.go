package sail

import (
	"math"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/outfit/clip"
)

// everyRig tries every rig on every shipped boat.
func everyRig(t *testing.T, try func(name string, r design.Rig, f *Fit)) {
	t.Helper()
	for _, name := range design.ShippedNames() {
		b := boat(t, name)
		for _, r := range design.Rigs() {
			s := b.Frame.Design.Sail()
			s.Rig = r
			f, err := New(b, s, fresh(t))
			if err != nil {
				t.Fatal(err)
			}
			try(name, r, f)
		}
	}
}

// TestBoxStands: the box's sides reach from bed to partner where they stand, by the boat's
// own gunwales and floor there; the clips of partner and bracket hook between ribs, inside
// the boards' edges, at their distance from the gunwale.
func TestBoxStands(t *testing.T) {
	everyRig(t, func(name string, r design.Rig, f *Fit) {
		b := f.Boat
		for _, way := range []float64{1, -1} {
			inner, _ := b.GunwaleTop(f.Mast.At + 65*way)
			bed := b.Floor(f.Mast.At) + 16 + 65*way*math.Tan(f.BedPitch())
			near(t, name+": a side of the box", f.BoxHigh(way), inner.Z+34-bed, 0.6)
		}
		if f.Pitch() < 0.02 || f.Pitch() > 0.12 || f.BedLeast() < bedThinnest || f.BedLeast() > BedThick {
			t.Errorf("%s, %v: gunwales rise %.3f, the bed is %.1f mm at its edge", name, r, f.Pitch(), f.BedLeast())
		}
		for _, rib := range f.Lashed() { // step and sides reach 83 mm either way
			if math.Abs(rib.Station-f.Mast.At)-f.Lashes().X-LashHole/2 < 65+18 {
				t.Errorf("%s, %v: the lashing of %s lies under the box", name, r, rib.Name)
			}
		}
		if n := len(f.Lashed()); n < 2 || n > len(f.Bed.Ribs) || f.Lashes().Y < b.Frame.KeelHalf(f.Mast.At)+5 {
			t.Errorf("%s, %v: %d ribs lashed, %.0f mm from the keel's middle", name, r, n, f.Lashes().Y)
		}
		all, clear := f.Clips()
		held := append([]clip.Clip{}, all[:]...)
		if f.Board.Area > 0 {
			held = append(held, f.BracketClip())
			if off := f.BracketClip().Hole.X - f.BracketAt(); math.Abs(off) > 1e-9 {
				t.Errorf("%s, %v: the bracket's clip is %.1f mm off its middle", name, r, off)
			}
		}
		for _, c := range held {
			clear = clear && c.Clear(b.Frame)
		}
		if d := all[0].Hole.X - all[1].Hole.X; !clear || d < 30 || d > 100 {
			t.Errorf("%s, %v: clear %v, the partner's clips %.1f mm apart", name, r, clear, d)
		}
		if p := f.Hold; p.Load < f.Bed.Lift/2-1e-9 || p.Load < f.Board.Pinch || !p.Holds() {
			t.Errorf("%s, %v: %+v", name, r, p)
		}
	})
}

// TestCheeksClearTheOutwale: the inner cheek stands outside outwale and cloth.
func TestCheeksClearTheOutwale(t *testing.T) {
	f := fitted(t, design.Spritsail)
	rail := f.Boat.Rail(f.BracketAt()).Y
	_, outer := f.Boat.GunwaleTop(f.BracketAt())
	if inner := f.CheeksAt() - 2*CheekThick - f.Board.Thick - BladeRoom; inner < rail+CheekGap-1e-9 || rail < outer.Y+9 {
		t.Errorf("the cheek at %.1f, the outwale to %.1f, the gunwale to %.1f", inner, rail, outer.Y)
	}
}
