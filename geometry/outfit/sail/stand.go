package sail

import (
	"math"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/measure"
	"ribwright/geometry/water/float"
)

// Place is where the crew sits while sailing.
type Place int

// The places. From memory; a sailor may do something between.
const (
	Middle Place = iota // on their seats or wherever the design has them, in the middle
	Inside              // as high as there, hips against the windward side
	Out                 // on the windward gunwale
)

// String names the place.
func (p Place) String() string {
	return [...]string{"in the middle", "inside, to windward", "out on the gunwale"}[p]
}

// hipHalf is half of a person's breadth, mm: the median of women's hips sitting.
const hipHalf = 200.0

// seated returns the weight of the boat's people in a place, with the wind from port:
// each where the design has them, moved aside or out on the gunwale.
func seated(b aboard.Boat, p Place) float.Load {
	var all []float.Load
	for i, c := range b.People {
		l := b.Crew[i].Load()
		inner, outer := b.GunwaleTop(l.At.X)
		switch p {
		case Inside:
			l.At.Y = math.Max(0, inner.Y-hipHalf)
		case Out:
			l.At.Y = (inner.Y + outer.Y) / 2
			l.At.Z = inner.Z + weight.BenchShare*weight.Sitting(c)
		}
		all = append(all, l)
	}
	return float.Total(all...)
}

// Stand is how the boat stands up to the wind with the crew in one place.
type Stand struct {
	Place   Place
	Load    float.Load
	Moments []Moment // from upright on, to where the lee gunwale dips
	Flooded float64  // heel at which it does, radians; NaN when it does not
	Most    Moment   // the greatest
	Calm    float64  // heel, radians to windward, when the wind drops and the crew stays; NaN when it goes over
}

// Moment is the righting moment at a heel.
type Moment struct {
	Heel      float64 // radians, to leeward
	N         float64 // N m
	Freeboard float64 // mm, of the lee gunwale
}

// stepping is the step of the curve, radians.
const stepping = 2 * math.Pi / 180

// stand follows the boat over to leeward.
func stand(b aboard.Boat, fixed float.Load, p Place, density float64) (Stand, error) {
	out := Stand{Place: p, Load: float.Total(fixed, seated(b, p))}
	c, err := b.Hull.Curve(out.Load, density, stepping)
	if err != nil {
		return out, err
	}
	for _, v := range c.Levers {
		m := Moment{v.Heel, out.Load.Mass * measure.Gravity * v.GZ / 1000, v.Freeboard.Least}
		if m.N > out.Most.N {
			out.Most = m
		}
		out.Moments = append(out.Moments, m)
	}
	out.Flooded = c.Flooding
	if plane, _, err := b.Hull.Settle(out.Load, density); err != nil {
		out.Calm = math.NaN()
	} else {
		out.Calm = math.Abs(plane.Heel)
	}
	return out, nil
}

// At returns the righting moment at a heel, N m, between the steps in a straight
// line; past the last one there is none.
func (s Stand) At(heel float64) float64 {
	for i := 1; i < len(s.Moments); i++ {
		a, b := s.Moments[i-1], s.Moments[i]
		if heel <= b.Heel {
			return a.N + (b.N-a.N)*(heel-a.Heel)/(b.Heel-a.Heel)
		}
	}
	return 0
}

// heels is the heel past which a canoe under sail is in trouble: 10 degrees, or half
// of what brings the lee gunwale under. Common practice, no source.
func (s Stand) heels() float64 {
	most := 10 * math.Pi / 180
	if !math.IsNaN(s.Flooded) {
		most = math.Min(most, s.Flooded/2)
	}
	return most
}

// Limit is what one sail with the crew in one place stands.
type Limit struct {
	Reef  float64 // steady wind, m/s, to take sail in at
	Under float64 // steady wind, m/s, in which it goes over or the gunwale dips
	Heel  float64 // radians, in the first, or in Rough when that is less
	Left  float64 // mm of lee gunwale over the water then
}

// limit works a sail's winds: take in where the heel reaches its limit, or where a
// gust over the steady wind would put the gunwale under.
func (s Stand) limit(area, arm float64) Limit {
	heel := s.heels()
	under := Carries(s.Most.N, area, arm, 0, 0)
	out := Limit{Under: under, Reef: math.Min(Carries(s.At(heel), area, arm, 0, 0), under/Gust)}
	want := Pressure(math.Min(out.Reef, Rough)) * Force * area * arm
	out.Heel, out.Left = s.rest(want)
	return out
}

// rest finds the least heel that answers a moment, N m, and the freeboard there; 0
// when the crew outweighs it.
func (s Stand) rest(want float64) (heel, freeboard float64) {
	for i, m := range s.Moments {
		if m.N < want {
			continue
		}
		if i == 0 {
			return 0, m.Freeboard
		}
		a := s.Moments[i-1]
		t := (want - a.N) / (m.N - a.N)
		return a.Heel + t*(m.Heel-a.Heel), a.Freeboard + t*(m.Freeboard-a.Freeboard)
	}
	return s.Most.Heel, s.Most.Freeboard
}
