package rendertest

import "math"

// CrossesItself reports whether a closed line through the points crosses itself: it looks at
// every two chords that share no end for a place inside both, by Cramer's rule. The last
// point may repeat the first.
func CrossesItself(pts []Point) bool {
	if n := len(pts); n > 1 && pts[0].To(pts[n-1]) < 1e-6 {
		pts = pts[:n-1]
	}
	n := len(pts)
	for i := range n {
		for j := i + 2; j < n; j++ {
			if (j+1)%n != i && inside(pts[i], pts[i+1], pts[j], pts[(j+1)%n]) {
				return true
			}
		}
	}
	return false
}

// Crossing returns the first other outline that each outline crosses, by their numbers; none
// where all are clear of one another. Curves are cut into chords.
func Crossing(all []Outline) map[int]int {
	out := map[int]int{}
	edges, boxes := make([][]Point, len(all)), make([]Box, len(all))
	for i, o := range all {
		edges[i] = o.Points(12)
		boxes[i] = Around(edges[i]...)
		for j := range i {
			if !boxes[i].Meet(boxes[j]).Empty() && cross(edges[i], edges[j]) {
				out[i] = j
				break
			}
		}
	}
	return out
}

func cross(p, q []Point) bool {
	with := Around(q...)
	for i := range len(p) - 1 {
		near := Around(p[i], p[i+1])
		if near.Meet(with).Empty() {
			continue
		}
		for k := range len(q) - 1 {
			if !near.Meet(Around(q[k], q[k+1])).Empty() && inside(p[i], p[i+1], q[k], q[k+1]) {
				return true
			}
		}
	}
	return false
}

// inside reports whether the chords ab and cd meet between their ends.
func inside(a, b, c, d Point) bool {
	const end = 1e-6
	ux, uy, vx, vy, wx, wy := b.X-a.X, b.Y-a.Y, d.X-c.X, d.Y-c.Y, c.X-a.X, c.Y-a.Y
	det := vx*uy - ux*vy
	if math.Abs(det) < 1e-9 {
		return false
	}
	s, t := (vx*wy-vy*wx)/det, (ux*wy-uy*wx)/det
	return s > end && s < 1-end && t > end && t < 1-end
}
