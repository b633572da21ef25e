package edgeset

import "math"

// MostOff is by how much the profile may change when the frame is let go, mm: half of a
// usual rocker of 30 mm. Our own choice.
const MostOff = 15.0

// Off is by how much the profile changes at most when the frame is let go with its
// stems' feet joined and the gunwales' ends lashed, mm.
func (r *Report) Off() float64 { return max(r.Free.Worst(), r.Usual.Worst()) }

// off is that of a model.
func (m *Model) off() (float64, error) {
	least, err := m.Settle(Held{Feet: true})
	if err != nil {
		return 0, err
	}
	likely, err := m.Settle(Likely)
	if err != nil {
		return 0, err
	}
	return max(least.Worst(), likely.Worst()), nil
}

// Cure is what brings a set back to what the frame can hold.
type Cure struct {
	Rise  Pair    // sprung at stern and bow, from where it begins now, mm
	Made  float64 // so much more of the rise made into the gunwales at either end, in whole mm, leaves what the frame holds
	Begin float64 // station off midship from which the present rise is held, the nearest to the present one, mm
	Found bool    // whether there is such a station
}

// Cure tells how much rise the frame holds within MostOff, and from where on it would
// hold the present rise without being bent more than mostCurve, 1/mm.
//
// How: changes are in proportion to the rise. A set that begins at f and rises by e over
// the run to the gunwales' end at l has the curvature 2 e/(l - f)². Places 50 mm
// apart are tried, from the present one on both ways: what droops wants to begin
// farther out, what sags nearer midship. The sheer's own height is left as it is, which
// is worth a millimeter.
// Errors: those of Settle.
func (r *Report) Cure(mostCurve float64) (Cure, error) {
	c := Cure{Rise: r.rises()}
	share := min(1, MostOff/r.Off())
	for i := range c.Rise {
		c.Rise[i] *= share
	}
	if err := c.make(r); err != nil {
		return c, err
	}
	const step = 50.0 // mm
	now, end := max(r.model.Sets[0].From, r.model.Sets[1].From), min(-r.model.Gunwales.From, r.model.Gunwales.To)
	for by := step; by <= end; by += step {
		for _, at := range []float64{now - by, now + by} {
			m := r.model.begun(at, r.rises())
			if at < 0 || at > farthest*end || m.Sets[0].Curve > mostCurve || m.Sets[1].Curve > mostCurve {
				continue
			}
			off, err := m.off()
			if err != nil {
				return c, err
			}
			if off <= MostOff {
				c.Begin, c.Found = at, true
				return c, nil
			}
		}
	}
	return c, nil
}

// make finds how much more is to be made into the gunwales: each end is left no more than
// the share of its rise that the frame holds, and less where the ends leave it unalike.
func (c *Cure) make(r *Report) error {
	rises := r.rises()
	for i, rise := range rises {
		c.Made = math.Max(c.Made, math.Ceil(rise-c.Rise[i]))
	}
	for ; c.Made < rises.Worst(); c.Made++ {
		left := rises
		for i := range left {
			left[i] = math.Max(0, left[i]-c.Made)
		}
		m := r.model
		for i := range m.Sets {
			m.Sets[i].Curve *= left[i] / math.Max(rises[i], same)
		}
		if off, err := m.off(); err != nil || off <= MostOff {
			return err
		}
	}
	return nil
}

// farthest is the share of the gunwales' half length at which a set may begin; a design
// takes no more.
const farthest = 0.8

// rises are how high the sets rise at the gunwales' ends, mm.
func (r *Report) rises() (out Pair) {
	for i, s := range r.model.Sets {
		run := r.model.run(i, s.From)
		out[i] = s.Curve * run * run / 2
	}
	return out
}

func (m *Model) run(i int, from float64) float64 {
	return [2]float64{-m.Gunwales.From, m.Gunwales.To}[i] - from
}

// begun is the model with its rises begun at the station from.
func (m Model) begun(from float64, rise Pair) Model {
	for i := range m.Sets {
		run := m.run(i, from)
		m.Sets[i] = Set{from, 2 * rise[i] / (run * run)}
	}
	return m
}
