package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/formula"
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
	at      *measure.Length
}

// crew is the field that names people.
func crew(to *People) Field {
	return Field{Name: "crew", Takes: "people", Says: "who is aboard instead of the design's people, as 70kg,85kg or 70kg:floor@-200mm; none for nobody",
		Value: bind(to, parsePeople, func(p People) string { return p.text })}
}

func parsePeople(text string) (People, error) {
	out := People{text: text}
	if strings.EqualFold(strings.TrimSpace(text), "none") {
		return out, nil
	}
	for _, one := range strings.Split(text, ",") {
		s, err := parseSitter(one)
		if err != nil {
			return out, err
		}
		out.each = append(out.each, s)
	}
	return out, nil
}

// The lightest and the heaviest person, kg.
const (
	lightest = 15.0
	heaviest = 250.0
)

// parseSitter reads a mass with perhaps a posture and a place, as 70kg:floor@-200mm. A
// mass without a unit is in kg.
func parseSitter(text string) (sitter, error) {
	var out sitter
	head, place, hasPlace := strings.Cut(text, "@")
	weight, posture, hasPosture := strings.Cut(head, ":")
	if weight = strings.TrimSpace(weight); strings.Trim(weight, "0123456789.") == "" {
		weight += " kg"
	}
	var err error
	if out.mass, err = parseQuantity(weight, formula.Mass, lightest, heaviest, "70kg or 155lb"); err != nil {
		return out, fmt.Errorf("a person of %w", err)
	}
	if hasPosture {
		out.posture = new(design.Posture)
		if err := out.posture.UnmarshalText([]byte(strings.TrimSpace(posture))); err != nil {
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

// seated puts the people into a design: into the places of its own crew, in order,
// where no place is given. Without people the design's own stay.
func (p People) seated(d *design.Design) ([]design.Person, error) {
	if p.text == "" {
		return d.Crew, nil
	}
	var out []design.Person
	for i, s := range p.each {
		one := design.Person{Name: fmt.Sprintf("Person %d", i+1)}
		switch {
		case i < len(d.Crew):
			one = d.Crew[i]
			one.Stature = 0
		case s.at == nil:
			return nil, misuse("crew", "person %d has no place, for the design seats %d; give one, as %gkg@-500mm", i+1, len(d.Crew), s.mass)
		}
		one.Mass = s.mass
		if s.posture != nil {
			one.Posture, one.Seat = *s.posture, 0
		}
		if s.at != nil {
			one.At = *s.at
		}
		if half := float64(d.Hull.Length) / 2 * 0.9; math.Abs(float64(one.At)) > half {
			return nil, misuse("crew", "person %d sits at %.0f mm; accepted: up to %.0f mm from midship", i+1, float64(one.At), half)
		}
		out = append(out, one)
	}
	return out, nil
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
