package nest

import (
	"math"

	"ribwright/geometry"
)

// band is everything within r of the straight piece a-b.
type band struct {
	a, b geometry.Point
	r    float64
}

// reach returns from where to where the band goes in x between the heights y0
// and y1; ok is false when it does not come there.
func (k band) reach(y0, y1 float64) (x0, x1 float64, ok bool) {
	x0, x1 = math.Inf(1), math.Inf(-1)
	add := func(x float64) { x0, x1 = math.Min(x0, x), math.Max(x1, x) }
	within := func(y float64) bool { return y >= y0 && y <= y1 }
	for _, p := range []geometry.Point{k.a, k.b} {
		if within(p.Y) {
			add(p.X - k.r)
			add(p.X + k.r)
		}
		for _, y := range []float64{y0, y1} {
			if d := k.r*k.r - (y-p.Y)*(y-p.Y); d >= 0 {
				add(p.X - math.Sqrt(d))
				add(p.X + math.Sqrt(d))
			}
		}
	}
	side := k.b.Sub(k.a).Unit().Left().Scale(k.r)
	for _, s := range []geometry.Point{side, side.Scale(-1)} {
		p, q := k.a.Add(s), k.b.Add(s)
		for _, y := range []float64{y0, y1} {
			if p.Y != q.Y && (p.Y-y)*(q.Y-y) <= 0 {
				add(p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y))
			}
		}
		if within(p.Y) {
			add(p.X)
		}
		if within(q.Y) {
			add(q.X)
		}
	}
	return x0, x1, x0 <= x1
}
