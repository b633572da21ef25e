package curve

import (
	"math"

	"ribwright/geometry"
)

// Path is a chain of segments, each starting where the one before ends. A
// closed outline ends where it starts. The nil path draws nothing.
type Path []Segment

// joinTol is how far apart two ends may lie and still count as one point, mm:
// far below what a pencil shows, far above rounding at 10 m.
const joinTol = 1e-6

// Polyline returns the path of straight lines through pts; fewer than two
// points give the nil path, and repeated points are passed over.
func Polyline(pts ...geometry.Point) Path {
	p := make(Path, 0, max(1, len(pts))-1)
	for i := 1; i < len(pts); i++ {
		if pts[i] != pts[i-1] {
			p = append(p, Line{pts[i-1], pts[i]})
		}
	}
	if len(p) == 0 {
		return nil
	}
	return p
}

// Polygon returns the closed path of straight lines through pts and back.
func Polygon(pts ...geometry.Point) Path {
	if len(pts) < 3 {
		return nil
	}
	return Polyline(append(append([]geometry.Point(nil), pts...), pts[0])...)
}

// Rectangle returns the closed outline of b, counter-clockwise from its lower
// left corner.
func Rectangle(b geometry.Box) Path {
	return Polygon(b.Min, geometry.Point{X: b.Max.X, Y: b.Min.Y}, b.Max,
		geometry.Point{X: b.Min.X, Y: b.Max.Y})
}

// Rounded returns the outline of b with round corners, counter-clockwise from the
// start of its lower side. r is the radius of the corners, mm, at most half of the
// shorter side of b; sides that the corners leave nothing of are left out.
func Rounded(b geometry.Box, r float64) Path {
	r = math.Min(r, math.Min(b.W(), b.H())/2)
	in := b.Grow(-r)
	var out Path
	from := Arc{Center: in.Min, Radius: r, From: math.Pi, Sweep: math.Pi / 2}.End()
	for i, c := range []geometry.Point{{X: in.Max.X, Y: in.Min.Y}, in.Max, {X: in.Min.X, Y: in.Max.Y}, in.Min} {
		corner := Arc{Center: c, Radius: r, From: float64(i-1) * math.Pi / 2, Sweep: math.Pi / 2}
		if side := (Line{A: from, B: corner.Start()}); side.Length() > 1e-9 {
			out = append(out, side)
		}
		out, from = append(out, corner), corner.End()
	}
	return out
}

// Circle returns the full circle, counter-clockwise from its rightmost point.
func Circle(center geometry.Point, radius float64) Path {
	return Path{Arc{center, radius, 0, 2 * math.Pi}}
}

// Length returns the length along the path in mm.
func (p Path) Length() float64 {
	sum := 0.0
	for _, s := range p {
		sum += s.Length()
	}
	return sum
}

// Bounds returns the box around the path; EmptyBox for the nil path.
func (p Path) Bounds() geometry.Box {
	b := geometry.EmptyBox()
	for _, s := range p {
		b = b.Union(s.Bounds())
	}
	return b
}

// Closed reports whether the path ends where it starts, to joinTol.
func (p Path) Closed() bool {
	return len(p) > 0 && p[0].Start().Sub(p[len(p)-1].End()).Norm() <= joinTol
}

// Joined reports whether every segment starts where the one before it ends.
func (p Path) Joined() bool {
	for i := 1; i < len(p); i++ {
		if p[i].Start().Sub(p[i-1].End()).Norm() > joinTol {
			return false
		}
	}
	return true
}

// Reverse returns the same path run the other way; p is left as it is.
func (p Path) Reverse() Path {
	out := make(Path, len(p))
	for i, s := range p {
		out[len(p)-1-i] = s.Reverse()
	}
	return out
}

// Map returns the path moved by m. Arcs stay arcs when m keeps circles round
// and become cubics when it does not (within 5e-7 of the radius, stretched with
// the rest).
func (p Path) Map(m geometry.Affine) Path {
	if !m.Similar() {
		p = p.Beziers()
	}
	out := make(Path, 0, len(p))
	for _, s := range p {
		switch s := s.(type) {
		case Line:
			out = append(out, Line{m.Apply(s.A), m.Apply(s.B)})
		case Cubic:
			out = append(out, Cubic{m.Apply(s.P0), m.Apply(s.P1), m.Apply(s.P2), m.Apply(s.P3)})
		case Arc:
			out = append(out, mapArc(s, m))
		}
	}
	return out
}

// Beziers returns the path with the cubics of its arcs (see Arc.Cubics) in their place.
func (p Path) Beziers() Path {
	out := make(Path, 0, len(p))
	for _, s := range p {
		a, round := s.(Arc)
		if !round {
			out = append(out, s)
			continue
		}
		for _, c := range a.Cubics() {
			out = append(out, c)
		}
	}
	return out
}

// mapArc moves an arc by a transform that keeps circles round; a mirror turns
// the sweep about.
func mapArc(a Arc, m geometry.Affine) Arc {
	center := m.Apply(a.Center)
	start := m.Apply(a.Start()).Sub(center)
	sweep := a.Sweep
	if m.Det() < 0 {
		sweep = -sweep
	}
	return Arc{center, math.Hypot(m.A, m.B) * a.Radius, math.Atan2(start.Y, start.X), sweep}
}

// Flatten returns points along the path so that no chord is farther than tol
// from it. Requires tol > 0 (mm). The nil path gives no points.
func (p Path) Flatten(tol float64) []geometry.Point {
	if len(p) == 0 {
		return nil
	}
	all := 1
	for _, s := range p {
		all += pieces(s, tol)
	}
	out := append(make([]geometry.Point, 0, all), p[0].Start())
	for _, s := range p {
		n := pieces(s, tol)
		for i := 1; i <= n; i++ {
			out = append(out, s.At(float64(i)/float64(n)))
		}
	}
	return out
}

// pieces returns how many equal steps of the parameter keep chords within tol.
func pieces(s Segment, tol float64) int {
	switch s := s.(type) {
	case Arc:
		// The sagitta of a chord over the angle a is r (1 - cos(a/2)).
		half := math.Acos(math.Max(0, 1-tol/s.Radius))
		return max(1, int(math.Ceil(math.Abs(s.Sweep)/(2*half))))
	case Cubic:
		// A chord over the step h errs by at most h^2/8 of the second derivative.
		bend := math.Max(s.P0.Sub(s.P1.Scale(2)).Add(s.P2).Norm(),
			s.P1.Sub(s.P2.Scale(2)).Add(s.P3).Norm())
		return max(1, int(math.Ceil(math.Sqrt(6*bend/(8*tol)))))
	}
	return 1
}

// Holds reports whether p lies inside the closed polygon pts, by the even-odd rule;
// the last point may repeat the first.
func Holds(pts []geometry.Point, p geometry.Point) bool {
	in := false
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y <= p.Y) != (b.Y <= p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// Area returns the area inside the closed polygon pts in mm², positive when it
// runs counter-clockwise; the last point need not repeat the first.
func Area(pts []geometry.Point) float64 {
	sum := 0.0
	for i, p := range pts {
		sum += p.Cross(pts[(i+1)%len(pts)])
	}
	return sum / 2
}
