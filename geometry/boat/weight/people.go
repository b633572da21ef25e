package weight

import (
	"cmp"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// usualMass is that of a person whose mass nobody gave, kg: as small-craft standards
// take one.
const usualMass = 75.0

// usualGear is how high over the floor the middle of gear lies when a design does not
// say, mm: a pack lying down. Common practice, no source.
const usualGear = 150.0

// People returns the crew of a design; when it has none, one usual person who kneels at
// its first seat, or on the floor amidships.
func People(d *design.Design) []design.Person {
	if len(d.Crew) > 0 {
		return d.Crew
	}
	p := design.Person{Name: "Paddler (assumed)", Mass: usualMass, Seat: design.OnFloor}
	if len(d.Seats) > 0 {
		p.Seat = d.Seats[0].Name
	}
	return []design.Person{p}
}

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

// OverHips returns that share for a person; a child's is larger.
func OverHips(p design.Person) float64 {
	share := FloorShare
	switch p.Posture {
	case design.Bench:
		share = BenchShare
	case design.Kneeling:
		share = KneelShare
	}
	return share + body.HeadHeavy(Stature(p))
}

// Height returns how high over the floor the weight of a person lies, mm, the floor being
// that under the seat. It is an estimate.
func Height(d *design.Design, p design.Person) float64 {
	if p.Role == design.Dog {
		return body.DogLying * body.Shoulder(p.Mass)
	}
	return Hips(d, p) + OverHips(p)*Sitting(p)
}

// Stature returns a person's height standing, mm: as given, or that of a middling body of
// the mass.
func Stature(p design.Person) float64 {
	switch {
	case p.Stature > 0:
		return float64(p.Stature)
	case p.Mass < body.Grown:
		return body.StatureOf(p.Mass)
	}
	return Sitting(p) / body.GrownSitting
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
// of the median body of the mass when the stature is not known. A child has a larger share.
//
// Source: ANSUR II (US Army 2012): sitting over stature 0.526 in women and 0.523
// in men; medians 66.8 kg and 857 mm, 84.6 kg and 918 mm, taken as a straight
// line and kept between the 5th percentile of women and the 95th of men. Children: package
// body.
func Sitting(p design.Person) float64 {
	if p.Stature > 0 || p.Mass < body.Grown {
		high := Stature(p)
		return body.SittingShare(high) * high
	}
	const perKg = (918.0 - 857) / (84.6 - 66.8)
	return math.Max(803, math.Min(977, 857+(p.Mass-66.8)*perKg))
}

// Room returns how much floor one of the live cargo takes up along the boat behind the
// place where the weight comes down, and ahead of it, mm: from the back to the feet of one
// who sits with the knees drawn up, 0.43 of the stature; half of a dog either way.
// Estimates.
func Room(p design.Person) (aft, fore float64) {
	if p.Role == design.Dog {
		half := body.DogLong(p.Mass) / 2
		return half, half
	}
	high := Stature(p)
	return 0.13 * high, 0.30 * high
}

// Wide returns how broad somebody is low down, mm: a dog's chest, or hips. An estimate.
func Wide(p design.Person) float64 {
	if p.Role == design.Dog {
		return body.DogWide(p.Mass)
	}
	return body.HipsOf(p.Mass)
}
