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
	Title   string
	Crew    []Paddler // the first paddles astern in a tandem
	Gear    float64   // kg
	Water   string    // one of family.Waters
	Skill   string    // of the builder, one of family.Skills
	Stock   float64   // mm, the longest sticks at hand
	Wood    string    // of the long sticks
	RibWood string
	Density float64 // of the water, kg/m3
	Speed   float64 // mm/s, at which the effort is compared
}

// Usual returns a brief with everything but the crew as it usually is.
func Usual() Brief {
	return Brief{
		Gear: 10, Water: family.Sheltered, Skill: family.SomeBoats, Stock: 6000,
		Wood: "western redcedar", RibWood: "white ash", Density: 1000, Speed: 5e6 / 3600,
	}
}

// mostGear is more than any canoe of these families carries, kg.
const mostGear = 400

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
	case !(b.Gear >= 0 && b.Gear <= mostGear):
		return fmt.Errorf("gear of %.4g kg; accepted: 0 to %d kg", b.Gear, mostGear)
	case !slices.Contains(family.Waters(), b.Water):
		return fmt.Errorf("water %q; accepted: %s", b.Water, strings.Join(family.Waters(), ", "))
	case !slices.Contains(family.Skills(), b.Skill):
		return fmt.Errorf("skill %q; accepted: %s", b.Skill, strings.Join(family.Skills(), ", "))
	case !(b.Stock >= 1000 && b.Stock <= 12000):
		return fmt.Errorf("stock of %.4g mm; accepted: sticks of 1000 to 12000 mm", b.Stock)
	case !(b.Speed >= 100 && b.Speed <= 10000):
		return fmt.Errorf("a speed of %.3g m/s; accepted: 0.1 to 10 m/s", b.Speed/1000)
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
	set := func(name string, v formula.Value) error { return r.Set(name, v) }
	for _, v := range []struct {
		name  string
		value formula.Value
	}{
		{"gear", formula.Num(b.Gear)}, {"water", formula.Word(b.Water)}, {"skill", formula.Word(b.Skill)},
		{"stock_length", formula.Num(b.Stock)}, {"wood", formula.Word(b.Wood)}, {"rib_wood", formula.Word(b.RibWood)},
	} {
		if err := set(v.name, v.value); err != nil {
			return err
		}
	}
	for i, who := range []string{"paddler.", "partner."}[:len(b.Crew)] {
		p := b.Crew[i]
		for name, v := range map[string]formula.Value{"weight": formula.Num(p.Weight), "stature": formula.Num(p.Stature), "posture": formula.Word(p.Posture)} {
			if err := set(who+name, v); err != nil {
				return err
			}
		}
		for _, e := range p.Estimates() {
			if err := set(who+e.Name, formula.Num(e.Value)); err != nil {
				return err
			}
			if e.Name == "span" {
				if err := set(who+"span_spread", formula.Num(e.Spread)); err != nil {
					return err
				}
			}
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
	return strings.Join(all, " and ") + ", with " + formula.ShowNumber(b.Gear, formula.Mass) + " of gear, " + b.Water + " water"
}
