package pack

import (
	"math"

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
	frame
	planes []plane
	hint   int // the plane that told them apart last
	a, b   int // the pieces that it is of
}

// nofit is the no-fit shape of two parts at one turn of the second to the first.
type nofit struct {
	frame
	clashes []clash
}

// kind is what parts of the same shape share.
type kind struct {
	area   float64
	pieces []polygon
	at     [Compass]frame // round it, at each turn
	turns  []int
}

// rounder is the widest angle between two planes of a clash with a gap: a wider corner
// gets planes between, so that it is nearly round. The room that a corner of this kind
// takes too much is 2 % of the gap.
const rounder = math.Pi / 8

// newNofit prepares the no-fit shape of b turned, round a; its planes are made when they
// are first needed.
func newNofit(a, b *kind, turn int, gap float64) *nofit {
	inf := math.Inf(1)
	out := &nofit{frame: frame{inf, inf, -inf, -inf}, clashes: make([]clash, 0, len(a.pieces)*len(b.pieces))}
	for k, q := range b.pieces {
		g := framed(turnedPiece(q, turn))
		for i, p := range a.pieces {
			f := framed(p)
			c := clash{frame: frame{f.x0 - g.x1 - gap, f.y0 - g.y1 - gap, f.x1 - g.x0 + gap, f.y1 - g.y0 + gap}, a: i, b: k}
			out.clashes = append(out.clashes, c)
			out.x0, out.y0 = min(out.x0, c.x0), min(out.y0, c.y0)
			out.x1, out.y1 = max(out.x1, c.x1), max(out.y1, c.y1)
		}
	}
	return out
}

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

// depth is how far two parts must at most be moved to part all their pieces that overlap
// one by one, for the way (x, y) from one to the other; 0 when they keep the gap.
func (f *nofit) depth(a, b *kind, turn int, gap, x, y float64, steps *int) float64 {
	if x <= f.x0 || x >= f.x1 || y <= f.y0 || y >= f.y1 {
		return 0
	}
	most := 0.0
	*steps += 1 + len(f.clashes)/2
	for i := range f.clashes {
		c := &f.clashes[i]
		if x <= c.x0+most || x >= c.x1-most || y <= c.y0+most || y >= c.y1-most {
			continue
		}
		if c.planes == nil {
			c.planes = planesOf(a.pieces[c.a], b.pieces[c.b], turn, gap)
		}
		most = c.depth(x, y, most)
	}
	return most
}

// depth is the depth in the clash where it is more than a depth that is known already.
func (c *clash) depth(x, y, known float64) float64 {
	p := &c.planes[c.hint]
	least := p.c - float64(p.x*x) - float64(p.y*y)
	if least <= known {
		return known
	}
	for i := range c.planes {
		p := &c.planes[i]
		if d := p.c - float64(p.x*x) - float64(p.y*y); d < least {
			if least = d; d <= known {
				c.hint = i
				return known
			}
		}
	}
	return least
}
