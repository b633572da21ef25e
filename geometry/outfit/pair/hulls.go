// Package pair ties two hulls side by side: how they float and come back as one,
// up to where the windward hull leaves the water and no further, what the beams
// between them must bear, and what their waves do to each other.
package pair

import (
	"errors"
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/water/float"
)

// side is one hull where it lies in the pair.
type side struct {
	hull *float.Hull
	at   geometry.Point3 // of its own origin, mm
}

// local returns the water as the hull sees it in its own axes.
func (s side) local(p float.Plane) float.Plane {
	p.Rise -= p.Up().Dot(s.at)
	return p
}

// Hulls are two hulls held together by beams that do not give. Axes as in a boat; y
// to port from half-way between the middle lines.
type Hulls struct{ sides [2]side }

// NewHulls lays the first hull to port and the second to starboard, their middle
// lines spacing mm apart; the second lies rise mm higher.
func NewHulls(port, starboard *float.Hull, spacing, rise float64) Hulls {
	return Hulls{[2]side{{port, geometry.Point3{Y: spacing / 2}}, {starboard, geometry.Point3{Y: -spacing / 2, Z: rise}}}}
}

// wet is what a plane puts under water of the pair, and of each hull.
type wet struct {
	volume float64
	moment geometry.Point3
	area   float64
	each   [2]float64 // volumes
}

func (h Hulls) immerse(p float.Plane) wet {
	var w wet
	for i, s := range h.sides {
		m := s.hull.Immerse(s.local(p))
		w.each[i] = m.Volume
		w.volume += m.Volume
		w.area += m.Area
		w.moment = w.moment.Add(m.Moment).Add(geometry.Point3{X: m.Volume * s.at.X, Y: m.Volume * s.at.Y, Z: m.Volume * s.at.Z})
	}
	return w
}

func (w wet) center() geometry.Point3 {
	return geometry.Point3{X: w.moment.X / w.volume, Y: w.moment.Y / w.volume, Z: w.moment.Z / w.volume}
}

// Inertia returns the second moment of both waterplanes, upright, about the line
// along the boats through their common middle, mm4, and their area, mm2:
//
//	I = sum of I_i + A_i y_i^2, less A y^2 of the whole
//
// Source: parallel axes.
func (h Hulls) Inertia(p float.Plane) (inertia, area float64) {
	first := 0.0
	for _, s := range h.sides {
		m := s.hull.Immerse(s.local(p))
		inertia += m.AcrossInertia() + m.Area*s.at.Y*s.at.Y
		first += m.Area * s.at.Y
		area += m.Area
	}
	return inertia - first*first/area, area
}

// Freeboard returns the least height of either sheer over a plane, mm.
func (h Hulls) Freeboard(p float.Plane) float64 {
	least := math.Inf(1)
	for _, s := range h.sides {
		least = math.Min(least, s.hull.Freeboard(s.local(p)).Least)
	}
	return least
}

// errDry is a plane that no search has found.
var errDry = errors.New("the pair finds no balance")

// sink finds the rise of the plane for a volume at fixed heel and trim.
func (h Hulls) sink(p float.Plane, want float64) (float.Plane, wet) {
	lo, hi := -5e3, 5e3
	p.Rise = math.Max(lo, math.Min(hi, p.Rise))
	var w wet
	for range 120 {
		w = h.immerse(p)
		if math.Abs(w.volume-want) <= 1e-10*want || hi-lo < 1e-10 {
			return p, w
		}
		if w.volume < want {
			lo = p.Rise
		} else {
			hi = p.Rise
		}
		next := p.Rise - (w.volume-want)/w.area
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		p.Rise = next
	}
	return p, w
}

// balance finds the plane on which the pair carries a load at a heel, free to sink
// and to trim.
//
// Errors: *float.Fault when both hulls filled to the sheer cannot hold it; no trim
// up to 20 degrees.
func (h Hulls) balance(l float.Load, density, heel float64, start float.Plane) (float.Plane, wet, error) {
	want := float.Volume(l.Mass, density)
	holds := h.sides[0].hull.Holds() + h.sides[1].hull.Holds()
	if want >= holds {
		return start, wet{}, &float.Fault{Outcome: float.Sinks, Text: fmt.Sprintf("the whole is %.0f kg, and filled to the sheer both hulls displace %.0f kg", l.Mass, holds*density*1e-9)}
	}
	p := start
	p.Heel = heel
	lever := func(trim float64) float64 {
		var w wet
		p.Trim = trim
		p, w = h.sink(p, want)
		ahead := p.Ahead()
		return ahead.Dot(w.center()) - ahead.Dot(l.At)
	}
	if t := level(lever, start.Trim); mostTrim-math.Abs(t) < 1e-6 {
		return p, wet{}, errDry
	}
	return p, h.immerse(p), nil
}

// mostTrim is the trim past which no balance is looked for, radians.
const mostTrim = 20 * math.Pi / 180

// level finds the trim at which the lever between buoyancy and weight is nothing,
// the last one it is asked for: secants from a start, kept between bounds. Bow up
// carries the buoyancy aft, so the lever falls with the trim.
func level(lever func(trim float64) float64, start float64) float64 {
	lo, hi, step := -mostTrim, mostTrim, 0.002
	last, v := start, lever(start)
	for range 60 {
		if math.Abs(v) < 1e-6 {
			break
		}
		if v > 0 {
			lo = last
		} else {
			hi = last
		}
		if hi-lo < 1e-12 {
			break
		}
		next := last + step
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		before := v
		v = lever(next)
		step = -v * (next - last) / (v - before) // for the turn after
		if !geometry.Finite(step) {
			step = (hi - lo) / 2
		}
		last = next
	}
	return last
}

// Lever is one point of the pair's curve.
type Lever struct {
	Heel      float64 // radians, positive to starboard
	GZ        float64 // mm, positive when it brings the pair back
	Freeboard float64 // mm, the least of both hulls
	Share     float64 // of the whole that the hull to windward carries
	Plane     float.Plane
}

// The ways that the pair can go over.
const (
	toStarboard = 1.0
	toPort      = -1.0
)

// righting returns the lever at a heel against going over one way. At no heel the
// lever of a pair that is loaded unevenly is as much to one side as it lacks to the
// other.
func (h Hulls) righting(l float.Load, density, heel, way float64, start float.Plane) (Lever, error) {
	p, w, err := h.balance(l, density, heel, start)
	if err != nil {
		return Lever{}, err
	}
	across := p.ToPort()
	gz := way * (across.Dot(l.At) - across.Dot(w.center()))
	windward := 0 // port, going over to starboard
	if way == toPort {
		windward = 1
	}
	return Lever{heel, gz, h.Freeboard(p), w.each[windward] / w.volume, p}, nil
}

// Curve is the righting of a pair to one side.
type Curve struct {
	Levers  []Lever
	Lift    float64 // heel, radians, at which the windward hull is out of the water; NaN when water comes in first
	Flooded float64 // at which a sheer dips; NaN when it does not in the curve
	Most    Lever   // of the greatest GZ
}

// Curve follows the pair from upright by the step, negative to port, to where a
// sheer dips: an open boat fills there, and nothing is extrapolated.
func (h Hulls) Curve(l float.Load, density, step float64) (Curve, error) {
	out := Curve{Lift: math.NaN(), Flooded: math.NaN()}
	from, way := float.Plane{}, math.Copysign(toStarboard, step)
	const most = 60 * math.Pi / 180
	for i := 0; math.Abs(float64(i)*step) <= most; i++ {
		v, err := h.righting(l, density, float64(i)*step, way, from)
		if err != nil && i == 0 {
			return out, err
		}
		if err != nil || v.Freeboard <= 0 {
			if i == 0 {
				return out, &float.Fault{Outcome: float.Swamps, Text: fmt.Sprintf("with %.0f kg in all a gunwale lies %.0f mm under water", l.Mass, -v.Freeboard)}
			}
			out.Flooded = h.last(l, density, way, out.Levers[i-1], float64(i)*step, func(v Lever) bool { return v.Freeboard > 0 })
			return out, nil
		}
		if v.Share < dry && math.IsNaN(out.Lift) && i > 0 {
			out.Lift = h.last(l, density, way, out.Levers[i-1], v.Heel, func(v Lever) bool { return v.Share >= dry })
		}
		if v.GZ > out.Most.GZ {
			out.Most = v
		}
		out.Levers = append(out.Levers, v)
		from = v.Plane
	}
	return out, nil
}

// dry is the share of the whole below which a hull hangs in the air.
const dry = 1e-6

// last finds the heel up to which something holds, by bisection.
func (h Hulls) last(l float.Load, density, way float64, good Lever, bad float64, holds func(Lever) bool) float64 {
	for range 30 {
		mid := (good.Heel + bad) / 2
		if v, err := h.righting(l, density, mid, way, good.Plane); err == nil && holds(v) {
			good = v
		} else {
			bad = mid
		}
	}
	return good.Heel
}

// list finds the heel at which the pair comes to rest, radians; 0 for one that is loaded evenly.
func (h Hulls) list(l float.Load, density float64) (Lever, error) {
	at := func(heel float64) (Lever, error) {
		return h.righting(l, density, heel, toStarboard, float.Plane{})
	}
	const most = 20 * math.Pi / 180
	v, err := at(0)
	if err != nil || math.Abs(v.GZ) < 1e-3 {
		return v, err
	}
	lo, hi := 0.0, most // GZ rises with heel about rest
	if v.GZ > 0 {
		lo, hi = -most, 0
	}
	for range 50 {
		mid := (lo + hi) / 2
		m, err := at(mid)
		if err != nil {
			return v, err
		}
		v = m
		if v.GZ < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return v, nil
}
