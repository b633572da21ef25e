package weight

import (
	"cmp"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// UsualMass is that of a person whose mass nobody gave, kg: as small-craft standards
// take one.
const UsualMass = 75.0

// usualGear is how high over the floor the middle of gear lies when a design does not
// say, mm: a pack lying down. Common practice, no source.
const usualGear = 150.0

// Crew lists people, each at the center of their weight: over the seat that the design
// has for them, or over the floor.
func Crew(h *hull.Hull, d *design.Design, crew []design.Person) []Item {
	var out []Item
	for _, p := range crew {
		x := d.WeightAt(p)
		floor := h.FloorZ(x)
		if s, ok := d.SeatOf(p); ok {
			floor = h.FloorZ(float64(s.At))
		}
		out = append(out, Item{Name: p.Name, Loads: []float.Load{{Mass: p.Mass, At: geometry.Point3{X: x, Z: floor + Height(d, p)}}}})
	}
	return out
}

// Gear lists what is carried.
func Gear(h *hull.Hull, gear []design.Gear) []Item {
	var out []Item
	for _, g := range gear {
		x, high := float64(g.At), cmp.Or(float64(g.Height), usualGear)
		out = append(out, Item{Name: g.Name, Loads: []float.Load{{Mass: g.Mass, At: geometry.Point3{X: x, Z: h.FloorZ(x) + high}}}})
	}
	return out
}

// heels is how high the hips are of one who kneels on the floor and sits on the heels,
// mm: the depth of a foot in its shoe. From memory.
const heels = 150.0

// How high a sitting person's weight lies over the seat, as a share of the
// sitting height. Worked from body-segment masses (de Leva 1996, from memory) on
// the median bodies of ANSUR II: estimates, good to some 30 mm.
const (
	BenchShare = 0.30
	KneelShare = 0.25
	FloorShare = 0.33
)

// OverHips returns that share for a posture.
func OverHips(p design.Posture) float64 {
	switch p {
	case design.Bench:
		return BenchShare
	case design.Kneeling:
		return KneelShare
	}
	return FloorShare
}

// Height returns how high over the floor the weight of a person lies, mm, the floor being
// that under the seat. It is an estimate.
func Height(d *design.Design, p design.Person) float64 {
	return Hips(d, p) + OverHips(p.Posture)*Sitting(p)
}

// Hips returns how high over the same floor a person sits, mm: on the seat, on the floor,
// or on the heels.
func Hips(d *design.Design, p design.Person) float64 {
	s, seated := d.SeatOf(p)
	if p.Posture == design.Kneeling && !seated {
		return heels
	}
	return float64(s.Height)
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
