package weight

import (
	"cmp"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// usualGear is how high over the floor the middle of gear lies when a design does not
// say, mm: a pack lying down. Common practice, no source.
const usualGear = 150.0

// Crew lists people, each at the center of their weight.
func Crew(h *hull.Hull, crew []design.Person) []Item {
	var out []Item
	for _, p := range crew {
		out = append(out, over(h, p.Name, p.Mass, float64(p.At), Height(p)))
	}
	return out
}

// Gear lists what is carried.
func Gear(h *hull.Hull, gear []design.Gear) []Item {
	var out []Item
	for _, g := range gear {
		out = append(out, over(h, g.Name, g.Mass, float64(g.At), cmp.Or(float64(g.Height), usualGear)))
	}
	return out
}

// over is a mass, kg, at a station and a height over the floor, mm.
func over(h *hull.Hull, name string, mass, x, high float64) Item {
	return Item{name, []float.Load{{Mass: mass, At: geometry.Point3{X: x, Z: h.FloorZ(x) + high}}}}
}

// The usual seat over the floor, mm: a bench; the edge of the seat behind a
// kneeling person's hips. Common practice, no source.
const (
	benchSeat = 250.0
	kneelSeat = 230.0
)

// How high a sitting person's weight lies over the seat, as a share of the
// sitting height. Worked from body-segment masses (de Leva 1996, from memory) on
// the median bodies of ANSUR II: estimates, good to some 30 mm.
const (
	BenchShare = 0.30
	kneelShare = 0.25
	FloorShare = 0.33
)

// Height returns how high over the floor the weight of a person lies, mm. It is
// an estimate.
func Height(p design.Person) float64 {
	sitting := Sitting(p)
	seat := float64(p.Seat)
	switch p.Posture {
	case design.Bench:
		return cmp.Or(seat, benchSeat) + BenchShare*sitting
	case design.Kneeling:
		return cmp.Or(seat, kneelSeat) + kneelShare*sitting
	}
	return seat + FloorShare*sitting
}

// Sitting returns a person's sitting height, mm: a share of the stature, or that
// of the median body of the mass when the stature is not known.
//
// Source: ANSUR II (US Army 2012): sitting over stature 0.526 in women and 0.523
// in men; medians 66.8 kg and 857 mm, 84.6 kg and 918 mm, taken as a straight
// line and kept between the 5th percentile of women and the 95th of men.
func Sitting(p design.Person) float64 {
	if p.Stature > 0 {
		return 0.525 * float64(p.Stature)
	}
	const perKg = (918.0 - 857) / (84.6 - 66.8)
	return math.Max(803, math.Min(977, 857+(p.Mass-66.8)*perKg))
}
