package effort

import (
	"ribwright/geometry/curve"
)

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
