package nest

import (
	"math"

	"ribwright/geometry"
)

// step is the distance of the points along an edge that feel for neighbours, mm.
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

// move returns the transform from the part's own frame.
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
