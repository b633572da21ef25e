package pack

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// grid is what points are rounded to, mm, so that the last digits of a processor do not
// send a search another way. Our own choice.
const grid = 1.0 / 1024

// simple returns the loop with fewer points, counterclockwise or, as a hole, clockwise, so
// that the part lies to the left. The part only ever grows, by little more than the
// tolerance, mm, and by hollows whose mouth is no wider than the gap: nothing can lie in
// them.
func simple(loop []geometry.Point, hole bool, tolerance, gap float64) []geometry.Point {
	pts := slices.Clone(loop)
	if tolerance > 0 {
		for i, p := range pts {
			pts[i] = geometry.Point{X: math.Round(p.X/grid) * grid, Y: math.Round(p.Y/grid) * grid}
		}
	}
	pts = slices.Compact(pts)
	if n := len(pts); n > 1 && pts[0] == pts[n-1] {
		pts = pts[:n-1]
	}
	if doubled(pts) < 0 != hole {
		slices.Reverse(pts)
	}
	if tolerance <= 0 {
		return pts
	}
	pts = bridged(pts, gap)
	for len(pts) > 4 {
		next, ok := thinned(pts, tolerance)
		if !ok {
			break
		}
		pts = next
	}
	return pts
}

// doubled is twice the area that a loop goes round, positive where it turns left.
func doubled(pts []geometry.Point) float64 {
	sum := 0.0
	for i, p := range pts {
		sum += cross(p, pts[(i+1)%len(pts)])
	}
	return sum
}

func cross(p, q geometry.Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

// leftOf is how far p lies to the left of the line from a to b, times the line's length.
func leftOf(a, b, p geometry.Point) float64 { return cross(b.Sub(a), p.Sub(a)) }

func length(p geometry.Point) float64 { return math.Sqrt(float64(p.X*p.X) + float64(p.Y*p.Y)) }

// bridged closes hollows with a mouth no wider than the gap.
func bridged(pts []geometry.Point, gap float64) []geometry.Point {
	for i := 0; i < len(pts) && gap > 0; i++ {
		n := len(pts)
		for k := n / 2; k >= 2; k-- {
			if hollow(pts, i, k, gap) {
				var out []geometry.Point
				for m := k; m <= n; m++ {
					out = append(out, pts[(i+m)%n])
				}
				pts, i = out, -1
				break
			}
		}
	}
	return pts
}

// hollow reports whether the k edges from point i go round a hollow with a narrow mouth.
func hollow(pts []geometry.Point, i, k int, gap float64) bool {
	n := len(pts)
	a, b := pts[i], pts[(i+k)%n]
	if n-k < 2 || length(b.Sub(a)) > gap {
		return false
	}
	for m := 1; m < k; m++ {
		if leftOf(a, b, pts[(i+m)%n]) < 0 {
			return false
		}
	}
	return true
}

// thinned leaves out the one corner or edge that costs least, when it costs no more than
// the tolerance: a hollow corner is cut across, a full edge is left out where its
// neighbors meet outside.
func thinned(pts []geometry.Point, tolerance float64) ([]geometry.Point, bool) {
	n, least, at := len(pts), tolerance, -1
	var put []geometry.Point
	drop := 0
	for i := range pts {
		a, b, c, d := pts[i], pts[(i+1)%n], pts[(i+2)%n], pts[(i+3)%n]
		if leftOf(a, b, c) <= 0 {
			if off := b.Off(a, c); off <= least {
				least, at, drop, put = off, i, 1, nil
			}
			continue
		}
		if x, ok := meets(a, b, c, d); ok {
			if off := x.Off(b, c); off <= least {
				least, at, drop, put = off, i, 2, []geometry.Point{x}
			}
		}
	}
	if at < 0 || n-drop+len(put) < 3 {
		return pts, false
	}
	out := slices.Clone(put)
	for m := drop + 1; m <= n; m++ {
		out = append(out, pts[(at+m)%n])
	}
	return out, true
}

// meets is where the edges a-b and c-d of a loop meet beyond b and c, when both corners
// are full and the edges turn toward each other. It lies on the grid, on the outside.
func meets(a, b, c, d geometry.Point) (geometry.Point, bool) {
	u, v := b.Sub(a), d.Sub(c)
	turn := cross(u, v)
	if leftOf(b, c, d) <= 0 || turn <= 1e-3*length(u)*length(v) {
		return geometry.Point{}, false
	}
	t := cross(c.Sub(b), v) / turn
	return geometry.Point{X: b.X + float64(u.X*t), Y: b.Y + float64(u.Y*t)}, t > 0
}
