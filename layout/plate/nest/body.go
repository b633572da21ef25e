package nest

import (
	"math"

	"ribwright/geometry"
)

// step is the distance of the points along an edge that feel for neighbors, mm.
const step = 16.0

// links is how many points hang together in a link of the chain round a part.
const links = 6

// body is a part that is pushed about: points along its edge and the distances
// round it, in a frame about its middle.
type body struct {
	pts    []geometry.Point
	chain  []link
	field  field
	radius float64        // of the circle about the middle that holds it
	own    geometry.Point // the middle in the part's own frame
	turns  []float64      // the angles it may lie at; nil for any
}

// link is a run of points and the circle that holds them.
type link struct {
	from, to int
	mid      geometry.Point
	r        float64
}

// pose is where a body lies: its middle and its turn.
type pose struct{ x, y, a, c, s float64 }

func at(x, y, a float64) pose {
	s, c := math.Sincos(a)
	return pose{x, y, a, c, s}
}

func (b *body) move(p pose) geometry.Affine {
	return geometry.Shift(-b.own.X, -b.own.Y).Then(geometry.Turn(p.a)).Then(geometry.Shift(p.x, p.y))
}

// newBody makes a body that feels as far as need.
func newBody(s shape, need float64, turns []float64) body {
	b := body{own: s.box.Center(), turns: turns}
	s = s.mapped(geometry.Shift(-b.own.X, -b.own.Y))
	b.pts = sampled(s.loops[len(s.loops)-1])
	for from := 0; from < len(b.pts); from += links {
		l := link{from: from, to: min(from+links, len(b.pts))}
		l.mid = geometry.Around(b.pts[l.from:l.to]...).Center()
		for _, q := range b.pts[l.from:l.to] {
			l.r = math.Max(l.r, q.Sub(l.mid).Norm())
		}
		b.chain = append(b.chain, l)
	}
	for _, p := range b.pts {
		b.radius = math.Max(b.radius, p.Norm())
	}
	b.field = newField(s, need+4*step)
	return b
}

// sampled returns points along a closed edge no farther apart than step, every
// corner among them.
func sampled(loop []geometry.Point) []geometry.Point {
	const sharp = 0.2 // radians
	var out []geometry.Point
	last := loop[0]
	for i := 1; i < len(loop); i++ {
		p, q := loop[i-1], loop[i]
		before := loop[(i-2+len(loop)-1)%(len(loop)-1)]
		bend := math.Abs(p.Sub(before).Unit().Cross(q.Sub(p).Unit()))
		if i == 1 || bend > sharp || p.Sub(last).Norm() >= step*0.7 {
			out, last = append(out, p), p
		}
		n := int(math.Ceil(q.Sub(p).Norm() / step))
		for k := 1; k < n; k++ {
			last = p.Lerp(q, float64(k)/float64(n))
			out = append(out, last)
		}
	}
	return out
}

// nodes is the pitch of a field's nodes, mm. Between them the distance is off by
// up to a quarter of a millimeter, where it bends round a corner.
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
