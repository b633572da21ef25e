package pack

import (
	"math"

	"ribwright/geometry"
)

// couple is two parts that lie close, and how much less the convex shape round both covers
// than one round each.
type couple struct {
	first, second lying // the first with its middle at the origin
	saved         float64
	i, k          int // of the search's parts
}

// How many places of two parts are tried for the one that saves most, and by how many
// smaller and smaller changes the best of them is bettered. Our own choices.
const (
	wooed   = 24
	settled = 12
)

// couples finds the parts that save most together, each in one couple at most.
func (s *search) couples() []couple {
	var out []couple
	known, taken := make([]couple, len(s.kinds)*len(s.kinds)), make([]bool, len(s.now.parts))
	for {
		var best couple
		for i, p := range s.now.parts {
			for k, q := range s.now.parts[:i] {
				if taken[i] || taken[k] || p.turn < 0 != (q.turn < 0) {
					continue // two that turn otherwise might lie at no turn together
				}
				c := &known[p.kind*len(s.kinds)+q.kind]
				if c.saved == 0 {
					*c = s.closeCouple(p.kind, q.kind)
				}
				if c.saved > best.saved {
					best = *c
					best.i, best.k = i, k
				}
			}
		}
		if best.saved == 0 {
			return out
		}
		taken[best.i], taken[best.k] = true, true
		out = append(out, best)
	}
}

// closeCouple slides a part of one kind against one of another, and returns the couple that
// saves most.
func (s *search) closeCouple(first, second int) couple {
	k := &s.kinds[first]
	a, to, step := lying{kind: first, turn: -1}, k.shape, 0.2
	if len(k.turns) > 0 {
		a, to = s.turned(first, 0, 0), &k.at[0]
	}
	best := couple{saved: math.Inf(-1)}
	alone := s.kinds[first].alone() + s.kinds[second].alone()
	for n := range wooed + settled {
		axis := a.angle + k.axis
		b, way := s.alike(second, axis), s.side(axis)
		if n >= wooed {
			way = math.Atan2(best.second.y, best.second.x) + float64(step*(s.chance.Float64()-0.5))
			if b = s.turned(second, best.second.turn, best.second.angle); b.turn < 0 {
				b = s.turned(second, -1, b.angle+float64(step*(s.chance.Float64()-0.5)))
			}
		}
		with := s.solid(&b)
		b.x, b.y = s.slid(with, to, way)
		s.done += len(to.corners) + len(with.corners)
		if saved := alone - covered(append(to.points(0, 0), with.points(b.x, b.y)...)); saved > best.saved {
			best = couple{first: a, second: b, saved: saved}
		} else if n >= wooed {
			step *= 0.8
		}
	}
	return best
}

// alone is the area of the convex shape round a part.
func (k *kind) alone() float64 { return covered(k.shape.points(0, 0)) }

func covered(pts []geometry.Point) float64 { return doubled(around(pts)) / 2 }

// points are the corners of the pieces, the middle at (x, y).
func (s *solid) points(x, y float64) []geometry.Point {
	out := make([]geometry.Point, len(s.corners))
	for i, c := range s.corners {
		out[i] = geometry.Point{X: c.x + x, Y: c.y + y}
	}
	return out
}
