package pack

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// polygon is corners counterclockwise.
type polygon []geometry.Point

// convex parts what a loop and its holes go round into convex pieces that cover it. Where
// the loops cross one another, the convex shape round all of it is the one piece.
func convex(outer []geometry.Point, holes [][]geometry.Point) []polygon {
	loop := slices.Clone(outer)
	for _, h := range holes {
		loop = joined(loop, h)
	}
	out := merged(ears(loop))
	if off := areaOf(out) - doubled(loop)/2; math.Abs(off) > 1e-6*doubled(loop) {
		return []polygon{around(outer)}
	}
	return out
}

func areaOf(pieces []polygon) float64 {
	sum := 0.0
	for _, p := range pieces {
		sum += doubled(p) / 2
	}
	return sum
}

// joined cuts from a hole, clockwise, to the loop round it, where both are nearest: the
// two become one loop.
func joined(loop, hole []geometry.Point) []geometry.Point {
	if doubled(hole) > 0 {
		hole = slices.Clone(hole)
		slices.Reverse(hole)
	}
	from, to, least := 0, 0, math.Inf(1)
	for i, p := range loop {
		for k, q := range hole {
			if d := length(p.Sub(q)); d < least {
				from, to, least = i, k, d
			}
		}
	}
	out := slices.Clone(loop[:from+1])
	out = append(append(out, hole[to:]...), hole[:to+1]...)
	return append(out, loop[from:]...)
}

// ears cuts a loop into triangles, the one with the shortest cut first: then pieces of
// strips lie across them. Where no ear is left, because the loop touches itself, the
// rest is taken whole as the convex shape round it.
func ears(loop []geometry.Point) []polygon {
	var out []polygon
	for len(loop) > 3 {
		n, at, least := len(loop), -1, math.Inf(1)
		for i := range loop {
			a, c := loop[i], loop[(i+2)%n]
			if d := length(c.Sub(a)); d < least && ear(loop, i) {
				at, least = i, d
			}
		}
		if at < 0 {
			return append(out, around(loop))
		}
		a, b, c := loop[at], loop[(at+1)%n], loop[(at+2)%n]
		if leftOf(a, b, c) > 0 {
			out = append(out, polygon{a, b, c})
		}
		i := (at + 1) % n
		loop = slices.Delete(slices.Clone(loop), i, i+1)
	}
	if leftOf(loop[0], loop[1], loop[2]) > 0 {
		out = append(out, polygon(loop))
	}
	return out
}

// ear reports whether the corner after point i can be cut off: it is full, or straight,
// and no other point lies in it.
func ear(loop []geometry.Point, i int) bool {
	n := len(loop)
	a, b, c := loop[i], loop[(i+1)%n], loop[(i+2)%n]
	turn := leftOf(a, b, c)
	if turn == 0 {
		return true
	}
	if turn < 0 {
		return false
	}
	for k := 3; k < n; k++ {
		p := loop[(i+k)%n]
		if p != a && p != b && p != c && leftOf(a, b, p) >= 0 && leftOf(b, c, p) >= 0 && leftOf(c, a, p) >= 0 {
			return false
		}
	}
	return true
}

// merged joins pieces that share an edge, as long as what they make is convex.
func merged(in []polygon) []polygon {
	for i := 0; i < len(in); i++ {
		for k := i + 1; k < len(in); k++ {
			if both, ok := union(in[i], in[k]); ok {
				in[i] = both
				in = slices.Delete(in, k, k+1)
				k = i
			}
		}
	}
	return in
}

// union joins two convex pieces along an edge that they share; ok is false when they share
// none or do not make a convex piece.
func union(p, q polygon) (polygon, bool) {
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		for k := range q {
			if q[k] != b || q[(k+1)%len(q)] != a {
				continue
			}
			var out polygon
			for m := 1; m <= len(p); m++ {
				out = append(out, p[(i+m)%len(p)])
			}
			for m := 2; m < len(q); m++ {
				out = append(out, q[(k+m)%len(q)])
			}
			return out, full(out)
		}
	}
	return nil, false
}

// full reports whether no corner is hollow.
func full(p polygon) bool {
	for i := range p {
		if leftOf(p[i], p[(i+1)%len(p)], p[(i+2)%len(p)]) < 0 {
			return false
		}
	}
	return true
}

// around is the convex shape round points.
func around(pts []geometry.Point) polygon {
	sorted := slices.Clone(pts)
	slices.SortStableFunc(sorted, func(p, q geometry.Point) int {
		if p.X != q.X {
			return sign(p.X - q.X)
		}
		return sign(p.Y - q.Y)
	})
	var out polygon
	chain := func(p geometry.Point, least int) {
		for len(out) >= least && leftOf(out[len(out)-2], out[len(out)-1], p) <= 0 {
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	for _, p := range sorted {
		chain(p, 2)
	}
	least := len(out) + 1
	for _, p := range slices.Backward(sorted[:len(sorted)-1]) {
		chain(p, least)
	}
	return out[:len(out)-1]
}

func sign(v float64) int {
	switch {
	case v < 0:
		return -1
	case v > 0:
		return 1
	}
	return 0
}
