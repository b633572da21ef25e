package curve

import (
	"cmp"
	"slices"

	"ribwright/geometry"
)

// Crossing returns a place where a closed path crosses itself; false when it does not.
// Chords no farther than tol (mm) from the path are looked at; those that follow one
// another, or that only touch, do not cross. Requires tol > 0.
//
// Cost: n chords, sorted along x, each against those that begin before it ends.
func (p Path) Crossing(tol float64) (geometry.Point, bool) {
	pts := slices.Compact(p.Flatten(tol))
	type chord struct {
		place     int     // of its end among the points
		from, to  float64 // along x
		low, high float64 // along y
	}
	all := make([]chord, 0, len(pts))
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		all = append(all, chord{i, min(a.X, b.X), max(a.X, b.X), min(a.Y, b.Y), max(a.Y, b.Y)})
	}
	slices.SortStableFunc(all, func(c, d chord) int { return cmp.Or(cmp.Compare(c.from, d.from), c.place-d.place) })
	for i := range all {
		c := &all[i]
		for j := i + 1; j < len(all) && all[j].from <= c.to; j++ {
			d := &all[j]
			if d.low > c.high || d.high < c.low {
				continue
			}
			apart := max(c.place, d.place) - min(c.place, d.place)
			if apart == 1 || apart == len(all)-1 { // they share an end, but for rounding
				continue
			}
			if at, ok := meet(pts[c.place-1], pts[c.place], pts[d.place-1], pts[d.place]); ok {
				return at, true
			}
		}
	}
	return geometry.Point{}, false
}

// meet returns where the straight piece from a to b passes through the one from c to d;
// false where it ends on it, or on its line.
func meet(a, b, c, d geometry.Point) (geometry.Point, bool) {
	ab, cd := b.Sub(a), d.Sub(c)
	fromC, fromD := ab.Cross(c.Sub(a)), ab.Cross(d.Sub(a))
	fromA, fromB := cd.Cross(a.Sub(c)), cd.Cross(b.Sub(c))
	if !(fromC*fromD < 0 && fromA*fromB < 0) {
		return geometry.Point{}, false
	}
	return a.Lerp(b, fromA/(fromA-fromB)), true
}
