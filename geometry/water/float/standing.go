package float

import (
	"math"

	"ribwright/geometry/measure"
)

// Standing is how a boat stands against what would roll it: what a paddler feels of the
// curve of levers.
type Standing struct {
	Most     float64 // mm, the greatest righting lever; 0 where nothing rights the boat
	MostAt   float64 // radians, where it has that lever
	Moment   float64 // N mm, the greatest righting moment
	GoesOver float64 // radians, past which the boat goes over by itself; 0 where nothing rights it, NaN where water comes in first
	Flooding float64 // radians, at which water comes in; NaN where it does not up to 90 degrees
	Held     float64 // mm, how far the people's whole weight can be moved aside at once and held; 0 with nobody aboard
	Trim     float64 // mm over the waterline's length, positive with the bow up
}

// Fine is the step of the levers of a boat that is told of, radians.
const Fine = 2.5 * math.Pi / 180

// Standing reads a curve to starboard of a boat with a whole mass, kg, of which so much
// are the people's own, and that lies at rest as given.
//
// Between the steps of the curve a parabola is laid through three levers: with steps of
// 5 degrees the greatest lever is good to some 0.2 mm.
func (c Curve) Standing(mass, people float64, rest Hydrostatics) Standing {
	s := Standing{GoesOver: c.goesOver(), Flooding: c.Flooding, Trim: rest.TrimRise()}
	s.MostAt, s.Most = c.most(func(v Lever) float64 { return v.GZ })
	s.Moment = mass * measure.Gravity * s.Most
	if people > 0 {
		// A weight moved aside by a in the boat heels with a cos(heel) times its share.
		_, arm := c.most(func(v Lever) float64 { return v.GZ / math.Cos(v.Heel) })
		s.Held = arm * mass / people
	}
	return s
}

// Over returns the heel past which nothing rights the boat any more, radians: where it
// goes over by itself, or where water comes in if that is earlier, or 90 degrees.
func (s Standing) Over() float64 {
	if !math.IsNaN(s.GoesOver) {
		return s.GoesOver
	} else if !math.IsNaN(s.Flooding) {
		return s.Flooding
	}
	return math.Pi / 2
}

// goesOver finds where the lever falls to nothing after its greatest.
func (c Curve) goesOver() float64 {
	best := c.best(func(v Lever) float64 { return v.GZ })
	if best == 0 {
		return 0
	}
	for i := best + 1; i < len(c.Levers); i++ {
		if a, b := c.Levers[i-1], c.Levers[i]; b.GZ <= 0 {
			return a.Heel + (b.Heel-a.Heel)*a.GZ/(a.GZ-b.GZ)
		}
	}
	return math.NaN()
}

// best is the number of the lever of which something is greatest.
func (c Curve) best(of func(Lever) float64) int {
	best := 0
	for i, v := range c.Levers {
		if of(v) > of(c.Levers[best]) {
			best = i
		}
	}
	return best
}

// most returns the heel at which something of the levers is greatest, and that.
func (c Curve) most(of func(Lever) float64) (heel, value float64) {
	i := c.best(of)
	if i < len(c.Levers) {
		heel, value = c.Levers[i].Heel, of(c.Levers[i])
	}
	if i == 0 || i >= len(c.Levers)-1 {
		return heel, value
	}
	a, b := c.Levers[i-1], c.Levers[i+1]
	left, right := a.Heel-heel, b.Heel-heel
	fall, rise := (of(a)-value)/left, (of(b)-value)/right
	bend := (rise - fall) / (right - left)
	if slope := fall - bend*left; bend < 0 {
		step := -slope / (2 * bend)
		heel, value = heel+step, value+slope*step+bend*step*step
	}
	return heel, value
}
