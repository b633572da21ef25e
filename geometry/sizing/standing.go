package sizing

import (
	"cmp"
	"errors"
	"math"

	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water/float"
)

// lying is a boat at rest on the water with all aboard.
type lying struct {
	hull   *float.Hull
	load   float.Load
	people float64 // kg, of the load
	live   float64 // kg, of those that are live cargo
	rest   float.Hydrostatics
}

// standingNames are the values that say how a boat stands.
func standingNames() []string {
	return []string{"gz_max", "righting_moment", "stands_to", "gz_left", "flooding", "held_shift", "trim_rise"}
}

// mustStand is the heel before which no boat may go over by itself, radians.
const mustStand = 40 * math.Pi / 180

// stand heels the boat by steps, radians, until water comes in, and notes how it stands.
func (f Found) stand(l lying, density, step float64) (float.Standing, error) {
	c, err := l.hull.Curve(l.load, density, step)
	if fault := (*float.Fault)(nil); errors.As(err, &fault) && fault.Outcome == float.Swamps {
		c, err = float.Curve{}, nil // its sheer is under at rest: it floods at once
	}
	s := c.Standing(l.load.Mass, l.people, l.rest)
	f["gz_left"] = leverAt(c, mustStand)
	f["gz_max"], f["righting_moment"], f["held_shift"], f["trim_rise"] = s.Most, s.Moment*1000, s.Held, s.Trim
	if f["live_held"] = 0; l.live > 0 {
		f["live_held"] = s.Held * l.people / l.live
	}
	f["stands_to"], f["flooding"] = s.Over(), s.Flooding
	if math.IsNaN(s.Flooding) {
		f["flooding"] = math.Pi / 2
	}
	return s, err
}

// leverAt is the righting lever at a heel, radians, mm: in a straight line between the
// steps of the curve, and that of its last lever past it. 0 for an empty curve.
func leverAt(c float.Curve, heel float64) float64 {
	last := 0.0
	for i, v := range c.Levers {
		if v.Heel >= heel && i > 0 {
			a := c.Levers[i-1]
			return a.GZ + (v.GZ-a.GZ)*(heel-a.Heel)/(v.Heel-a.Heel)
		}
		last = v.GZ
	}
	return last
}

// coarse is the step of the levers of a sketch, radians.
const coarse = 5 * math.Pi / 180

// stand works out how the boat of the last round stands, where that is asked for.
func (c *Case) stand() error {
	if !c.Levers {
		return nil
	}
	if _, err := c.found.stand(c.lying, c.Brief.Density, coarse); err != nil {
		return err
	}
	return c.found.put(c.run)
}

// firmnessSteps is how often the firmness is tried before the nearest is taken.
const firmnessSteps = 24

// enough is how far under 1 the standing may be, as a share: a hundredth of a millimeter
// of lever.
const enough = 3e-4

// firm makes the boat no firmer than it must be for its standing: it finds the least
// firmness, from 0 on, at which the family's standing comes to 1, or takes the family's
// firmest where none does. A family without these has nothing to find.
func (c *Case) firm() error {
	p := c.Family.Program
	if !p.HasFormula("standing") || !p.HasFormula("firmest") {
		return nil
	}
	var b bracket
	for range firmnessSteps {
		at, spare := c.run.Number("firmness"), c.run.Number("standing")-1
		next := math.Max(0, math.Min(c.run.Number("firmest"), b.next(at, spare)))
		if math.Abs(spare) <= enough || next == at {
			return nil
		}
		if err := cmp.Or(c.run.Set("firmness", formula.Num(next)), c.agree()); err != nil {
			return err
		}
	}
	// Parts in whole pieces may leave a step in the standing: stay on its firm side.
	if !b.firm.known {
		return nil
	}
	return cmp.Or(c.run.Set("firmness", formula.Num(b.firm.at)), c.agree())
}

// bracket is what is known of the firmness that is wanted: one that is too soft and one
// that is firm enough, each with what the standing has to spare there. While one end alone
// is known, each step is at least twice the last: there are stretches in which the standing
// does not change, as where a limit holds the beam and the seat is not low yet.
type bracket struct {
	soft, firm end
	step       float64
}

type end struct {
	at, spare float64
	known     bool
}

// next takes note of a firmness with its spare standing and says which to try next: on
// the chord between the two ends (Illinois), and with one end alone on a slope.
func (b *bracket) next(at, spare float64) float64 {
	const slope = 0.35 // of standing by firmness: less than boats have, so that the step is long enough
	here, there := &b.soft, &b.firm
	if spare >= 0 {
		here, there = there, here
	}
	if here.known { // the other end stays, and is taken for half as far off
		there.spare /= 2
	}
	*here = end{at, spare, true}
	if !there.known {
		b.step = math.Copysign(math.Max(math.Abs(spare)/slope, 2*math.Abs(b.step)), -spare)
		return at + b.step
	}
	return (b.soft.at*b.firm.spare - b.firm.at*b.soft.spare) / (b.firm.spare - b.soft.spare)
}
