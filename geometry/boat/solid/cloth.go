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
	for _, side := range []float64{1, -1} {
		rows := make([][]geometry.Point3, len(stations))
		for i, x := range stations {
			for _, p := range cuts[i] {
				rows[i] = append(rows[i], geometry.Point3{X: x, Y: p.X * side, Z: p.Y})
			}
		}
		b.cover(rows, side)
	}
}

func (b *Boat) cover(rows [][]geometry.Point3, side float64) {
	corners := len(rows[0])
	for k := range corners {
		line := Line{Part: Cloth, Number: k, Side: side}
		for i := range rows {
			line.Points = append(line.Points, rows[i][k])
		}
		b.Lines = append(b.Lines, line)
	}
	quads := (len(rows) - 1) * (corners - 1)
	b.Faces, b.Folds = slices.Grow(b.Faces, 2*quads), slices.Grow(b.Folds, 3*quads)
	for i := 1; i < len(rows); i++ {
		for k := 1; k < corners; k++ {
			p, q, r, s := rows[i-1][k-1], rows[i-1][k], rows[i][k], rows[i][k-1]
			b.quad(p, q, r, s)
			b.Folds = append(b.Folds, Fold{p, r, q, s})
			if k+1 < corners {
				b.Folds = append(b.Folds, Fold{q, r, p, rows[i][k+1]})
			}
			if i+1 < len(rows) {
				b.Folds = append(b.Folds, Fold{s, r, p, rows[i+1][k]})
			}
		}
	}
}
