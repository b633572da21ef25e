package hull

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/design"
)

// Face returns the point at the distance s (mm) along the half section, moved by out
// mm square to it: outward to the skin when positive. X is the half-breadth and Y the
// height above the baseline.
func (s Section) Face(along, out float64) geometry.Point {
	p, heading := s.Half.At(along)
	return p.Add(geometry.Polar(out, heading-math.Pi/2)).Add(geometry.Point{Y: s.KeelZ})
}

// Stringer returns the outer corners of a stringer at a share of the way from keel to
// gunwale, the one towards the keel first: the wood on which the cloth lies.
func (s Section) Stringer(d *design.Design, share float64) (in, out geometry.Point) {
	along := share * s.Half.Length()
	_, heading := s.Half.At(along)
	middle := s.Face(along, float64(d.Ribs.Thickness)/2+float64(d.Stringers.Depth))
	half := geometry.Polar(float64(d.Stringers.Width)/2, heading)
	return middle.Sub(half), middle.Add(half)
}

// Corners returns the outer corners of the wood on the port side, from the middle of
// the keel out: the keel's middle and edge, two of each stringer, and the gunwale's
// outer face as given, its lower edge first. Cloth bridges flat from one to the next.
func (s Section) Corners(d *design.Design, gunwale [2]geometry.Point) []geometry.Point {
	keel := s.Face(0, float64(d.Ribs.Thickness)/2+float64(d.Keel.Depth))
	out := make([]geometry.Point, 2, 4+2*len(d.Stringers.At))
	out[0], out[1] = keel, keel.Add(geometry.Point{X: float64(d.Keel.Width) / 2})
	for _, share := range d.Stringers.At {
		a, b := s.Stringer(d, share)
		out = append(out, a, b)
	}
	return append(out, gunwale[:]...)
}
