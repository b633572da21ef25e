package sizing

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wording"
)

// Rider is one of the live cargo: a passenger of any age, or a dog.
type Rider struct {
	Dog     bool
	Weight  float64 // kg
	Stature float64 // mm, 0 when not known; a dog has none
	Posture string  // family.Either for the floor, family.Kneeling on it, family.Sitting on a seat of its own; a dog's is Either
	Placed  bool    // At was given
	At      float64 // mm from midship, forward positive: where the weight comes down
}

// The bodies of live cargo, kg. A child of 10 kg is some two years old.
const (
	lightestChild            = 10.0
	lightestDog, heaviestDog = 3.0, 100.0
)

const (
	asPassenger = `accepted: one as "25 kg, 120 cm", and perhaps child, kneeling or sitting, at 200 mm`
	asDog       = `accepted: one as "30 kg", and perhaps at 200 mm`
)

// ParsePassenger reads a passenger as people write one: "25 kg, 120 cm", perhaps with
// child, adult, kneeling or sitting, and a place from midship as "at 200 mm". Stature may
// be left out.
func ParsePassenger(text string) (Rider, error) {
	return parseRider(text, "passenger", asPassenger, Rider{Posture: family.Either})
}

// ParseDog reads a dog: "30 kg", perhaps with a place.
func ParseDog(text string) (Rider, error) {
	return parseRider(text, "dog", asDog, Rider{Dog: true, Posture: family.Either})
}

func parseRider(text, what, accepted string, r Rider) (Rider, error) {
	if len(text) > 200 {
		return r, fmt.Errorf("%q is too long for a %s; %s", text[:30]+"...", what, accepted)
	}
	for _, part := range strings.Split(text, ",") {
		if err := r.take(strings.ToLower(strings.TrimSpace(part)), accepted); err != nil {
			return r, fmt.Errorf("%s %q: %w%s", what, text, err, wording.Decimals(text))
		}
	}
	if r.Weight == 0 {
		return r, fmt.Errorf("%s %q has no weight; %s", what, text, accepted)
	}
	return r, r.Check()
}

// take reads one part of a rider.
func (r *Rider) take(part, accepted string) error {
	at, placed := strings.CutPrefix(part, "at ")
	switch part {
	case "child", "adult", "woman", "man", "floor", "dog", "passenger":
		return nil
	case "kneeling", "kneel":
		r.Posture = family.Kneeling
		return nil
	case "sitting", "sit", "seat":
		r.Posture = family.Sitting
		return nil
	case "":
		return fmt.Errorf("nothing stands between two commas; for decimals write 62.5 kg, not 62,5 kg")
	}
	v, d, err := formula.Quantity(at)
	switch {
	case err != nil:
		return fmt.Errorf("%w; %s", err, accepted)
	case d == formula.Mass && r.Weight == 0 && !placed:
		r.Weight = v
	case d == formula.Length && placed && !r.Placed:
		r.At, r.Placed = v, true
	case d == formula.Length && r.Stature == 0 && !placed && !r.Dog:
		r.Stature = v
	default:
		return fmt.Errorf("%q is not understood here; %s", part, accepted)
	}
	return nil
}

// Check refuses a body that is likelier a slip of the unit.
func (r Rider) Check() error {
	switch {
	case r.Dog && !(r.Weight >= lightestDog && r.Weight <= heaviestDog):
		return fmt.Errorf("a dog of %.4g kg; accepted: %.0f to %.0f kg", r.Weight, lightestDog, heaviestDog)
	case r.Dog && (r.Stature != 0 || r.Posture != family.Either):
		return fmt.Errorf("a dog lies on the floor and has no stature; %s", asDog)
	case !r.Dog && !(r.Weight >= lightestChild && r.Weight <= body.MostWeight):
		return fmt.Errorf("a passenger of %.4g kg; accepted: %.0f to %.0f kg", r.Weight, lightestChild, body.MostWeight)
	case r.Stature != 0 && !(r.Stature >= 700 && r.Stature <= body.MostStature):
		return fmt.Errorf("a stature of %.4g mm; accepted: 700 to %.0f mm", r.Stature, body.MostStature)
	}
	return nil
}

// String writes the rider as it is read.
func (r Rider) String() string {
	out := fmt.Sprintf("%g kg", r.Weight)
	if r.Stature > 0 {
		out += fmt.Sprintf(", %g mm", r.Stature)
	}
	if r.Posture != family.Either {
		out += ", " + r.Posture
	}
	if r.Placed {
		out += fmt.Sprintf(", at %g mm", r.At)
	}
	return out
}

// kind is a word for the rider.
func (r Rider) kind() string {
	switch {
	case r.Dog:
		return "dog"
	case r.Weight < body.Grown && (r.Stature == 0 || r.Stature < 1500):
		return "child"
	}
	return "passenger"
}

// words say who the rider is, as the head of a page does.
func (r Rider) words() string {
	high := ""
	if r.Stature > 0 && !r.Dog {
		high = " and " + inCM(r.Stature)
	}
	return "a " + r.kind() + " of " + formula.ShowNumber(r.Weight, formula.Mass) + high
}

// person is the rider as one of a crew.
func (r Rider) person(name string, at float64) design.Person {
	p := design.Person{Name: name, Role: design.Passenger, Mass: r.Weight, Posture: design.Floor, Seat: design.OnFloor, At: measure.Length(math.Round(at)), Stature: measure.Length(r.Stature)}
	switch {
	case r.Dog:
		p.Role = design.Dog
	case r.Posture == family.Kneeling:
		p.Posture = design.Kneeling
	}
	return p
}

// row is how long a stretch of floor the riders take up that nobody gave a place, one
// behind the other, and how far their weight comes down ahead of its after end, mm.
func (b *Brief) row() (long, center float64) {
	mass := 0.0
	for _, r := range b.Riders() {
		if r.Placed {
			continue
		}
		aft, fore := weight.Room(r.person("", 0))
		mass, center = mass+r.Weight, center+r.Weight*(long+aft)
		long += aft + fore
	}
	return long, center / math.Max(mass, 1e-9)
}

// Riders lists the live cargo: passengers, then dogs.
func (b *Brief) Riders() []Rider {
	return append(b.Passengers[:len(b.Passengers):len(b.Passengers)], b.Dogs...)
}

// placed is what the riders weigh together that were given a place, kg, and where their
// weight comes down, mm.
func (b *Brief) placed() (mass, at float64) {
	for _, r := range b.Riders() {
		if r.Placed {
			mass, at = mass+r.Weight, at+r.Weight*r.At
		}
	}
	return mass, at / math.Max(mass, 1e-9)
}

// live is what the riders weigh together, kg.
func (b *Brief) live() (mass float64) {
	for _, r := range b.Riders() {
		mass += r.Weight
	}
	return mass
}

// embark puts the riders aboard: in a row whose weight comes down at a station, from aft in
// the order in which they were given, clear of the thwarts; or where they were told to be.
func (b *Brief) embark(d *design.Design, at float64) {
	_, center := b.row()
	next := at - center
	count := map[string]int{}
	for _, r := range b.Riders() {
		name := wording.Capital(r.kind())
		if count[name]++; count[name] > 1 {
			name += fmt.Sprintf(" %d", count[name])
		}
		p := r.person(name, r.At)
		if !r.Placed {
			aft, fore := weight.Room(p)
			p.At = measure.Length(math.Round(next + aft))
			next += aft + fore
		}
		if !r.Dog && !r.Placed {
			clearOfThwarts(d, &p)
		}
		if r.Posture == family.Sitting {
			d.Seats = append(d.Seats, design.Seat{Name: name + "'s seat", Kind: design.Saddle, At: p.At - measure.Length(design.Bench.Ahead()), Height: lowSeat, Species: "white ash"})
			p.Seat, p.At, p.Posture = name+"'s seat", 0, design.Bench
		}
		d.Crew = append(d.Crew, p)
	}
}

// lowSeat is how high a passenger's seat is, mm: a low box. Our own choice.
const lowSeat = 100.0

// clearOfThwarts moves one who sits or kneels on the floor along the boat until no thwart
// meets the trunk: legs go under it.
func clearOfThwarts(d *design.Design, p *design.Person) {
	aft, _ := weight.Room(*p)
	const chest, play = 60.0, 20.0 // of the trunk ahead of the weight; our own choice
	for range d.Thwarts {
		for _, t := range d.Thwarts {
			half := float64(t.Width)/2 + play
			back := float64(t.At) + half + aft    // just ahead of it
			front := float64(t.At) - half - chest // just behind it
			if at := float64(p.At); at < back && at > front {
				if p.At = measure.Length(math.Ceil(back)); at-front < back-at {
					p.At = measure.Length(math.Floor(front))
				}
			}
		}
	}
}
