package offsets

import (
	"math"

	"ribwright/geometry"
)

// kink is the change of slope at midship, as a share of the waterline's mean slope from
// midship to the end, from which the lines are taken to break there. Readings 3 mm off,
// 300 mm apart, make some 0.2 of a fair line; a wedge has 2. Missed, a break of this size
// costs 0.4 % of the volume with nine stations and less with more. Our own choice.
const kink = 0.5

// breaksAt reports whether the lines break at a station: whether at any height the
// half-breadth comes in with another slope than it goes out. Where it does not, the rule
// along the boat runs on.
//
// How: slopes are those of the cubics through the station and its next three neighbors
// on either side, of as many as there are.
func (t *Table) breaksAt(i int) bool {
	const side = 3
	if i < 1 || i > len(t.Stations)-2 {
		return false
	}
	s := t.Stations[i]
	reach := min(s.X-t.Stations[0].X, t.Stations[len(t.Stations)-1].X-s.X)
	const heights = 8
	for k := 1; k <= heights; k++ {
		z := s.Keel().Y + (s.Sheer().Y-s.Keel().Y)*float64(k)/heights
		mean := s.breadthAt(z) / reach
		in := t.slope(z, i, max(0, i-side), i)
		out := t.slope(z, i, i, min(len(t.Stations)-1, i+side))
		if math.Abs(out-in) > kink*mean {
			return true
		}
	}
	return false
}

// slope is that of the polynomial through the half-breadths at the height z of the
// stations from to to, at station i of them.
func (t *Table) slope(z float64, i, from, to int) float64 {
	x := func(k int) float64 { return t.Stations[k].X - t.Stations[i].X }
	sum := 0.0
	for k := from; k <= to; k++ {
		if k == i {
			continue
		}
		// Lagrange's polynomial of k is nought at all others; its slope at i is that of
		// its factor there.
		l := 1 / x(k)
		for m := from; m <= to; m++ {
			if m != k && m != i {
				l *= -x(m) / (x(k) - x(m))
			}
		}
		sum += l * (t.Stations[k].breadthAt(z) - t.Stations[i].breadthAt(z))
	}
	return sum
}

// breadthAt is the half-breadth at a height: that of the nearest point above and below,
// on a straight line between; 0 under the keel, and that of the sheer over it.
func (s Station) breadthAt(z float64) float64 {
	last := geometry.Point{Y: s.Keel().Y}
	for _, p := range s.Points {
		if p.Y >= z {
			if z < last.Y || p.Y == last.Y {
				return last.X
			}
			return last.Lerp(p, (z-last.Y)/(p.Y-last.Y)).X
		}
		last = p
	}
	return last.X
}
