// Package effort estimates what it takes to move a hull through still, deep
// water: friction by the ITTC-1957 line and waves by Michell's thin-ship
// integral. The figures compare designs with each other. They leave out wind,
// waves, shallow water, the ribs showing through the cloth, and how well the
// paddler paddles.
package effort

import (
	"math"

	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/water"
)

// Friction returns the coefficient of the ITTC-1957 line, 0.075 / (lg Re - 2)^2,
// for a Reynolds number on the waterline's length; 0 at or below 1000, where the
// line means nothing.
//
// Source: ITTC recommended procedure 7.5-02-03-01; quoted in Morrall, NPL Ship
// Report 142 (1970).
func Friction(re float64) float64 {
	if !(re > 1000) {
		return 0
	}
	l := math.Log10(re) - 2
	return 0.075 / (l * l)
}

// Allowance is what the form adds to the friction, as a share of it. Common
// practice for slender round hulls, from memory, no source: 0.05 to 0.15.
const Allowance = 0.08

// Efficiency is the share of the work at the paddle that moves the boat. From
// memory, 0.60 to 0.75.
const Efficiency = 0.65

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
	p.Wave = h.Grid.Waves(w.Density, u)
	p.Total = p.Friction + p.Form + p.Wave
	p.Power = p.Total * u / Efficiency
	return p
}

// SpeedAt returns the speed in m/s that the power at the paddle, W, keeps up, to 0.0001
// m/s and no more than 5 m/s; humps do not matter, for power rises with speed.
//
// How: power goes with the cube of the speed or nearly so, and its cube root with the
// speed: along that, six speeds or so are tried.
func (h Hull) SpeedAt(w water.Water, power float64) float64 {
	const fastest, close = 5.0, 1e-4
	if !(power > 0) {
		return 0
	}
	return curve.Root(0, fastest, close, func(u float64) float64 { return math.Cbrt(h.At(w, u).Power) - math.Cbrt(power) })
}
