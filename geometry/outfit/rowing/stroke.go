package rowing

import "math"

// Stroke is where the handles go, as heights and angles at one rowlock.
type Stroke struct {
	Drive   float64 // height of the handle over the seat with the blade in, mm
	Recover float64 // with the blade carried clear of the water, mm
	Slope   float64 // of the oar with the blade in, radians below level
}

// How deep the blade's tip goes and how high it is carried, mm. From memory.
const (
	buried = 150.0
	clear  = 100.0
)

// stroke works out the heights for a rowlock over the water and over the seat, mm;
// ok is false when the oar cannot reach the water.
func stroke(o Oar, overWater, overSeat float64) (Stroke, bool) {
	out := o.Outboard()
	sin := (overWater + buried) / out
	if !(sin < 1) {
		return Stroke{}, false
	}
	back := (overWater - clear) / out
	return Stroke{
		Drive: overSeat + o.Inboard*sin, Recover: overSeat + o.Inboard*back, Slope: math.Asin(sin),
	}, true
}
