package rendertest

import (
	"math"
	"slices"
)

// TurnedOver reports whether one outline is another seen from behind rather than the other
// itself, however it is turned: how far its edge is from its middle, walked round
// counter-clockwise, follows the other's walked round the other way. An outline that is alike from
// both sides never is.
func TurnedOver(a, b Polygon) bool {
	const clear = 1.0 // mm; steps of a walk are some 2 mm
	p, q := a.reaches(), b.reaches()
	back := slices.Clone(q)
	slices.Reverse(back)
	return least(p, q) > clear+least(p, back)
}

// steps is how many places of an edge are looked at.
const steps = 720

// reaches are the distances of an edge from the middle of its points at equal steps along it,
// counter-clockwise.
func (p Polygon) reaches() []float64 {
	var long, area float64
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		long += a.To(b)
		area += a.X*b.Y - b.X*a.Y
	}
	var pts []Point
	walked := 0.0
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		far := a.To(b)
		for float64(len(pts))*long/steps < walked+far && len(pts) < steps {
			t := (float64(len(pts))*long/steps - walked) / far
			pts = append(pts, Point{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)})
		}
		walked += far
	}
	var mid Point
	for _, q := range pts {
		mid = Point{mid.X + q.X/float64(len(pts)), mid.Y + q.Y/float64(len(pts))}
	}
	out := make([]float64, len(pts))
	for i, q := range pts {
		out[i] = q.To(mid)
	}
	if area < 0 {
		slices.Reverse(out)
	}
	return out
}

// least is the root mean square by which two walks differ where they differ least.
func least(p, q []float64) float64 {
	best := math.Inf(1)
	for k := range q {
		sum := 0.0
		for i, r := range p {
			d := r - q[(i+k)%len(q)]
			if sum += d * d; sum > best {
				break
			}
		}
		best = math.Min(best, sum)
	}
	return math.Sqrt(best / float64(len(p)))
}
