package frame

import (
	"math"

	"ribwright/geometry"
)

// Skin is the cloth over the frame.
type Skin struct {
	Girth  float64 // midship, gunwale top to gunwale top around the outside, mm
	Length float64 // along the keel and both stems, head to head, mm
}

func newSkin(f *Frame) Skin {
	mid := f.Ribs[0]
	for _, r := range f.Ribs {
		if math.Abs(r.Station) < math.Abs(mid.Station) {
			mid = r
		}
	}
	s := Skin{Length: f.Keel.Fore - f.Keel.Aft + f.Hull.Bow.Outer.Length() + f.Hull.Stern.Outer.Length()}
	pts := f.SkinAt(mid)
	for i := 1; i < len(pts); i++ {
		s.Girth += 2 * pts[i].Sub(pts[i-1]).Norm()
	}
	return s
}

// skinLean returns how far the skin falls inward under the gunwale for each mm of
// depth, at the rib nearest to the station x.
func (f *Frame) skinLean(x float64) float64 {
	near := f.Ribs[0]
	for _, r := range f.Ribs {
		if math.Abs(r.Station-x) < math.Abs(near.Station-x) {
			near = r
		}
	}
	pts := f.SkinAt(near)
	low, under := pts[len(pts)-2], pts[len(pts)-3]
	return (low.X - under.X) / (low.Y - under.Y)
}

// SkinAt returns the wood under the skin of the port half of the boat at a rib: cloth
// bridges flat from corner to corner of keel, stringers and gunwale, so the
// section is a polygon. x is the half-breadth and y the height above the
// baseline, from the middle of the keel out to the gunwale's upper edge.
func (f *Frame) SkinAt(r Rib) []geometry.Point {
	d := f.Design
	out := []geometry.Point{r.Face(0, r.Thickness/2+float64(d.Keel.Depth))}
	out = append(out, out[0].Add(geometry.Point{X: float64(d.Keel.Width) / 2}))
	for _, share := range d.Stringers.At {
		in, off := f.StringerAt(r, share)
		out = append(out, in, off)
	}
	for _, up := range []float64{0, f.Gunwale.Height} {
		p := f.Gunwale.EdgeAt(r.Station, f.Gunwale.Width/2, up)
		out = append(out, geometry.Point{X: p.Y, Y: p.Z})
	}
	return out
}

// StringerAt returns the corners under the skin of a stringer at a share of the way
// from keel to gunwale on a rib, the one towards the keel first.
func (f *Frame) StringerAt(r Rib, share float64) (in, out geometry.Point) {
	s := share * r.Section.Half.Length()
	_, heading := r.Section.Half.At(s)
	middle := r.Face(s, r.Thickness/2+float64(f.Design.Stringers.Depth))
	along := geometry.Polar(float64(f.Design.Stringers.Width)/2, heading)
	return middle.Sub(along), middle.Add(along)
}
