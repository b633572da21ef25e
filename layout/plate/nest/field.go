package nest

import (
	"math"

	"ribwright/geometry"
)

// nodes is the pitch of a field's nodes, mm. Between them the distance is off by
// up to a quarter of a millimetre, where it bends round a corner.
const nodes = 6.0

// field is the distance to a part's edge on a square grid, below 0 in the wood.
type field struct {
	corner     geometry.Point
	wide, high int
	d          []float32
}

// newField covers the shape and the given room round it.
func newField(s shape, room float64) field {
	box := s.box.Grow(room + nodes)
	f := field{corner: box.Min, wide: int(box.W()/nodes) + 2, high: int(box.H()/nodes) + 2}
	f.d = make([]float32, f.wide*f.high)
	for i := range f.d {
		at := geometry.Point{X: float64(i%f.wide) * nodes, Y: float64(i/f.wide) * nodes}
		f.d[i] = float32(s.distance(f.corner.Add(at)))
	}
	return f
}

// at returns the distance at a place and the step in which it grows; ok is false
// outside the grid, where nothing is near.
func (f *field) at(x, y float64) (d, gx, gy float64, ok bool) {
	x, y = (x-f.corner.X)*(1/nodes), (y-f.corner.Y)*(1/nodes)
	i, j := int(x), int(y)
	if x < 0 || y < 0 || i >= f.wide-1 || j >= f.high-1 {
		return 0, 0, 0, false
	}
	u, v := x-float64(i), y-float64(j)
	k := j*f.wide + i
	a, b := float64(f.d[k]), float64(f.d[k+1])
	c, e := float64(f.d[k+f.wide]), float64(f.d[k+f.wide+1])
	lo, hi := a+(b-a)*u, c+(e-c)*u
	return lo + (hi-lo)*v, (b-a)*(1-v) + (e-c)*v, hi - lo, true
}

// about returns the distance at a place to the pitch of the nodes, infinite
// outside the grid.
func (f *field) about(x, y float64) float64 {
	x, y = (x-f.corner.X)*(1/nodes), (y-f.corner.Y)*(1/nodes)
	i, j := int(x), int(y)
	if x < 0 || y < 0 || i >= f.wide || j >= f.high {
		return math.Inf(1)
	}
	return float64(f.d[j*f.wide+i])
}
