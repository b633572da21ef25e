package design

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"ribwright/geometry/measure"
	"ribwright/geometry/wording"
)

// Seat is what somebody sits on, or rests the hips against while kneeling. What holds it
// follows from its height: there is no second key for that.
type Seat struct {
	Name      string         `toml:"name" most:"200" accepts:"a name in quotes, as 'Bow seat'" comment:"What it is called on the sheets and by [[crew]]."`
	Kind      SeatKind       `toml:"kind" comment:"pad (of foam, on the floor; so when left out), saddle (a box of boards on the floor, between a kneeler's feet) or hung (two rails on hangers from the gunwales)."`
	At        measure.Length `toml:"at" comment:"Its middle along the boat from midship, forward positive."`
	Height    measure.Length `toml:"height" accepts:"5 to 600 mm" comment:"Its top over the floor inside, which is the upper face of the floor slats, or of the ribs in a boat without slats, at its middle. A pad 10 to 70 mm, a saddle 70 to 230 mm, a hung seat 180 to 260 mm; hangers, cheeks and thickness follow."`
	Species   string         `toml:"species" comment:"Wood of rails, hangers, cheeks; white ash when left out. A pad has none."`
	Long      measure.Length `toml:"long" accepts:"120 to 600 mm, or 0 mm for the usual" comment:"Along the boat, over all; 0 mm for the usual: pad 350 mm, saddle 260 mm, hung what suits the gaps between the ribs, 190 to 330 mm."`
	Wide      measure.Length `toml:"wide" accepts:"100 to 700 mm, or 0 mm for the usual" comment:"Across the boat where one sits; 0 mm for the usual: pad 380 mm, saddle 200 mm to kneel and 300 mm to sit, hung 380 mm."`
	Drop      measure.Length `toml:"drop" accepts:"0 to 40 mm" comment:"How much lower the front edge is than the back; 0 mm for 20 mm where someone kneels and level where nobody does."`
	RailWidth measure.Length `toml:"rail_width" accepts:"15 to 80 mm, or 0 mm for the usual" comment:"Rails of a hung seat, along the boat; 0 mm for 40 mm."`
	RailDepth measure.Length `toml:"rail_depth" accepts:"15 to 80 mm, or 0 mm for the usual" comment:"The same, up and down; 0 mm for 25 mm."`
	Bottom    Bottom         `toml:"bottom" comment:"What lies between the rails of a hung seat: webbing, when left out, or slats."`
}

// SeatKind is how a seat is carried.
type SeatKind int

// The kinds of seat. Pad is the zero SeatKind.
const (
	Pad    SeatKind = iota // foam on the floor
	Saddle                 // a box on the floor
	Hung                   // rails on hangers from the gunwales
)

func (SeatKind) words() []string { return []string{"pad", "saddle", "hung"} }

func (k SeatKind) String() string                   { return k.words()[k] }
func (k SeatKind) MarshalText() ([]byte, error)     { return []byte(k.String()), nil }
func (k *SeatKind) UnmarshalText(text []byte) error { return choose(k, "kind of seat", text) }

// Bottom is what one sits on between the rails of a hung seat.
type Bottom int

// The bottoms. Webbing is the zero Bottom.
const (
	Webbing Bottom = iota
	Slats
)

func (Bottom) words() []string { return []string{"webbing", "slats"} }

func (b Bottom) String() string                   { return b.words()[b] }
func (b Bottom) MarshalText() ([]byte, error)     { return []byte(b.String()), nil }
func (b *Bottom) UnmarshalText(text []byte) error { return choose(b, "bottom of a seat", text) }

// OnFloor is the seat of one who sits on none.
const OnFloor = "floor"

// SeatCode returns what the seat with the number i, from 0, is called besides its name.
func SeatCode(i int) string { return fmt.Sprintf("seat-%d", i+1) }

// FindSeat returns the number of the seat that a word means: its name, whatever its
// capitals, spaces and hyphens, or its code (SeatCode); -1 for none.
func (d *Design) FindSeat(word string) int {
	for i := range d.Seats {
		if name := d.Seats[i].Name; name == word || alike(name, word) {
			return i
		}
	}
	for i := range d.Seats {
		if alike(SeatCode(i), word) {
			return i
		}
	}
	return -1
}

// alike reports whether two words are one when bare. It makes neither: searches ask for a
// person's seat again and again.
func alike(a, b string) bool {
	for {
		var p, q rune
		p, a = letter(a)
		q, b = letter(b)
		if p != q || p == none {
			return p == q
		}
	}
}

const none rune = -1 // what is left of a word at its end

// letter returns the first letter of a bare word, and the rest of the word.
func letter(word string) (rune, string) {
	for i, r := range word {
		if r = small(r); r != none {
			_, size := utf8.DecodeRuneInString(word[i:])
			return r, word[i+size:]
		}
	}
	return none, ""
}

// small is a letter in small, and none for spaces and signs.
func small(r rune) rune {
	if strings.ContainsRune(" \t-_,.:;'\"/()&+", r) {
		return none
	}
	return unicode.ToLower(r)
}

// bare is a word in small letters without spaces and signs.
func bare(word string) string { return strings.Map(small, word) }

// SeatOf returns the seat of a person; ok is false for one on the floor.
func (d *Design) SeatOf(p Person) (s Seat, ok bool) {
	if alike(p.Seat, OnFloor) {
		return Seat{}, false
	}
	if i := d.FindSeat(p.Seat); i >= 0 {
		return d.Seats[i], true
	}
	return Seat{}, false
}

// How far a seated person's weight lies forward of the middle of the seat, mm: a
// kneeler's hips are against its front edge and the knees ahead; legs that are stretched
// out or let down lie ahead too. From memory.
const (
	aheadKneeling = 100.0
	aheadSitting  = 50.0
)

// Ahead returns how far a person's weight lies forward of the middle of the seat, mm.
func (p Posture) Ahead() float64 {
	if p == Kneeling {
		return aheadKneeling
	}
	return aheadSitting
}

// WeightAt returns the station where a person's weight comes down: a little ahead of the
// seat, or where the design has one on the floor, mm.
func (d *Design) WeightAt(p Person) float64 {
	if s, ok := d.SeatOf(p); ok {
		return float64(s.At) + p.Posture.Ahead()
	}
	return float64(p.At)
}

// Lowered returns the person on the floor at the same place, without a seat; one who sat
// with the legs let down stretches them out.
func (d *Design) Lowered(p Person) Person {
	p.At = measure.Length(d.WeightAt(p))
	p.Seat = OnFloor
	if p.Posture == Bench {
		p.Posture = Floor
	}
	return p
}

func (d *Design) checkSeats(c *checker, reach float64) {
	for i, s := range d.Seats {
		key := fmt.Sprintf("seat.%d.", i)
		c.length(key+"at", s.At, -reach, reach)
		c.must(bare(s.Name) != "" && bare(s.Name) != OnFloor, key+"name", "%q is no name for a seat, which [[crew]] and commands call by it; accepted: as \"Bow seat\"", wording.Clip(s.Name, 40))
		if j := d.FindSeat(s.Name); j < i {
			c.must(false, key+"name", "%q is the name of two seats; give each its own, for [[crew]] says by it who sits where", wording.Clip(s.Name, 40))
		}
		if s.Species != "" {
			c.species(d, key+"species", s.Species)
		}
		lo, hi := s.Kind.heights()
		c.must(float64(s.Height) >= lo && float64(s.Height) <= hi, key+"height", "%s mm is no height for a %s seat; accepted: %s to %s mm", mm(s.Height), s.Kind, short(lo), short(hi))
	}
}

// heights are the least and the greatest height of a seat's top over the floor, mm. How
// low a hung seat may be, its clear height for the feet says as well.
func (k SeatKind) heights() (lo, hi float64) {
	switch k {
	case Saddle:
		return 60, 600
	case Hung:
		return 150, 600
	}
	return 5, 120
}

func (d *Design) checkCrew(c *checker, reach float64) {
	for i, p := range d.Crew {
		key := fmt.Sprintf("crew.%d.", i)
		c.must(strings.TrimSpace(p.Seat) != "", key+"seat", "is missing; accepted: the name of a [[seat]], or %q", OnFloor)
		if _, err := measure.ParseLength(p.Seat); err == nil {
			c.must(false, key+"seat", "%s is a height; write a [[seat]] with a name and height = %q, and give its name here", wording.Clip(p.Seat, 40), wording.Clip(p.Seat, 40))
		}
		c.must(p.Role.Live() || p.Mass == 0 || p.Mass >= 15, key+"mass", "%.4g kg is little for one who paddles; accepted: 15 to 250 kg, or role = \"passenger\" or \"dog\"", p.Mass)
		c.must(p.Role != Dog || bare(p.Seat) == OnFloor && p.Posture == Floor, key+"role", "a dog sits on no seat; accepted with it: seat = \"floor\" and posture = \"floor\"")
		if bare(p.Seat) == OnFloor {
			c.length(key+"at", p.At, -reach, reach)
			c.must(d.Suits(p), key+"posture", "bench wants a seat to let the legs down from; accepted on the floor: floor, kneeling")
			continue
		}
		if d.FindSeat(p.Seat) < 0 {
			c.must(false, key+"seat", "%q is no seat of this boat; accepted: %s", wording.Clip(p.Seat, 40), d.seatsAccepted())
		}
		c.must(d.Suits(p), key+"posture", "%s does not go with %q, a pad on the floor; accepted there: floor, or another kind of seat", p.Posture, wording.Clip(p.Seat, 40))
		c.must(p.At == 0, key+"at", "%s mm is given for one who sits on %q; leave it out: the weight comes where the seat is, or write seat = %q", mm(p.At), wording.Clip(p.Seat, 40), OnFloor)
	}
}

// seatsAccepted lists where one may sit.
func (d *Design) seatsAccepted() string {
	out := ""
	for _, s := range d.Seats {
		out += fmt.Sprintf("%q, ", wording.Clip(s.Name, 40))
	}
	return out + fmt.Sprintf("%q", OnFloor)
}

// Suits reports whether a person can sit so where they sit: on a pad with the legs out
// alone, and with the legs let down on a seat alone.
func (d *Design) Suits(p Person) bool {
	s, seated := d.SeatOf(p)
	switch {
	case !seated:
		return p.Posture != Bench
	case s.Kind == Pad:
		return p.Posture == Floor
	}
	return true
}

// SeatLoad is the mass of those who sit on the seat with the number i, kg; 0 for nobody.
func (d *Design) SeatLoad(i int) float64 {
	sum := 0.0
	for _, p := range d.Crew {
		if d.FindSeat(p.Seat) == i {
			sum += p.Mass
		}
	}
	return sum
}

// KneelsOn reports whether someone of the crew kneels at the seat with the number i.
func (d *Design) KneelsOn(i int) bool {
	for _, p := range d.Crew {
		if p.Posture == Kneeling && d.FindSeat(p.Seat) == i {
			return true
		}
	}
	return false
}
