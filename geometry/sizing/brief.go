// Package sizing goes from the people and the water to a design: it works a family
// of formulas out, draws and floats the boat they give, and goes round until
// both agree. It also searches for boats that meet targets, tries a family on a
// population, and sizes a class of builders at once.
package sizing

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ribwright/geometry/boat/weight"
	"ribwright/geometry/body"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wood/timber"
	"ribwright/geometry/wording"
)

// Paddler is one of the crew.
type Paddler struct {
	Name string
	body.Person
	Posture string      // one of family.Postures
	Role    design.Role // one of the live cargo who sits in the bow is no paddler
}

// Brief is what a boat is sized for.
type Brief struct {
	Title        string
	Edition      string    // of the design; "" for the first
	Crew         []Paddler // the first paddles astern in a tandem
	Passengers   []Rider   // live cargo
	Dogs         []Rider   // likewise
	Gear         float64   // kg
	Waters       string    // one of family.Waters
	Skill        string    // of the builder, one of family.Skills
	LongestStick float64   // mm, of those at hand
	Wood         string    // of the long sticks
	RibWood      string
	Density      float64        // of the water, kg/m3
	Speed        float64        // mm/s, at which the effort is compared
	Units        measure.System // in which the brief was given, for words
}

// DefaultBrief returns a brief of everything but the crew.
func DefaultBrief() Brief {
	return Brief{
		Gear: 10, Waters: family.Sheltered, Skill: family.Average, LongestStick: 6000,
		Wood: "western redcedar", RibWood: "white ash", Density: 1000, Speed: 5e6 / 3600,
	}
}

// The bounds of a brief.
const (
	MostGear       = 400.0   // kg, more than any canoe of these families carries
	ShortestSticks = 1000.0  // mm
	LongestSticks  = 12000.0 // mm
	SlowestSpeed   = 100.0   // mm/s
	FastestSpeed   = 10000.0 // mm/s
)

// Check refuses a brief that no boat can be sized for.
func (b *Brief) Check(seats int) error {
	if len(b.Crew) != seats {
		given := wording.Counted(len(b.Crew), "paddler") + " are"
		if len(b.Crew) == 1 {
			given = "1 paddler is"
		}
		return fmt.Errorf("the family seats %d and %s given%s", seats, given, b.cure(seats))
	}
	if n := len(b.Riders()); n > mostRiders {
		return fmt.Errorf("%d passengers and dogs; accepted: up to %d", n, mostRiders)
	}
	for _, r := range b.Riders() {
		if err := r.Check(); err != nil {
			return err
		}
	}
	for _, p := range b.Crew {
		if p.Role.Live() {
			continue
		}
		if err := p.Check(); err != nil {
			return err
		}
		if !slices.Contains(family.Postures(), p.Posture) {
			return fmt.Errorf("posture %q; accepted: %s", p.Posture, strings.Join(family.Postures(), ", "))
		}
	}
	switch {
	case !(b.Gear >= 0 && b.Gear <= MostGear):
		return fmt.Errorf("gear of %.4g kg; accepted: 0 to %.0f kg", b.Gear, MostGear)
	case !slices.Contains(family.Waters(), b.Waters):
		return fmt.Errorf("waters %q; accepted: %s", b.Waters, strings.Join(family.Waters(), ", "))
	case !slices.Contains(family.Skills(), b.Skill):
		return fmt.Errorf("skill %q; accepted: %s", b.Skill, strings.Join(family.Skills(), ", "))
	case !(b.LongestStick >= ShortestSticks && b.LongestStick <= LongestSticks):
		return fmt.Errorf("a longest stick of %.4g mm; accepted: %.0f to %.0f mm", b.LongestStick, ShortestSticks, LongestSticks)
	case !(b.Speed >= SlowestSpeed && b.Speed <= FastestSpeed):
		return fmt.Errorf("a speed of %.3g m/s; accepted: %.6g to %.6g m/s", b.Speed/1000, SlowestSpeed/1000, FastestSpeed/1000)
	}
	for _, wood := range []string{b.Wood, b.RibWood} {
		if _, err := timber.Lookup(wood); err != nil {
			return err
		}
	}
	return nil
}

// mostRiders is the most of the live cargo that a boat is sized for.
const mostRiders = 6

// cure says what to do where too few or too many paddle.
func (b *Brief) cure(seats int) string {
	switch {
	case len(b.Crew) > seats:
		return "; who does not paddle is a passenger"
	case len(b.Crew) == 1 && len(b.Riders()) == 0:
		return "; give a second one, or a passenger who sits in the bow"
	}
	return ""
}

// arranged is the brief as a family of so many seats takes it: where one paddles a boat for
// two, the first of the live cargo that has no place of its own sits in the bow, on the floor.
func (b Brief) arranged(seats int) Brief {
	if seats != 2 || len(b.Crew) != 1 {
		return b
	}
	for _, from := range []*[]Rider{&b.Passengers, &b.Dogs} {
		if i := slices.IndexFunc(*from, func(r Rider) bool { return !r.Placed && r.Posture == family.Either }); i >= 0 {
			r := (*from)[i]
			*from = slices.Delete(slices.Clone(*from), i, i+1)
			one := r.person("", 0)
			aft, _ := weight.Room(one)
			high := aft / 0.13 // the families take that share of the stature for the back; a dog's length counts so
			p := Paddler{Person: body.Person{Weight: r.Weight, Stature: high}, Posture: family.Either, Role: one.Role}
			b.Crew = []Paddler{b.Crew[0], p}
			return b
		}
	}
	return b
}

// put gives a run all that the formulas may use of the brief.
func (b *Brief) put(r *formula.Run) error {
	put := map[string]formula.Value{
		"gear": formula.Num(b.Gear), "waters": formula.Word(b.Waters), "skill": formula.Word(b.Skill),
		"longest_stick": formula.Num(b.LongestStick), "wood": formula.Word(b.Wood), "rib_wood": formula.Word(b.RibWood),
	}
	placed, at := b.placed()
	put["live"], put["placed"], put["placed_at"] = formula.Num(b.live()), formula.Num(placed), formula.Num(at)
	long, center := b.row()
	put["live_long"], put["live_center"] = formula.Num(long), formula.Num(center)
	if len(b.Crew) == 2 {
		put["partner.role"] = formula.Word(b.Crew[1].Role.String())
	}
	for i, who := range []string{"paddler.", "partner."}[:len(b.Crew)] {
		p := b.Crew[i]
		put[who+"weight"], put[who+"stature"], put[who+"posture"] = formula.Num(p.Weight), formula.Num(p.Stature), formula.Word(p.Posture)
		for _, e := range p.Estimates() {
			put[who+e.Name] = formula.Num(e.Value)
			if e.Name == "span" {
				put[who+"span_spread"] = formula.Num(e.Spread)
			}
		}
	}
	for name, v := range put {
		if err := r.Set(name, v); err != nil {
			return err
		}
	}
	return nil
}

// Mass letters kg as people of the brief's units say them: "62 kg", "137 lb".
func (b *Brief) Mass(kg float64) string {
	if b.Units == measure.Imperial {
		return strings.TrimSuffix(fmt.Sprintf("%.1f", kg/measure.Pound), ".0") + " lb"
	}
	return formula.ShowNumber(kg, formula.Mass)
}

// height letters mm as people tell their own: "172 cm", 5'-7 3/4".
func (b *Brief) height(mm float64) string {
	if b.Units == measure.Imperial {
		return measure.FeetInches(mm)
	}
	return inCM(mm)
}

// inCM letters mm as "172 cm" or "172.5 cm".
func inCM(mm float64) string { return strconv.FormatFloat(math.Round(mm)/10, 'f', -1, 64) + " cm" }

// Who says in a line who the boat is for.
func (b *Brief) Who() string {
	var all []string
	for _, p := range b.Crew {
		words := []string{b.Mass(p.Weight), b.height(p.Stature) + " tall"}
		if p.Span > 0 {
			words = append(words, "arm span "+b.height(p.Span))
		}
		if p.Sex != body.Untold {
			words = append(words, p.Sex.String())
		}
		if p.Name != "" {
			words = append([]string{p.Name}, words...)
		}
		if p.Role.Live() {
			words = []string{Rider{Dog: p.Role == design.Dog, Weight: p.Weight, Stature: p.Stature}.words() + " in the bow"}
			words[0] = b.Units.Words(words[0])
		}
		all = append(all, strings.Join(words, ", "))
	}
	for _, r := range b.Riders() {
		all = append(all, b.Units.Words(r.words()))
	}
	return strings.Join(all, " and ") + ", with " + b.Mass(b.Gear) + " of gear, " + b.Waters + " water"
}
