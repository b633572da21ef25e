package stow

import (
	"math"

	"ribwright/geometry"
)

func dot(a, b geometry.Point3) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

func cross(a, b geometry.Point3) geometry.Point3 {
	return geometry.Point3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

func along(a, b geometry.Point3, t float64) geometry.Point3 {
	return geometry.Point3{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t, Z: a.Z + (b.Z-a.Z)*t}
}

func unit(t float64) float64 { return min(1, max(0, t)) }

// lineToLine returns the least distance squared between two straight pieces and
// the nearest place on the first. mm2.
//
// Source: the usual clamped least squares; written from the conditions that the
// connecting line stands square to both pieces.
func lineToLine(p0, p1, q0, q1 geometry.Point3) (float64, geometry.Point3) {
	d, e, r := p1.Sub(p0), q1.Sub(q0), p0.Sub(q0)
	dd, ee, de, dr, er := dot(d, d), dot(e, e), dot(d, e), dot(d, r), dot(e, r)
	s, t := 0.0, 0.0
	switch {
	case dd == 0 && ee == 0:
	case dd == 0:
		t = unit(er / ee)
	case ee == 0:
		s = unit(-dr / dd)
	default:
		if det := dd*ee - de*de; det > 1e-12*dd*ee {
			s = unit((de*er - dr*ee) / det)
		}
		t = (de*s + er) / ee
		if t < 0 {
			t, s = 0, unit(-dr/dd)
		} else if t > 1 {
			t, s = 1, unit((de-dr)/dd)
		}
	}
	on := along(p0, p1, s)
	gap := on.Sub(along(q0, q1, t))
	return dot(gap, gap), on
}

// pointToFace returns the distance squared of a point from a triangle when the
// point stands over its face; false when an edge or corner is nearer, or the
// triangle has no face.
func pointToFace(p, a, b, c geometry.Point3) (float64, bool) {
	ab, ac := b.Sub(a), c.Sub(a)
	n := cross(ab, ac)
	nn := dot(n, n)
	if nn == 0 {
		return 0, false
	}
	ap := p.Sub(a)
	v, w := dot(cross(ap, ac), n)/nn, dot(cross(ab, ap), n)/nn
	if v < 0 || w < 0 || v+w > 1 {
		return 0, false
	}
	h := dot(ap, n)
	return h * h / nn, true
}

// lineToTriangle returns the least distance squared between the straight piece
// p-q and a triangle that it does not pass through, and the nearest place on it.
func lineToTriangle(p, q, a, b, c geometry.Point3) (float64, geometry.Point3) {
	best, at := math.Inf(1), p
	keep := func(d float64, on geometry.Point3) {
		if d < best {
			best, at = d, on
		}
	}
	for _, end := range [2]geometry.Point3{p, q} {
		if d, ok := pointToFace(end, a, b, c); ok {
			keep(d, end)
		}
	}
	for _, s := range [3][2]geometry.Point3{{a, b}, {b, c}, {c, a}} {
		keep(lineToLine(p, q, s[0], s[1]))
	}
	return best, at
}
