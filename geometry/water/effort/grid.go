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

// steps are a grid made ready for Michell's integrals: by how much the half-breadths grow
// over each cell from one station to the next, mm. It is for one goroutine.
type steps struct {
	cell, deep float64   // m: a cell's length, and the way from one waterline to the next
	first      float64   // m: from the middle to the middle of the first pair's cells
	pairs      [][]both  // from the middle out, each from the water down
	share      []float64 // room for what each waterline has of one wave
}

// both are two cells as far ahead of the middle as abaft it: what they grow together goes
// with the cosine of the phase, what the one grows more than the other with the sine.
type both struct{ even, odd float64 }

func (g Grid) steps() steps {
	n, lines := len(g.Half)-1, len(g.Half[0])
	s := steps{cell: g.Length / 1000 / float64(n), deep: g.Depth / 1000 / float64(lines-1), share: make([]float64, lines)}
	s.first = s.cell * float64(1-n%2) / 2
	all := make([]both, (n+1)/2*lines)
	for fore := n / 2; fore < n; fore++ {
		pair, aft := all[:lines], n-1-fore
		all = all[lines:]
		for j := range pair {
			d, e := g.Half[fore+1][j]-g.Half[fore][j], g.Half[aft+1][j]-g.Half[aft][j]
			if fore == aft {
				e = 0 // one cell in the middle
			}
			pair[j] = both{d + e, d - e}
		}
		s.pairs = append(s.pairs, pair)
	}
	return s
}

// amplitude returns Michell's P and Q of one wave direction, m2: the integrals
// over the middle plane of the slope of the half-breadth along the boat times
// exp(-k0 l2 d) and the cosine and sine of k0 l x, x from the middle of the grid.
// k0 is g/U2 in 1/m; l, at least 1, is the secant of the wave's direction.
//
// How: the half-breadth is taken as straight between stations and between
// waterlines, and the exponentials are integrated exactly against that, so that
// short waves lose nothing to the grid.
func (s *steps) amplitude(k0, l float64) (p, q float64) {
	share := s.shares(k0 * l * l)
	k := k0 * l * s.cell
	sin, cos := math.Sincos(k0 * l * s.first)
	ds, dc := math.Sincos(k)
	for _, pair := range s.pairs {
		pair = pair[:len(share)]
		e, o := 0.0, 0.0
		for j, w := range share {
			e += w * pair[j].even
			o += w * pair[j].odd
		}
		p += e * cos
		q += o * sin
		sin, cos = sin*dc+cos*ds, cos*dc-sin*ds
	}
	// One cell spans exp(i k x) h = sinc(k/2) exp(i k middle); its slope is the
	// step over h.
	step := curve.Sinc(k / 2)
	return p * step, q * step
}

// shares are what the half-breadth on each waterline has of the integral of a station
// against exp(-q d), m by mm of it; the waterlines that lie so deep that the waves are
// not felt are left out.
func (s *steps) shares(q float64) []float64 {
	const unfelt = 30 // e to the -30
	a := q * s.deep
	r := math.Exp(-a)
	first, inner, last := hats(a, r)
	deep := len(s.share)
	if a*float64(deep) > unfelt {
		deep = min(deep, 2+int(unfelt/a))
	}
	h := s.deep / 1000
	s.share[0] = first * h
	for j, fall := 1, h; j < deep; j, fall = j+1, fall*r {
		s.share[j] = inner * fall
		if j == len(s.share)-1 {
			s.share[j] = last * fall
		}
	}
	return s.share[:deep]
}

// hats returns the integrals of a hat of unit half-width against exp(-a t), from
// where each begins: the half hat at the surface, a whole hat, and the half hat
// that ends a row; e is exp(-a). The series serves where the quotients would lose digits.
func hats(a, e float64) (first, inner, last float64) {
	if a < 1e-3 {
		return 0.5 - a/6 + a*a/24, 1 - a + a*a*7/12, 0.5 - a/3 + a*a/8
	}
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
