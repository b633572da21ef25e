package geometry

// Beside returns what of a closed polygon lies on the side of a line where a measure that is
// linear in place is 0 or more: the points there, and those where its sides cross the line.
// Of a hollow polygon several parts may come back joined along the line.
func Beside(pts []Point, side func(Point) float64) []Point {
	var out []Point
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		sa, sb := side(a), side(b)
		if sa >= 0 {
			out = append(out, a)
		}
		if sa*sb < 0 {
			out = append(out, a.Lerp(b, sa/(sa-sb)))
		}
	}
	return out
}
