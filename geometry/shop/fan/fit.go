package fan

import (
	"math"

	"ribwright/geometry/equations"
)

// point is a mark of one boat: where it is read, as shares of the board's two scales,
// and where it lies, mm.
type point struct{ u, v, y float64 }

// corners are where a ray lies at the ends of both scales, mm: [beam][reading], 0 the
// least. Between them it is straight along either scale.
type corners [2][2]float64

// at is where the ray lies at shares of the two scales.
func (c corners) at(u, v float64) float64 {
	low := c[0][0] + (c[0][1]-c[0][0])*u
	high := c[1][0] + (c[1][1]-c[1][0])*u
	return low + (high-low)*v
}

// worst is the greatest distance of the points from a ray, mm.
func (c corners) worst(points []point) (out float64) {
	for _, p := range points {
		out = math.Max(out, math.Abs(c.at(p.u, p.v)-p.y))
	}
	return out
}

// fitted is the ray of least worst error through the points, nearly: within a hundredth
// of it. A net has a second scale, a ray none.
//
// How: Lawson's weights (1961): least squares again and again, each point weighed anew by
// how far it lies off, which comes to the least worst error.
func fitted(points []point, net bool) corners {
	const rounds = 150
	weights := make([]float64, len(points))
	for i := range weights {
		weights[i] = 1 / float64(len(points))
	}
	var best corners
	least := math.Inf(1)
	for range rounds {
		c := squares(points, weights, net)
		if w := c.worst(points); w < least {
			best, least = c, w
		}
		sum := 0.0
		for i, p := range points {
			weights[i] *= math.Abs(c.at(p.u, p.v) - p.y)
			sum += weights[i]
		}
		if sum < 1e-9 { // all lie on it
			break
		}
		for i := range weights {
			weights[i] /= sum
		}
	}
	return best
}

// squares is the ray of least weighed squares.
func squares(points []point, weights []float64, net bool) corners {
	n := 2
	if net {
		n = 4
	}
	mean := 0.0
	for i, p := range points {
		mean += weights[i] * p.y
	}
	m, y := make([][]float64, n), make([]float64, n)
	for a := range m {
		m[a] = make([]float64, n)
	}
	for i, p := range points {
		shares := [4]float64{1 - p.u, p.u, 0, 0}
		if net {
			shares = [4]float64{(1 - p.u) * (1 - p.v), p.u * (1 - p.v), (1 - p.u) * p.v, p.u * p.v}
		}
		for a := range n {
			for b := range n {
				m[a][b] += weights[i] * shares[a] * shares[b]
			}
			y[a] += weights[i] * shares[a] * (p.y - mean)
		}
	}
	for a := range n {
		m[a][a] += flat
	}
	x, _ := equations.Eliminate(m, y) // flat leaves no two rows alike
	return corners{{mean + x[0], mean + x[1]}, {mean + x[n-2], mean + x[n-1]}}
}

// flat draws the corners of a ray so little towards its mean that no reading feels it, and
// keeps those where no boat lies from running away.
const flat = 1e-7
