// Package sizing goes from the people and the water to a design: it works a family
// of formulas out, draws and floats the boat they give, and goes round until
// both agree. It also searches for boats that meet targets, tries a family on a
// population, and sizes a class of builders at once.
package sizing

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing/family"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/wood/timber"
)

// Paddler is one of the crew.
type Paddler struct {
	Name string
	body.Person
	Posture string // one of family.Postures
}

// Brief is what a boat is sized for.
type Brief struct {
	Title        string
	Crew         []Paddler // the first paddles astern in a tandem
	Gear         float64   // kg
	Waters       string    // one of family.Waters
	Skill        string    // of the builder, one of family.Skills
	LongestStick float64   // mm, of those at hand
	Wood         string    // of the long sticks
	RibWood      string
	Density      float64 // of the water, kg/m3
	Speed        float64 // mm/s, at which the effort is compared
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
		return fmt.Errorf("the family seats %d and %d paddlers are given", seats, len(b.Crew))
	}
	for _, p := range b.Crew {
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
		return fmt.Errorf("a speed of %.3g m/s; accepted: %g to %g m/s", b.Speed/1000, SlowestSpeed/1000, FastestSpeed/1000)
	}
	for _, wood := range []string{b.Wood, b.RibWood} {
		if _, err := timber.Lookup(wood); err != nil {
			return err
		}
	}
	return nil
}

// put gives a run all that the formulas may use of the brief.
func (b *Brief) put(r *formula.Run) error {
	put := map[string]formula.Value{
		"gear": formula.Num(b.Gear), "waters": formula.Word(b.Waters), "skill": formula.Word(b.Skill),
		"longest_stick": formula.Num(b.LongestStick), "wood": formula.Word(b.Wood), "rib_wood": formula.Word(b.RibWood),
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

// Who says in a line who the boat is for.
func (b *Brief) Who() string {
	var all []string
	for _, p := range b.Crew {
		words := []string{formula.ShowNumber(p.Weight, formula.Mass), formula.ShowNumber(p.Stature, formula.Length)}
		if p.Sex != body.Untold {
			words = append(words, p.Sex.String())
		}
		if p.Name != "" {
			words = append([]string{p.Name}, words...)
		}
		all = append(all, strings.Join(words, ", "))
	}
	return strings.Join(all, " and ") + ", with " + formula.ShowNumber(b.Gear, formula.Mass) + " of gear, " + b.Waters + " water"
}
