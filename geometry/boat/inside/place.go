package inside

import (
	"math"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
)

// Where people sit and reach, mm. The weight of one who sits comes down some 220 mm
// forward of the back, as the design file has it; a kneeling person reaches from the toes
// to the knees. Knees a little bent, a leg is 0.93 to 0.97 of its length. Common practice,
// no source.
const (
	backFromWeight = 220.0
	kneesBent      = 0.95
	toes, knees    = 500.0, 350.0
)

// Leg is the functional length of a leg, seat back to sole with the leg straight, mm:
// 0.676 of the stature less 57 mm, within 32 mm for two people of three (ANSUR II, 2012,
// 6068 persons). A person whose stature is not known has that of the mass.
func Leg(p design.Person) float64 {
	return 0.676*weight.Stature(p) - 57
}

// place is what a person takes up along the boat, mm: the back where one leans on
// something, the soles, and the floor that is needed.
type place struct {
	leans, braces   bool
	back, sole      float64
	aft, fore, seat float64
}

// ahead is how far forward the person wants room, the footbrace in its foremost hole.
func (w place) ahead() float64 {
	if !w.braces {
		return w.fore
	}
	return math.Max(w.fore, w.sole+Step*(Holes-1)/2)
}

// placed is where a person sits, facing forward.
func placed(d *design.Design, p design.Person) place {
	at := d.WeightAt(p)
	if p.Role.Live() && p.Posture != design.Kneeling {
		aft, fore := weight.Room(p)
		return place{aft: at - aft, fore: at + fore}
	}
	if p.Posture == design.Kneeling {
		return place{aft: at - toes, fore: at + knees}
	}
	on, _ := d.SeatOf(p)
	high := float64(on.Height)
	reach := kneesBent * Leg(p)
	w := place{leans: true, braces: true, back: at - backFromWeight, seat: high}
	w.sole = w.back + math.Sqrt(math.Max(0, reach*reach-high*high))
	w.aft, w.fore = w.back-60, w.sole-60
	if p.Posture == design.Bench {
		w.aft = at
	}
	return w
}

// Reach returns the stations between which the people of a design sit, kneel and stretch
// their legs; false when it has nobody.
func Reach(d *design.Design) (aft, fore float64, ok bool) {
	for i, p := range d.Crew {
		w := placed(d, p)
		from, to := w.aft, w.ahead()
		if i == 0 {
			aft, fore = from, to
		}
		aft, fore = math.Min(aft, from), math.Max(fore, to)
	}
	return aft, fore, len(d.Crew) > 0
}
