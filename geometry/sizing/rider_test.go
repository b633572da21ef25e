package sizing

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/wording"
)

func grown(kg, mm float64) Paddler {
	return Paddler{Person: body.Person{Weight: kg, Stature: mm}, Posture: family.Either}
}

func riders(t *testing.T, texts ...string) (out []Rider) {
	t.Helper()
	for _, text := range texts {
		r, err := ParsePassenger(text)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, r)
	}
	return out
}

// oddCase is people whom a boat must carry.
type oddCase struct {
	name, use string
	brief     func(*Brief)
}

func oddCases(t *testing.T) []oddCase {
	dog := []Rider{{Dog: true, Weight: 30, Posture: family.Either}}
	two := riders(t, "child, 25 kg, 120 cm", "child, 18 kg, 108 cm")
	return []oddCase{
		{"adult and two children", "tandem", func(b *Brief) { b.Crew, b.Passengers = []Paddler{grown(75, 1750)}, two }},
		{"adult and two children", "solo", func(b *Brief) { b.Crew, b.Passengers = []Paddler{grown(75, 1750)}, two }},
		{"two and a dog", "tandem", func(b *Brief) { b.Crew, b.Dogs = []Paddler{grown(75, 1750), grown(65, 1680)}, dog }},
		{"one and a dog", "tandem", func(b *Brief) { b.Crew, b.Dogs = []Paddler{grown(75, 1750)}, dog }},
		{"one and a dog", "solo", func(b *Brief) { b.Crew, b.Dogs = []Paddler{grown(75, 1750)}, dog }},
		{"one and a dog", "pack", func(b *Brief) { b.Crew, b.Dogs = []Paddler{grown(75, 1750)}, dog }},
		{"a toddler", "pack", func(b *Brief) { b.Crew, b.Passengers = []Paddler{grown(65, 1680)}, riders(t, "10 kg") }},
		{"three seats", "tandem", func(b *Brief) {
			b.Crew, b.Passengers = []Paddler{grown(75, 1750), grown(65, 1680)}, riders(t, "70 kg, 170 cm, sitting")
		}},
		{"a child with a place", "tandem", func(b *Brief) {
			b.Crew, b.Passengers = []Paddler{grown(75, 1750), grown(65, 1680)}, riders(t, "25 kg, 120 cm, at 500 mm")
		}},
		{"140 kg", "solo", func(b *Brief) { b.Crew = []Paddler{grown(140, 1850)} }},
		{"140 kg", "pack", func(b *Brief) { b.Crew = []Paddler{grown(140, 1850)} }},
		{"45 kg", "solo", func(b *Brief) { b.Crew = []Paddler{grown(45, 1550)} }},
		{"45 kg", "pack", func(b *Brief) { b.Crew = []Paddler{grown(45, 1550)} }},
		{"120 and 50 kg", "tandem", func(b *Brief) { b.Crew = []Paddler{grown(120, 1850), grown(50, 1600)} }},
		{"50 and 120 kg", "tandem", func(b *Brief) { b.Crew = []Paddler{grown(50, 1600), grown(120, 1850)} }},
		{"moving water", "solo", func(b *Brief) { b.Crew, b.Waters = []Paddler{grown(75, 1750)}, family.Moving }},
		{"moving water", "tandem", func(b *Brief) {
			b.Crew, b.Waters = []Paddler{grown(75, 1750), grown(65, 1680)}, family.Moving
		}},
	}
}

// TestOddCases: boats for children, dogs, a passenger, the heavy and the light pass every
// check, trim level, and hold live cargo that leans aside; nobody is without a seat or the
// floor, the riders' trunks are clear of the thwarts and they do not sit on one another.
func TestOddCases(t *testing.T) {
	for _, c := range oddCases(t) {
		b := DefaultBrief()
		b.Title = c.name
		c.brief(&b)
		boat, err := Size(shipped(t, c.use), b)
		if err != nil {
			t.Errorf("%s, %s: %v", c.name, c.use, err)
			continue
		}
		d := boat.Design
		t.Logf("%s, %s: %.0f x %.0f x %.0f mm, seat %.0f mm, GM %.0f, lever %.1f mm, moment %.0f N m, trim %.0f mm", c.name, c.use, float64(d.Hull.Length), float64(d.Hull.Beam), float64(d.Hull.Depth),
			float64(d.Seats[0].Height), boat.Found["gm"], boat.Standing.Most, boat.Standing.Moment/1000, boat.Standing.Trim)
		for _, v := range boat.Failures() {
			t.Errorf("%s, %s: %s", c.name, c.use, v)
		}
		if math.Abs(boat.Standing.Trim) > 25 {
			t.Errorf("%s, %s: trims %.0f mm", c.name, c.use, boat.Standing.Trim)
		}
		if len(d.Crew) != len(b.Crew)+len(b.Riders()) {
			t.Errorf("%s, %s: %d aboard", c.name, c.use, len(d.Crew))
		}
		if m := boat.Cargo; len(b.Riders()) > 0 && (m == nil || m.Moves[0].Upset || m.Mass != b.live()) {
			t.Errorf("%s, %s: %+v", c.name, c.use, m)
		}
		floorTaken(t, c.name+", "+c.use, d)
	}
}

// floorTaken checks who sits on the floor.
func floorTaken(t *testing.T, name string, d *design.Design) {
	t.Helper()
	last := math.Inf(-1)
	for _, p := range d.Crew {
		if !p.Role.Live() || p.Seat != design.OnFloor {
			continue
		}
		aft, fore := weight.Room(p)
		if p.Role == design.Passenger {
			for _, w := range d.Thwarts {
				if a, z := float64(p.At)-aft, float64(p.At)+60; float64(w.At+w.Width/2) > a && float64(w.At-w.Width/2) < z {
					t.Errorf("%s: %s at %.0f mm sits in %s", name, p.Name, float64(p.At), w.Name)
				}
			}
		}
		if strings.HasSuffix(p.Name, "in the bow") {
			continue
		}
		if float64(p.At)-aft < last-60 { // feet may come beside who sits ahead
			t.Errorf("%s: %s sits on the one behind", name, p.Name)
		}
		last = float64(p.At) + fore
	}
}

// TestLiveCargoChangesLittle: 200 g more of a dog change the boat a little, and a light one
// hardly: the boat without it is near that with one of 3 kg.
func TestLiveCargoChangesLittle(t *testing.T) {
	for _, name := range family.Names() {
		at := func(kg float64) map[string]float64 {
			b := briefFor(shipped(t, name), body.Person{Weight: 72, Stature: 1740}, 12)
			if kg > 0 {
				b.Dogs = []Rider{{Dog: true, Weight: kg, Posture: family.Either}}
			}
			return settled(t, shipped(t, name), b)
		}
		for _, kg := range []float64{3, 12, 29.9, 45} {
			a, b := at(kg), at(kg+0.2)
			for n, v := range a {
				if math.Abs(b[n]-v) > 6 {
					t.Errorf("%s: %s moves by %.1f mm from %.1f kg on", name, n, b[n]-v, kg)
				}
			}
		}
		if a, b := at(0), at(3); math.Abs(a["length"]-b["length"]) > 60 || math.Abs(a["beam"]-b["beam"]) > 15 || math.Abs(a["depth"]-b["depth"]) > 12 { // less filling takes 1 mm of depth back for each hundredth
			t.Errorf("%s: a dog of 3 kg makes %v of %v", name, b, a)
		}
	}
}

// TestOutsideTheSurvey: every body from a child's to a giant's gets a boat, or is refused in
// words of weight and stature without a key that nobody set. Bodies that live, of a mass
// over stature squared from 13 to 45 kg/m2, are never refused from 1.4 m on.
func TestOutsideTheSurvey(t *testing.T) {
	made := 0
	for _, name := range family.Names() {
		f := shipped(t, name)
		for _, kg := range []float64{25, 45, 100, 170, 250} {
			for _, mm := range []float64{1100, 1400, 1700, 2000, 2300} {
				b := briefFor(f, body.Person{Weight: kg, Stature: mm}, 10)
				_, err := Size(f, b)
				if err == nil {
					made++
					continue
				}
				if text := err.Error(); keyed.MatchString(text) || !strings.Contains(text, "kg") || !strings.Contains(text, " mm") {
					t.Errorf("%s, %.0f kg, %.0f mm: %v", name, kg, mm, err)
				}
				if m := kg / (mm * mm * 1e-6); m > 13 && m < 45 && mm >= 1400 {
					t.Errorf("%s, %.0f kg, %.0f mm: %v", name, kg, mm, err)
				}
			}
		}
	}
	if made < 60 {
		t.Errorf("%d of 75 made", made)
	}
}

// TestRefusalNamesNoKey: a fault that names a key of the design is told in the words of the
// brief; one that names none is kept.
func TestRefusalNamesNoKey(t *testing.T) {
	c := settledCase(t, shipped(t, "pack"), briefFor(shipped(t, "pack"), body.Person{Weight: 60, Stature: 1650}, 10))
	for text, kept := range map[string]bool{"ribs.pitch is 3 mm": false, "the water stands over the gunwale": true} {
		if said := c.Refused(&wording.Fault{Text: text}).Error(); strings.Contains(said, text) != kept || !strings.Contains(said, "60 kg") {
			t.Errorf("%q is told as %q", text, said)
		}
	}
}

// TestRidersRead: what is written is read back; slips are refused with what is accepted.
func TestRidersRead(t *testing.T) {
	for text, want := range map[string]Rider{
		"child, 25 kg, 120 cm":            {Weight: 25, Stature: 1200, Posture: family.Either},
		"70 kg, sitting":                  {Weight: 70, Posture: family.Sitting},
		"22 lb, kneeling, at -1 ft":       {Weight: 9.97903214, Posture: family.Kneeling, At: -304.8, Placed: true},
		"12 kg, at 0 mm, adult, 5 ft 6in": {Weight: 12, Stature: 1676.4, Posture: family.Either, Placed: true},
	} {
		got, err := ParsePassenger(text)
		if strings.Contains(text, "22 lb") {
			if err == nil || !strings.Contains(err.Error(), "accepted: 10 to 250 kg") {
				t.Errorf("%q: %v", text, err)
			}
			continue
		}
		if err != nil || math.Abs(got.Stature-want.Stature) > 1e-6 || got.Weight != want.Weight || got.Posture != want.Posture || got.Placed != want.Placed {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
		if again, err := ParsePassenger(got.String()); err != nil || again != got {
			t.Errorf("%q is read as %+v, %v", got.String(), again, err)
		}
	}
	for text, want := range map[string]string{"120 cm": "has no weight", "25 kg, 30 kg": "is not understood", "25 kg,, 3 m": "two commas", "25 kg, 60 cm": "stature of 600 mm", "": "two commas"} {
		if _, err := ParsePassenger(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	if d, err := ParseDog("30 kg, at 200 mm"); err != nil || !d.Dog || d.At != 200 {
		t.Errorf("%+v, %v", d, err)
	}
	if _, err := ParseDog("30 kg, kneeling"); err == nil {
		t.Error("a dog kneels")
	}
}

// TestWhoSitsInTheBow: one paddler of a boat for two has the first rider without a place in
// the bow, who reaches for nothing; without any, the brief is refused with the cure.
func TestWhoSitsInTheBow(t *testing.T) {
	f := shipped(t, "tandem")
	b := DefaultBrief()
	b.Title, b.Crew, b.Passengers = "Bow", []Paddler{grown(75, 1750)}, riders(t, "25 kg, 120 cm, at 300 mm", "18 kg")
	c, err := NewCase(f, b)
	if err != nil || len(c.Brief.Crew) != 2 || c.Brief.Crew[1].Weight != 18 || c.Brief.Crew[1].Role != design.Passenger || len(c.Brief.Passengers) != 1 {
		t.Fatalf("%+v, %v", c, err)
	}
	boat, err := Size(f, b)
	if err != nil {
		t.Fatal(err)
	}
	bow := boat.Design.Crew[1]
	if len(boat.Design.Seats) != 1 || bow.Role != design.Passenger || bow.Seat != design.OnFloor || bow.At <= 0 || boat.Design.Crew[2].At != 300 {
		t.Errorf("%+v", boat.Design.Crew)
	}
	if who := boat.Case.Brief.Who(); !strings.Contains(who, "a child of 18 kg") || !strings.Contains(who, "in the bow") {
		t.Error(who)
	}
	b.Passengers = nil
	if _, err := NewCase(f, b); err == nil || !strings.Contains(err.Error(), "a passenger who sits in the bow") {
		t.Error(err)
	}
}
