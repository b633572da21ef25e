package rendertest

import "math"

// fine is the chords a curved piece is cut into when outlines are compared.
const fine = 24

// Polygon is an outline as a closed polygon; the last point is not the first.
type Polygon []Point

// Polygon returns the outline in chords.
func (o Outline) Polygon() Polygon {
	pts := o.Points(fine)
	if n := len(pts); n > 1 && pts[0].To(pts[n-1]) < 1e-9 {
		pts = pts[:n-1]
	}
	return pts
}

// Holds reports whether a point lies inside, by its winding number.
func (p Polygon) Holds(q Point) bool {
	turns := 0.0
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		turns += math.Atan2((a.X-q.X)*(b.Y-q.Y)-(a.Y-q.Y)*(b.X-q.X), (a.X-q.X)*(b.X-q.X)+(a.Y-q.Y)*(b.Y-q.Y))
	}
	return math.Abs(turns) > math.Pi
}

// Gap returns the least distance between the edges of two polygons, 0 when they
// cross or one lies in the other; anything above most may be told as most.
func (p Polygon) Gap(q Polygon, most float64) float64 {
	if Around(p...).Grow(most).Meet(Around(q...)).Empty() {
		return most
	}
	if p.Holds(q[0]) || q.Holds(p[0]) {
		return 0
	}
	least := most
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		near := Around(a, b).Grow(least)
		for k := range q {
			c, d := q[k], q[(k+1)%len(q)]
			if !near.Meet(Around(c, d)).Empty() {
				least = math.Min(least, apart(a, b, c, d))
			}
		}
	}
	return least
}

// apart returns the distance between two straight pieces.
func apart(a, b, c, d Point) float64 {
	// They cross when each parts the other's ends.
	turn := func(p, q, r Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	if turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0 {
		return 0
	}
	return math.Min(math.Min(fromPiece(a, c, d), fromPiece(b, c, d)), math.Min(fromPiece(c, a, b), fromPiece(d, a, b)))
}

func fromPiece(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = math.Min(1, math.Max(0, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/l))
	}
	return p.To(Point{a.X + t*dx, a.Y + t*dy})
}

// From returns the distance of a point from the polygon's edge, mm.
func (p Polygon) From(q Point) float64 {
	least := math.Inf(1)
	for i := range p {
		least = math.Min(least, fromPiece(q, p[i], p[(i+1)%len(p)]))
	}
	return least
}

// Outermost returns the outlines that lie inside no other.
func Outermost(all []Outline) []Outline {
	var out []Outline
	polygons, boxes := make([]Polygon, len(all)), make([]Box, len(all))
	for i, o := range all {
		polygons[i], boxes[i] = o.Polygon(), o.Bounds()
	}
	for i, o := range all {
		inside := false
		for j := range all {
			inside = inside || i != j && boxes[j].HoldsBox(boxes[i]) && polygons[j].Holds(polygons[i][0])
		}
		if !inside {
			out = append(out, o)
		}
	}
	return out
}

// Across returns the greatest distance between two corners of the outline, mm: it
// is the same however the outline lies.
func (o Outline) Across() float64 {
	far := 0.0
	pts := o.Corners()
	for i, p := range pts {
		for _, q := range pts[:i] {
			far = math.Max(far, p.To(q))
		}
	}
	return far
}
