package solid

import (
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/skin"
)

// Cover adds the cloth: flat from corner to corner and from station to station, three of
// these to each of the cloth's own, with a line along the stringers' edges, the gunwales'
// and the middle.
func (b *Boat) Cover(c *skin.Cloth) {
	own := c.Stations()
	stations := []float64{own[0]}
	for i, to := range own[1:] {
		from := own[i]
		stations = append(stations, from+(to-from)/3, from+(to-from)*2/3, to)
	}
	cuts := make([][]geometry.Point, len(stations))
	for i, x := range stations {
		cuts[i] = c.At(x)
	}
	b.Folds = slices.Grow(b.Folds, 2*3*len(stations)*len(cuts[0]))
	for _, side := range []float64{1, -1} {
		lines := make([][]geometry.Point3, len(cuts[0]))
		for k := range lines {
			lines[k] = make([]geometry.Point3, len(stations))
			for i, x := range stations {
				lines[k][i] = geometry.Point3{X: x, Y: cuts[i][k].X * side, Z: cuts[i][k].Y}
			}
		}
		b.cover(lines, side)
	}
}

// cover adds the cloth of one side by its lines from the middle outward.
func (b *Boat) cover(lines [][]geometry.Point3, side float64) {
	for k, l := range lines {
		b.Lines = append(b.Lines, Line{Part: Cloth, Number: k, Side: side, Points: l})
		if k > 0 {
			b.Bands = append(b.Bands, Band{A: lines[k-1], B: l})
		}
	}
	for i := 1; i < len(lines[0]); i++ {
		for k := 1; k < len(lines); k++ {
			p, q, r, s := lines[k-1][i-1], lines[k][i-1], lines[k][i], lines[k-1][i]
			b.Folds = append(b.Folds, Fold{p, r, q, s})
			if k+1 < len(lines) {
				b.Folds = append(b.Folds, Fold{q, r, p, lines[k+1][i]})
			}
			if i+1 < len(lines[0]) {
				b.Folds = append(b.Folds, Fold{s, r, p, lines[k][i+1]})
			}
		}
	}
}
