// Package weighing finds what a finished boat weighs, how high its weight lies and how
// steady it is upright: from a scale, the freeboard at three places and a weight that is
// moved across it. Nobody is aboard.
package weighing

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// Tests are what was measured. What is zero or nil was not.
type Tests struct {
	Scale      float64     // kg, the finished boat without anything loose
	Freeboards *[3]float64 // mm, of the boat with nothing in it, from the water up to the top of the gunwale at Boat.At, both sides' mean
	Incline    *Incline
}

// Incline is a test with a weight moved across the boat, first to one side and then as far
// to the other.
type Incline struct {
	Mass     float64   // kg
	Distance float64   // mm from the middle line, the same either way
	Angles   []float64 // radians as read, those to port positive and those to starboard negative
}

// Heel is half the difference between the means of both sides, which takes out a standing
// list to the first order, and how far off it may be, one standard deviation.
func (i Incline) Heel() (angle, off float64) {
	var port, starboard []float64
	for _, a := range i.Angles {
		if a > 0 {
			port = append(port, a)
		} else {
			starboard = append(starboard, -a)
		}
	}
	p, s := mean(port), mean(starboard)
	squares := 0.0
	for _, a := range port {
		squares += (a - p) * (a - p)
	}
	for _, a := range starboard {
		squares += (a - s) * (a - s)
	}
	one := usual.angle
	if free := len(i.Angles) - 2; free > 0 {
		one = math.Max(one, math.Sqrt(squares/float64(free)))
	}
	return (p + s) / 2, one / 2 * math.Sqrt(1/float64(len(port))+1/float64(len(starboard)))
}

// GM is the closed form for a boat that weighs so much with all that is in it, kg, and by
// how much it may be off, one standard deviation, for a weight known to a share.
//
// Source: the inclining experiment as in any text on ships: GM = m d / (M tan a), and its
// relative errors added by squares.
func (i Incline) GM(all, share float64) (gm, off float64) {
	a, da := i.Heel()
	gm = i.Mass * i.Distance / (all * math.Tan(a))
	angle := da / (math.Sin(a) * math.Cos(a))
	return gm, gm * math.Sqrt(sq(usual.moved)+sq(usual.distance/i.Distance)+sq(share)+sq(angle))
}

// Check refuses a test from which nothing follows.
func (i Incline) Check() error {
	const steep = 20 * math.Pi / 180 // an open boat lies near its gunwale there
	port, starboard := false, false
	for _, a := range i.Angles {
		port, starboard = port || a > 0, starboard || a < 0
		if math.Abs(a) > steep {
			return fmt.Errorf("an angle of %.1f deg is steep for an open boat; accepted: up to 20 deg either way, with less weight or nearer to the middle", a*180/math.Pi)
		}
	}
	if !port || !starboard {
		return fmt.Errorf("the boat is heeled both ways; accepted: at least one angle to port, above 0, and one to starboard, below 0")
	}
	if a, _ := i.Heel(); a < steep/10 {
		return fmt.Errorf("a heel of %.1f deg is too little to be read; accepted: 2 deg or more, with more weight or farther from the middle", a*180/math.Pi)
	}
	return nil
}

// Boat is what is known of the boat before it is tested.
type Boat struct {
	Hull    *float.Hull
	Own     float.Load      // as worked out
	Weight  geometry.Point3 // where the middle of the test's weight stands before it is moved
	At      [3]float64      // stations of the three freeboards, mm, from aft
	Density float64         // of the water, kg/m3
}

// usual are standard deviations: of what is measured with a tape, a scale and a telephone,
// and of what was worked out before. Our own choice; the tests themselves need none of them
// to be exact.
var usual = struct {
	scale, scaleShare float64 // kg, and a share of what it shows
	freeboard         float64 // mm: ripples, and both sides' mean
	moved, distance   float64 // a share of the mass moved; mm
	angle             float64 // radians, of one reading
	own               float64 // a share of the mass worked out
	along, high       float64 // mm, of its center
}{
	scale: 0.15, scaleShare: 0.005,
	freeboard: 3,
	moved:     0.01, distance: 4,
	angle: 0.25 * math.Pi / 180,
	own:   0.08,
	along: 30, high: 25,
}

func sq(v float64) float64 { return v * v }

func mean(all []float64) float64 {
	sum := 0.0
	for _, v := range all {
		sum += v
	}
	return sum / float64(len(all))
}
