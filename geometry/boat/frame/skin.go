package frame

import (
	"math"

	"ribwright/geometry"
)

// Skin is the cloth as a builder orders it, measured over the wood. Its shape is in
// the package skin.
type Skin struct {
	Girth  float64 // midship, gunwale top to gunwale top around the outside, mm
	Length float64 // along the keel and both stems, head to head, mm
}

func newSkin(f *Frame) Skin {
	s := Skin{Length: f.Keel.Fore - f.Keel.Aft + f.Hull.Bow.Outer.Length() + f.Hull.Stern.Outer.Length()}
	pts := f.Corners(f.nearest(0))
	for i := 1; i < len(pts); i++ {
		s.Girth += 2 * pts[i].Sub(pts[i-1]).Norm()
	}
	return s
}

// nearest returns the rib nearest to the station x.
func (f *Frame) nearest(x float64) Rib {
	near := f.Ribs[0]
	for _, r := range f.Ribs {
		if math.Abs(r.Station-x) < math.Abs(near.Station-x) {
			near = r
		}
	}
	return near
}

// skinLean returns how far the skin falls inward under the gunwale for each mm of
// depth, at the rib nearest to the station x.
func (f *Frame) skinLean(x float64) float64 {
	pts := f.Corners(f.nearest(x))
	low, under := pts[len(pts)-2], pts[len(pts)-3]
	return (low.X - under.X) / (low.Y - under.Y)
}

// Corners returns the outer corners of the wood at a rib, on which the cloth lies:
// those of keel, stringers and gunwale, from the middle of the keel out to the
// gunwale's upper edge. X is the half-breadth, Y the height above the baseline, mm.
func (f *Frame) Corners(r Rib) []geometry.Point {
	return r.Section.Corners(f.Design, f.Gunwale.Outer(r.Station))
}
