// Package sight draws a boat as an eye sees it, with what lies behind a surface left
// out. It gets places in space and projects them.
package sight

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
)

// View is an eye with its picture: x right and y up, the place looked at in its origin.
type View struct {
	eye              solid.Eye
	ahead, right, up geometry.Point3
	far              float64 // from the eye to the place looked at, mm
	k                float64 // mm of paper for each there
}

// NewView returns the picture at a scale, mm of paper for each mm at the place looked at.
// Up on paper is up in the boat; for an eye that looks straight down it is port, so that
// the bow lies to the right.
func NewView(e solid.Eye, k float64) View {
	v := View{eye: e, k: k}
	step := e.To.Sub(e.At)
	v.far = step.Norm()
	v.ahead = scaled(step, 1/v.far)
	up := geometry.Point3{Z: 1}
	if math.Abs(v.ahead.Z) > 0.999 {
		up = geometry.Point3{Y: 1}
	}
	v.right = cross(v.ahead, up)
	v.right = scaled(v.right, 1/v.right.Norm())
	v.up = cross(v.right, v.ahead)
	return v
}

// spot is a place of the picture, and how deep behind the place looked at it lies, mm.
// In perspective depth is drawn together so that straight lines and flat faces stay so:
// near the place looked at it is true.
type spot struct {
	geometry.Point
	deep float64
}

// nearest is how near to the eye anything is still seen, as a share of the distance of
// the place looked at.
const nearest = 0.02

// before returns how far ahead of the eye a place lies, mm.
func (v *View) before(p geometry.Point3) float64 { return p.Sub(v.eye.At).Dot(v.ahead) }

// place returns where a place is drawn. In perspective it must lie ahead of the eye.
func (v *View) place(p geometry.Point3) spot {
	q := p.Sub(v.eye.To)
	s := spot{geometry.Pt(q.Dot(v.right), q.Dot(v.up)), q.Dot(v.ahead)}
	if !v.eye.Parallel {
		shrink := v.far / v.before(p)
		s.Point, s.deep = s.Point.Scale(shrink), s.deep*shrink
	}
	s.Point = s.Point.Scale(v.k)
	return s
}

// Place returns where a place is drawn, and whether it lies ahead of the eye.
func (v View) Place(p geometry.Point3) (geometry.Point, bool) {
	if !v.seen(p) {
		return geometry.Point{}, false
	}
	return v.place(p).Point, true
}

func (v *View) seen(p geometry.Point3) bool {
	return v.eye.Parallel || v.before(p) > nearest*v.far
}

// line cuts off what of a straight line lies behind the eye; false when nothing is left.
func (v *View) line(a, b geometry.Point3) (geometry.Point3, geometry.Point3, bool) {
	in, out := v.seen(a), v.seen(b)
	switch {
	case in && !out:
		b = v.edge(a, b)
	case out && !in:
		a = v.edge(b, a)
	}
	return a, b, in || out
}

// edge is where the way from a place that is seen to one that is not stops being seen.
func (v *View) edge(seen, not geometry.Point3) geometry.Point3 {
	a, b := v.before(seen), v.before(not)
	t := (a - nearest*v.far*(1+1e-9)) / (a - b)
	return seen.Add(scaled(not.Sub(seen), t))
}

// cut cuts off what of a face lies behind the eye.
func (v *View) cut(pts []geometry.Point3) []geometry.Point3 {
	if v.eye.Parallel || !slices.ContainsFunc(pts, func(p geometry.Point3) bool { return !v.seen(p) }) {
		return pts
	}
	var out []geometry.Point3
	for i, p := range pts {
		from := pts[(i+len(pts)-1)%len(pts)]
		switch in := v.seen(p); {
		case in && !v.seen(from):
			out = append(out, v.edge(p, from))
		case !in && v.seen(from):
			out = append(out, v.edge(from, p))
		}
		if v.seen(p) {
			out = append(out, p)
		}
	}
	return out
}

func scaled(p geometry.Point3, k float64) geometry.Point3 {
	return geometry.Point3{X: p.X * k, Y: p.Y * k, Z: p.Z * k}
}

func cross(p, q geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: p.Y*q.Z - p.Z*q.Y, Y: p.Z*q.X - p.X*q.Z, Z: p.X*q.Y - p.Y*q.X}
}
