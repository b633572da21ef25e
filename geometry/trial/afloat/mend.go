package afloat

import (
	"math"

	"ribwright/geometry/altered"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/yardstick"
)

// What follows are the measures of the boat that mend what was found of it. Each is a
// sum from the figures at hand, by its first order and a little more: whoever takes it
// tries the boat again, and may find another, smaller step to take.

// more is put on what a sum by its first order gives.
const more = 1.1

// of is the design, nil for a table of offsets.
func (r *Report) of() *design.Design {
	if r.Boat.Frame == nil {
		return nil
	}
	return r.Boat.Frame.Design
}

// deeper is what brings the freeboard to what is asked for.
func (r *Report) deeper() finding.Change {
	d := r.of()
	if d == nil {
		return finding.Change{}
	}
	return altered.Depth.Mend(d, more*(r.Options.Freeboard-r.Rest.Freeboard.Least))
}

// leveled is what brings the ends level: the seats with all who sit on them.
func (r *Report) leveled() finding.Change {
	d := r.of()
	if d == nil {
		return finding.Change{}
	}
	seated := r.seated(d)
	if seated == 0 || math.Abs(r.Rest.TrimRise()) < fussy {
		return finding.Change{}
	}
	return altered.SeatPlace.Mend(d, r.Rest.TrimRise()*r.Rest.MomentToTrim/(seated*measure.Gravity))
}

// fussy is a trim, mm over the waterline, that nobody moves a seat for. Our own choice.
const fussy = 10.0

// seated is the mass of all who sit on seats, kg.
func (r *Report) seated(d *design.Design) (mass float64) {
	for i, p := range r.Boat.People {
		if _, ok := d.SeatOf(p); ok && i < len(r.Boat.Crew) {
			mass += r.Boat.Crew[i].Load().Mass
		}
	}
	return mass
}

// steady is what makes the boat stand as it should: lower seats as far as they go, else
// more beam.
func (r *Report) steady() finding.Change {
	d := r.of()
	if d == nil {
		return finding.Change{}
	}
	lacks, at := r.lacks()
	if gain := r.seated(d) / r.Load.Mass * math.Sin(at); gain > 0 {
		if c := altered.SeatHeight.Mend(d, -math.Ceil(lacks/gain/lowerStep)*lowerStep); c.IsSet() {
			return c
		}
	}
	// BM grows with the cube of the beam, and a lever with BM by the sine of the heel.
	return altered.Beam.Mend(d, more*lacks*r.Rest.BWL/(3*r.Rest.BM*math.Sin(at)))
}

// usually is the heel, radians, at which narrow boats have their greatest lever, for a
// boat that has none.
const usually = 0.3

// lacks is how much greater the greatest righting lever must be, mm, and at what heel.
func (r *Report) lacks() (lever, at float64) {
	least := yardstick.LeastFor(len(r.Boat.Crew))
	if r.Fault != nil {
		return least.Lever - r.Rest.GM*math.Sin(usually), usually
	}
	s := r.Standing
	lever = least.Lever - s.Most
	if s.Held > 0 {
		lever = math.Max(lever, s.Most*(least.Held/s.Held-1))
	}
	return math.Max(lever, 1), s.MostAt
}
