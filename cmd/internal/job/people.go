package job

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wording"
)

// People are who is aboard instead of the design's people.
type People struct {
	text string // "" for the design's people
	each []sitter
}

// sitter is one of them; what is not said follows the design.
type sitter struct {
	mass    float64
	posture *design.Posture
	role    *design.Role
	seat    string          // the name or the code of one, or the floor; "" for the design's
	at      *measure.Length // on the floor
}

// crew is the field that names people.
func crew(to *People) Field {
	return Field{Name: "crew", Takes: "people", Says: "who is aboard instead of the design's people, as 70kg,85kg or 60kg:seat-1,25kg:child@-200mm,30kg:dog@300mm; none for nobody",
		Value: bind(to, parsePeople, func(p People) string { return p.text })}
}

func parsePeople(text string) (People, error) {
	out := People{text: text}
	if strings.EqualFold(strings.TrimSpace(text), "none") {
		return out, nil
	}
	before := "" // a mass without a unit, which may be the whole part of a decimal
	for _, one := range strings.Split(text, ",") {
		s, err := parseSitter(one)
		slip := wording.Decimals(before + "," + one)
		if err == nil && slip != "" && s.mass < leastBare {
			err = fmt.Errorf("a person of %g kg after one of %s without a unit", s.mass, before)
		}
		if err != nil {
			return out, fmt.Errorf("%w%s", err, slip)
		}
		out.each, before = append(out.each, s), ""
		if bare(one) {
			before = one
		}
	}
	return out, nil
}

// The lightest and the heaviest aboard, kg. A bare number under leastBare is likelier the
// rest of a decimal comma.
const (
	lightest, heaviest = 3.0, 250.0
	leastBare          = 15.0
)

// parseSitter reads a mass with perhaps a posture, a role, a seat and a place on the floor,
// as 70kg:kneeling:seat-1, 25kg:child:floor@-200mm or 30kg:dog@300mm. A mass without a unit is in kg; floor is
// both a posture and where one sits.
func parseSitter(text string) (sitter, error) {
	var out sitter
	head, place, hasPlace := strings.Cut(text, "@")
	words := strings.Split(head, ":")
	weight := strings.TrimSpace(words[0])
	least := lightest
	if bare(weight) {
		weight, least = weight+" kg", leastBare
	}
	var err error
	if out.mass, err = parseQuantity(weight, formula.Mass, least, heaviest, "70kg or 155lb"); err != nil {
		return out, fmt.Errorf("a person of %w", err)
	}
	for _, word := range words[1:] {
		if err := out.word(strings.TrimSpace(word)); err != nil {
			return out, err
		}
	}
	if hasPlace {
		l, err := measure.ParseLength(place)
		if err != nil {
			return out, err
		}
		out.at = &l
	}
	return out, nil
}

// bare reports whether a mass has no unit.
func bare(s string) bool { return strings.Trim(s, "0123456789.") == "" }

// word takes a posture, a role or a seat. A child is a passenger; live cargo that is told
// no seat has the floor, amidships unless a place is given.
func (s *sitter) word(word string) error {
	var p design.Posture
	var r design.Role
	if role := strings.Replace(word, "child", "passenger", 1); r.UnmarshalText([]byte(role)) == nil {
		if s.role = &r; r.Live() && s.seat == "" {
			s.seat = design.OnFloor
		}
		return nil
	}
	known := p.UnmarshalText([]byte(word)) == nil
	switch {
	case word == "":
		return errors.New("nothing stands behind a colon; accepted: a posture (kneeling, floor, bench), a seat as seat-1 or by its name, or both")
	case known && s.posture != nil:
		return fmt.Errorf("two postures, %v and %v; give one", *s.posture, p)
	case known:
		s.posture = &p
		if p == design.Floor && s.seat == "" {
			s.seat = design.OnFloor
		}
	case s.seat != "" && s.seat != design.OnFloor:
		return fmt.Errorf("two seats, %q and %q; give one", wording.Clip(s.seat, 40), wording.Clip(word, 40))
	default:
		s.seat = word
	}
	return nil
}

// seated puts the people into a design: onto the seats of its own crew, in order, where
// neither seat nor place is given. Without people the design's own stay.
func (p People) seated(d *design.Design) ([]design.Person, error) {
	if p.text == "" {
		return d.Crew, nil
	}
	var out []design.Person
	for i, s := range p.each {
		one := design.Person{Name: fmt.Sprintf("Person %d", i+1), Seat: design.OnFloor}
		if s.role != nil && s.role.Live() {
			one.Name = wording.Capital(s.role.String())
		}
		switch {
		case i < len(d.Crew):
			name := one.Name
			one = d.Crew[i]
			if one.Stature = 0; s.role != nil && *s.role != one.Role {
				one.Name = name
			}
		case s.seat == "" && s.at == nil:
			return nil, misuse("crew", "person %d has no place, for the design seats %d; give a seat, as %gkg:seat-1, or the floor, as %gkg:floor@-500mm", i+1, len(d.Crew), s.mass, s.mass)
		}
		if err := s.sits(d, i, &one); err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

// sits puts one person, the number i from 0, where they are said to sit.
func (s sitter) sits(d *design.Design, i int, one *design.Person) error {
	one.Mass = s.mass
	if s.role != nil {
		one.Role = *s.role
	}
	onFloor := s.at != nil || s.seat != "" && d.FindSeat(s.seat) < 0
	switch {
	case onFloor && s.seat != "" && !strings.EqualFold(s.seat, design.OnFloor):
		if d.FindSeat(s.seat) >= 0 {
			return misuse("crew", "person %d sits on %q and is given a place; give the one or the other: a seat is where it is", i+1, wording.Clip(s.seat, 40))
		}
		return misuse("crew", "person %d: %q is no posture and no seat of this boat; accepted: kneeling, floor, bench%s", i+1, wording.Clip(s.seat, 40), seatsOf(d))
	case onFloor:
		*one = d.Lowered(*one)
	case s.seat != "":
		seat := d.Seats[d.FindSeat(s.seat)]
		one.Seat, one.At = seat.Name, 0
		if seat.Kind == design.Pad {
			one.Posture = design.Floor
		}
	}
	if s.posture != nil {
		one.Posture = *s.posture
	} else if one.Role.Live() && one.Seat == design.OnFloor {
		one.Posture = design.Floor
	}
	if s.at != nil {
		one.At = *s.at
	}
	if one.Role == design.Dog && (one.Posture != design.Floor || one.Seat != design.OnFloor) {
		return misuse("crew", "person %d is a dog, which sits on no seat; give its place on the floor, as %gkg:dog@300mm", i+1, s.mass)
	}
	if !one.Role.Live() && s.mass < leastBare {
		return misuse("crew", "person %d of %.4g kg is little for one who paddles; accepted: 15 kg or more, or a child or dog, as %.4gkg:child@300mm", i+1, s.mass, s.mass)
	}
	if !d.Suits(*one) {
		return misuse("crew", "person %d: %v does not go with the floor or a pad on it; name another seat%s, or sit with the legs out: floor", i+1, one.Posture, seatsOf(d))
	}
	if half := float64(d.Hull.Length) / 2 * 0.9; math.Abs(float64(one.At)) > half {
		return misuse("crew", "person %d sits at %.0f mm; accepted: up to %.0f mm from midship", i+1, float64(one.At), half)
	}
	return nil
}

// seatsOf lists the seats of a boat behind a comma; nothing when it has none.
func seatsOf(d *design.Design) string {
	out := ""
	for i, s := range d.Seats {
		out += fmt.Sprintf(", %s (%s)", design.SeatCode(i), wording.Clip(s.Name, 40))
	}
	return out
}

// scaled brings all masses of people and gear to a sum in kg; where there are none,
// the sum is gear of its own. 0 leaves them as they are.
func scaled(crew []design.Person, gear []design.Gear, all float64) ([]design.Person, []design.Gear) {
	if all == 0 {
		return crew, gear
	}
	sum := 0.0
	for _, p := range crew {
		sum += p.Mass
	}
	for _, g := range gear {
		sum += g.Mass
	}
	if sum == 0 {
		return crew, []design.Gear{{Name: "Load", Mass: all}}
	}
	crew, gear = slices.Clone(crew), slices.Clone(gear)
	for i := range crew {
		crew[i].Mass *= all / sum
	}
	for i := range gear {
		gear[i].Mass *= all / sum
	}
	return crew, gear
}
