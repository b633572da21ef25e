package pack

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// plane is a half plane: inside is n.d <= c.
type plane struct{ x, y, c float64 }

// frame is an upright rectangle; plain numbers, because it is asked for often.
type frame struct{ x0, y0, x1, y1 float64 }

func (f frame) shifted(x, y float64) frame { return frame{f.x0 + x, f.y0 + y, f.x1 + x, f.y1 + y} }

func framed(pts []geometry.Point) frame {
	b := geometry.Around(pts...)
	return frame{b.Min.X, b.Min.Y, b.Max.X, b.Max.Y}
}

// clash is the no-fit shape of two convex pieces: they overlap, or lie nearer than the
// gap, while the way from one part to the other lies in all planes.
type clash struct {
	planes []plane
	hint   int // the plane that told them apart last
}

// clashes are the no-fit shapes of all pieces that came near each other, at one turn of
// the second part to the first. They are made when they are first needed: the table of
// all pieces of all pairs of parts would not fit in a processor's cache.
type clashes struct {
	first []int32 // of a pair of kinds and a turn: where its pieces begin in which; 0 while unknown
	which []int32 // of a pair of pieces: its clash; 0 while unknown
	all   []clash
}

func newClashes(kinds int) clashes {
	return clashes{first: make([]int32, kinds*kinds*Compass), which: make([]int32, 1), all: make([]clash, 1)}
}

// of returns where the pairs of pieces of two kinds begin.
func (c *clashes) of(pair, pieces int) int32 {
	if c.first[pair] == 0 {
		c.first[pair] = int32(len(c.which))
		c.which = slices.Grow(c.which, pieces)[:len(c.which)+pieces]
	}
	return c.first[pair]
}

// rounder is the widest angle between two planes of a clash with a gap: a wider corner
// gets planes between, so that it is nearly round. The room that a corner of this kind
// takes too much is 2 % of the gap.
const rounder = math.Pi / 8

func turnedPiece(p polygon, turn int) polygon {
	out := make(polygon, len(p))
	for i, q := range p {
		out[i] = turned[turn].at(q)
	}
	return out
}

// planesOf makes the planes of p less q turned, grown by the gap.
func planesOf(p, q polygon, turn int, gap float64) []plane {
	less := turnedPiece(q, turn)
	for i, c := range less {
		less[i] = geometry.Point{X: -c.X, Y: -c.Y}
	}
	pts := sum(p, less)
	var out []plane
	for i, a := range pts {
		b, c := pts[(i+1)%len(pts)], pts[(i+2)%len(pts)]
		n := normal(a, b)
		out = append(out, newPlane(n, a, gap))
		if gap > 0 {
			out = append(out, corner(n, normal(b, c), b, gap)...)
		}
	}
	return out
}

// corner are planes that round the corner at b between two normals.
func corner(n, m, b geometry.Point, gap float64) []plane {
	angle := math.Atan2(cross(n, m), float64(n.X*m.X)+float64(n.Y*m.Y))
	parts := int(math.Ceil(angle / rounder))
	var out []plane
	for k := 1; k < parts; k++ {
		s, c := math.Sincos(angle * float64(k) / float64(parts))
		const fine = 1 << 30
		r := rotation{math.Round(c*fine) / fine, math.Round(s*fine) / fine}
		d := r.at(n)
		out = append(out, newPlane(d.Scale(1/length(d)), b, gap))
	}
	return out
}

func normal(a, b geometry.Point) geometry.Point {
	d := b.Sub(a)
	l := length(d)
	return geometry.Point{X: d.Y / l, Y: -d.X / l}
}

func newPlane(n, through geometry.Point, gap float64) plane {
	return plane{n.X, n.Y, float64(n.X*through.X) + float64(n.Y*through.Y) + gap}
}

// sum is the corners of the sum of two convex polygons: their edges in the order of their
// directions.
func sum(p, q polygon) polygon {
	p, q = lowestFirst(p), lowestFirst(q)
	out := polygon{}
	i, k := 0, 0
	at := p[0].Add(q[0])
	for i < len(p) || k < len(q) {
		var d geometry.Point
		u := p[(i+1)%len(p)].Sub(p[i%len(p)])
		v := q[(k+1)%len(q)].Sub(q[k%len(q)])
		switch turn := cross(u, v); {
		case k == len(q) || i < len(p) && turn > 0:
			d, i = u, i+1
		case i == len(p) || turn < 0:
			d, k = v, k+1
		default:
			d, i, k = u.Add(v), i+1, k+1
		}
		if d != (geometry.Point{}) {
			out = append(out, at)
		}
		at = at.Add(d)
	}
	return out
}

func lowestFirst(p polygon) polygon {
	low := 0
	for i, q := range p {
		if q.Y < p[low].Y || q.Y == p[low].Y && q.X < p[low].X {
			low = i
		}
	}
	return append(append(polygon{}, p[low:]...), p[:low]...)
}

// depth is how far one piece would have to be moved out of the other.
func (c *clash) depth(x, y float64) float64 {
	p := &c.planes[c.hint]
	least := p.c - float64(p.x*x) - float64(p.y*y)
	if least <= 0 {
		return 0
	}
	for i := range c.planes {
		p := &c.planes[i]
		if d := p.c - float64(p.x*x) - float64(p.y*y); d < least {
			if least = d; d <= 0 {
				c.hint = i
				return 0
			}
		}
	}
	return least
}
