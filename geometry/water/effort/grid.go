package effort

import (
	"math"

	"ribwright/geometry/curve"
)

// Grid is the wet half hull as half-breadths on even stations and waterlines.
type Grid struct {
	Length float64 // mm, from the first station to the last
	Depth  float64 // mm, from the water to the last waterline

	// Half holds one row a station from aft forward; each row has the
	// half-breadths from the waterline down, mm.
	Half [][]float64
}

// Sample fills a grid from the half-breadth at a place x in [0, length] and a
// depth in [0, depth] under the water, mm.
func Sample(length, depth float64, stations, lines int, half func(x, depth float64) float64) Grid {
	g := Grid{Length: length, Depth: depth, Half: make([][]float64, stations)}
	for i := range g.Half {
		g.Half[i] = make([]float64, lines)
		for j := range g.Half[i] {
			g.Half[i][j] = half(length*float64(i)/float64(stations-1), depth*float64(j)/float64(lines-1))
		}
	}
	return g
}

// amplitude returns Michell's P and Q of one wave direction, m2: the integrals
// over the middle plane of the slope of the half-breadth along the boat times
// exp(-k0 l2 d) and the cosine and sine of k0 l x, x from the middle of the grid.
// k0 is g/U2 in 1/m; l, at least 1, is the secant of the wave's direction.
//
// How: the half-breadth is taken as straight between stations and between
// waterlines, and the exponentials are integrated exactly against that, so that
// short waves lose nothing to the grid. It works in the row given, one place a
// station.
func (g Grid) amplitude(k0, l float64, row []float64) (p, q float64) {
	n := len(g.Half)
	h := g.Length / 1000 / float64(n-1)
	g.descend(k0*l*l, row)
	k := k0 * l * h
	// One cell spans exp(i k x) h = sinc(k/2) exp(i k middle); its slope is the
	// step over h.
	step := curve.Sinc(k / 2)
	sin, cos := math.Sincos(-k0 * l * (g.Length/1000/2 - h/2))
	ds, dc := math.Sincos(k)
	for i := 1; i < n; i++ {
		d := row[i] - row[i-1]
		p += d * cos
		q += d * sin
		sin, cos = sin*dc+cos*ds, cos*dc-sin*ds
	}
	return p * step, q * step
}

// descend integrates each station's half-breadths against exp(-q d), m2.
func (g Grid) descend(q float64, row []float64) {
	lines := len(g.Half[0])
	h := g.Depth / 1000 / float64(lines-1)
	a := q * h
	r := math.Exp(-a)
	first, inner, last := hats(a)
	// Deeper than this the waves are not felt.
	deep := lines
	if a > 0 {
		deep = min(lines, 2+int(40/a))
	}
	for i, half := range g.Half {
		sum := 0.0
		if deep == lines {
			sum = half[lines-1] * last
		}
		for j := min(deep, lines-1) - 1; j > 0; j-- {
			sum = half[j]*inner + sum*r
		}
		row[i] = (half[0]*first + sum) * h / 1000
	}
}

// hats returns the integrals of a hat of unit half-width against exp(-a t), from
// where each begins: the half hat at the surface, a whole hat, and the half hat
// that ends a row. The series serves where the quotients would lose digits.
func hats(a float64) (first, inner, last float64) {
	if a < 1e-3 {
		return 0.5 - a/6 + a*a/24, 1 - a + a*a*7/12, 0.5 - a/3 + a*a/8
	}
	e := math.Exp(-a)
	return (a - 1 + e) / (a * a), (1 - e) * (1 - e) / (a * a), (1 - e - a*e) / (a * a)
}

// Offsets are half-breadths of the wet hull on stations and waterlines that need
// not be even: one row a station from aft forward, each from the water down. mm.
type Offsets struct {
	X     []float64 // places of the stations, increasing
	Depth []float64 // of the waterlines under the water, from 0, increasing
	Half  [][]float64
}

// Even runs a fair curve through the offsets, first along each waterline, then
// down each station, and reads the even grid off it. The curves never overshoot.
//
// Errors: places that are not in order, or numbers that are none.
func (o Offsets) Even(stations, lines int) (Grid, error) {
	first, last := o.X[0], o.X[len(o.X)-1]
	deep := o.Depth[len(o.Depth)-1]
	along := make([]*curve.Ease, len(o.Depth))
	for j := range o.Depth {
		y := make([]float64, len(o.X))
		for i := range o.X {
			y[i] = o.Half[i][j]
		}
		e, err := curve.NewEase(o.X, y)
		if err != nil {
			return Grid{}, err
		}
		along[j] = e
	}
	g := Grid{Length: last - first, Depth: deep, Half: make([][]float64, stations)}
	for i := range g.Half {
		x := first + g.Length*float64(i)/float64(stations-1)
		y := make([]float64, len(o.Depth))
		for j := range y {
			y[j] = along[j].At(x)
		}
		down, err := curve.NewEase(o.Depth, y)
		if err != nil {
			return Grid{}, err
		}
		for j := range lines {
			g.Half[i] = append(g.Half[i], down.At(deep*float64(j)/float64(lines-1)))
		}
	}
	return g, nil
}
