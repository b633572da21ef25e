package effort

import (
	"math"

	"ribwright/geometry/measure"
	"ribwright/geometry/water"
)

// Hull is what the estimate needs of a boat at rest.
type Hull struct {
	Length float64 // of the waterline, m
	Wetted float64 // m2
	Grid   Grid
}

// Point is the effort at one speed.
type Point struct {
	Speed    float64 // m/s
	Froude   float64 // on the waterline's length
	Friction float64 // N, ITTC-1957 on the wetted surface
	Form     float64 // N, Allowance times the friction
	Wave     float64 // N, Michell
	Total    float64 // N
	Power    float64 // W at the paddle, at Efficiency
}

// At returns the effort at a speed in m/s.
func (h Hull) At(w water.Water, u float64) Point {
	p := Point{Speed: u, Froude: u / math.Sqrt(measure.Gravity*h.Length)}
	p.Friction = 0.5 * w.Density * u * u * h.Wetted * Friction(u*h.Length/w.Viscosity)
	p.Form = Allowance * p.Friction
	p.Wave = h.Grid.Waves(w.Density, u, nil)
	p.Total = p.Friction + p.Form + p.Wave
	p.Power = p.Total * u / Efficiency
	return p
}

// Curve returns the effort at each of the speeds, m/s.
func (h Hull) Curve(w water.Water, speeds []float64) []Point {
	out := make([]Point, len(speeds))
	for i, u := range speeds {
		out[i] = h.At(w, u)
	}
	return out
}

// SpeedAt returns the speed in m/s that the power at the paddle, W, keeps up, by
// bisection to 0.001 m/s; humps do not matter, for power rises with speed.
func (h Hull) SpeedAt(w water.Water, power float64) float64 {
	lo, hi := 0.0, 5.0
	for hi-lo > 0.001 {
		mid := (lo + hi) / 2
		if h.At(w, mid).Power < power {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
