package design

import (
	"fmt"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Person is one of the crew, where and how they sit.
type Person struct {
	Name    string         `toml:"name" comment:"What to call the person on the page, as \"Bow paddler\"."`
	Mass    float64        `toml:"mass" comment:"Kilograms, dressed and with a life jacket. 15 to 250."`
	Posture Posture        `toml:"posture" comment:"How the person sits: kneeling with the hips on a seat edge (when left out), floor, or bench."`
	At      measure.Length `toml:"at" comment:"Where the person's weight comes down, from midship, forward positive: seated, some 220 mm forward of the back."`
	Seat    measure.Length `toml:"seat" comment:"Height of the seat over the floor; the usual one of the posture when left out or 0 mm: bench 250 mm, kneeling 230 mm, floor 0 mm."`
	Stature measure.Length `toml:"stature" comment:"Height of the person standing; an average of that mass when left out or 0 mm."`
}

// Gear is one lot of what is carried.
type Gear struct {
	Name   string         `toml:"name" comment:"What it is, as \"Day bag\"."`
	Mass   float64        `toml:"mass" comment:"Kilograms. 0.1 to 500."`
	At     measure.Length `toml:"at" comment:"Its middle along the boat from midship, forward positive."`
	Height measure.Length `toml:"height" comment:"Its middle over the floor; 150 mm when left out or 0 mm."`
}

// Posture is how a person sits, which sets how high their weight is.
type Posture int

// The postures. Kneeling is the zero Posture.
const (
	Kneeling Posture = iota // hips against a seat edge or thwart
	Floor                   // on the floor, legs out
	Bench                   // on a seat, legs down
)

func postures() []Posture { return []Posture{Kneeling, Floor, Bench} }

// String returns the name of the posture as the file has it.
func (p Posture) String() string { return [...]string{"kneeling", "floor", "bench"}[p] }

// MarshalText writes the posture as its name.
func (p Posture) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads "kneeling", "floor" or "bench".
func (p *Posture) UnmarshalText(text []byte) error {
	for _, c := range postures() {
		if string(text) == c.String() {
			*p = c
			return nil
		}
	}
	return fmt.Errorf("%q is no posture; accepted: kneeling, floor, bench", wording.Clip(string(text), 40))
}

// mostAboard is how many of the crew, and how many lots of gear, are read.
const mostAboard = 20

func (d *Design) checkAboard(c *checker) {
	half := float64(d.Hull.Length) / 2
	c.must(len(d.Crew) <= mostAboard, "crew", "%d are given; accepted: up to %d", len(d.Crew), mostAboard)
	c.must(len(d.Gear) <= mostAboard, "gear", "%d are given; accepted: up to %d", len(d.Gear), mostAboard)
	for i, p := range d.Crew {
		key := fmt.Sprintf("crew.%d.", i)
		c.named(key+"name", p.Name, "Paddler")
		c.must(p.Mass >= 15 && p.Mass <= 250, key+"mass", "%s kg is out of range; accepted: 15 to 250 kg", short(p.Mass))
		c.length(key+"at", p.At, -half*0.9, half*0.9)
		c.length(key+"seat", p.Seat, 0, 600)
		c.must(p.Stature == 0 || p.Stature >= 800, key+"stature", "%s mm is too little; accepted: 800 to 2300 mm, or 0 mm when not known", short(float64(p.Stature)))
		c.length(key+"stature", p.Stature, 0, 2300)
	}
	for i, g := range d.Gear {
		key := fmt.Sprintf("gear.%d.", i)
		c.named(key+"name", g.Name, "Day bag")
		c.must(g.Mass >= 0.1 && g.Mass <= 500, key+"mass", "%s kg is out of range; accepted: 0.1 to 500 kg", short(g.Mass))
		c.length(key+"at", g.At, -half*0.9, half*0.9)
		c.length(key+"height", g.Height, 0, 1000)
	}
}

// named requires a name of sensible length.
func (c *checker) named(key, name, example string) {
	c.must(strings.TrimSpace(name) != "", key, "is missing; accepted: a name in quotes, as %q", example)
	c.must(len(name) <= 200, key, "has %d bytes; accepted: up to 200", len(name))
}
