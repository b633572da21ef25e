package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/water"
)

// massFlag is a mass: kilograms, or pounds when it says so.
type massFlag struct{ kg float64 }

func (m *massFlag) String() string {
	if m.kg == 0 {
		return ""
	}
	return strconv.FormatFloat(m.kg, 'f', -1, 64) + "kg"
}
func (m *massFlag) Type() string { return "mass" }
func (m *massFlag) Set(s string) error {
	v, err := parseMass(s)
	if err == nil && !(v > 0 && v <= 5000) {
		err = fmt.Errorf("%g kg is out of range; accepted: more than 0 and up to 5000 kg", v)
	}
	m.kg = v
	return err
}

// parseMass reads 120, 120kg, 120 kg or 265 lb and returns kg.
func parseMass(s string) (float64, error) {
	text, per := strings.ToLower(strings.TrimSpace(s)), 1.0
	for _, u := range []struct {
		name string
		kg   float64
	}{{"kg", 1}, {"lbs", measure.Pound}, {"lb", measure.Pound}} {
		if rest, ok := strings.CutSuffix(text, u.name); ok {
			text, per = strings.TrimSpace(rest), u.kg
			break
		}
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no mass; accepted: a number of kg or lb, as 120kg or 265lb", s)
	}
	return v * per, nil
}

// lengthFlag is a length from zero up.
type lengthFlag struct{ mm float64 }

func (l *lengthFlag) String() string {
	if l.mm == 0 {
		return ""
	}
	return measure.Length(l.mm).String()
}
func (l *lengthFlag) Type() string { return "length" }
func (l *lengthFlag) Set(s string) error {
	v, err := measure.ParseLength(s)
	if err == nil && !(v > 0 && v <= 3000) {
		err = fmt.Errorf("%s is out of range; accepted: more than 0 mm and up to 3000 mm", v)
	}
	l.mm = float64(v)
	return err
}

// waterFlag is a kind of water.
type waterFlag struct{ water.Kind }

func (w *waterFlag) Type() string       { return "fresh|salt" }
func (w *waterFlag) Set(s string) error { var err error; w.Kind, err = water.Parse(s); return err }

// crewFlag is a list of people, each a mass with perhaps a posture and a place:
// 70, 70:floor, 70:floor@-200mm.
type crewFlag struct {
	given bool
	text  string
	list  []sitter
}

// sitter is one of them; what is not said follows the design.
type sitter struct {
	mass    float64
	posture *design.Posture
	at      *measure.Length
}

func (c *crewFlag) String() string { return c.text }
func (c *crewFlag) Type() string   { return "people" }
func (c *crewFlag) Set(s string) error {
	c.given, c.text, c.list = true, s, nil
	if strings.EqualFold(strings.TrimSpace(s), "none") {
		return nil
	}
	for _, one := range strings.Split(s, ",") {
		p, err := parseSitter(one)
		if err != nil {
			return err
		}
		c.list = append(c.list, p)
	}
	return nil
}

func parseSitter(text string) (sitter, error) {
	var out sitter
	head, place, placed := strings.Cut(text, "@")
	weight, posture, seated := strings.Cut(head, ":")
	v, err := parseMass(weight)
	if err != nil {
		return out, err
	}
	if !(v >= 15 && v <= 250) {
		return out, fmt.Errorf("a person of %g kg is out of range; accepted: 15 to 250 kg", v)
	}
	out.mass = v
	if seated {
		out.posture = new(design.Posture)
		if err := out.posture.UnmarshalText([]byte(strings.TrimSpace(posture))); err != nil {
			return out, err
		}
	}
	if placed {
		l, err := measure.ParseLength(place)
		if err != nil {
			return out, err
		}
		out.at = &l
	}
	return out, nil
}

// people seats the list in a design: in the places of its own crew, in order,
// where no place is given.
func (c *crewFlag) people(d *design.Design) ([]design.Person, error) {
	var out []design.Person
	for i, s := range c.list {
		p := design.Person{Name: fmt.Sprintf("Person %d", i+1)}
		switch {
		case i < len(d.Crew):
			p = d.Crew[i]
			p.Stature = 0
		case s.at == nil:
			return nil, fmt.Errorf("--crew: person %d has no place, for the design seats %d; give one, as %g@-500mm", i+1, len(d.Crew), s.mass)
		}
		p.Mass = s.mass
		if s.posture != nil {
			p.Posture, p.Seat = *s.posture, 0
		}
		if s.at != nil {
			p.At = *s.at
		}
		if half := float64(d.Hull.Length) / 2 * 0.9; math.Abs(float64(p.At)) > half {
			return nil, fmt.Errorf("--crew: person %d sits at %.0f mm; accepted: up to %.0f mm from midship", i+1, float64(p.At), half)
		}
		out = append(out, p)
	}
	return out, nil
}
