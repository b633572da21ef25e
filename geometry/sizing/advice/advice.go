// Package advice ranks the boats that would do for somebody, with what speaks for and
// against each, and says which to begin with.
package advice

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/wording"
)

// Boat is one that would do, sized and tried.
type Boat struct {
	Family string
	For    string
	First  bool     // a first builder may begin with it: for one of the people alone
	Why    []string // it stands where it does, a reason a line

	Length, Beam float64 // mm
	Mass         float64 // kg
	Hours        float64
	Cost         float64 // in the currency of the prices
	Stick        float64 // mm, the longest one before scarfs
	Scarfs       int     // in each gunwale
	AtHand       float64 // mm, the longest stick at hand
	Car          float64 // mm, the longest load that the car carries; 0 where nothing is said
	Lever        float64 // mm, the greatest righting one
	People       int

	Unsuited string // why it is not for that water or that gear; "" where it is

	Hard    []string     // bends that want picked stock, a strap, or more than the wood takes
	Missed  finding.List // why it should not be built as it is
	Dangers []string     // what else can go wrong, by what it is about
	NoBoat  string       // why there is none; "" where there is
}

// Take notes of the bends those that are hard, and of all findings those that are dangers.
func (b *Boat) Take(bends, afloat finding.List) {
	for _, f := range bends {
		switch f.Verdict {
		case finding.Pick, finding.Strap, finding.NoStrap, finding.TooTight:
			b.Hard = append(b.Hard, f.About)
		}
	}
	for _, f := range slices.Concat(afloat, bends) {
		if f.Verdict.Danger() && f.Verdict.Passes() && !slices.Contains(b.Dangers, f.About) {
			b.Dangers = append(b.Dangers, f.About)
		}
	}
}

// Rank puts the boats in the order in which they are advised: such as can be built as they
// are before such as cannot, such as the car carries before longer ones, such as suit the use
// before others, for a beginner those to begin with before others, and then by hours, the
// fewest first; scarfs cost hours. It says of each what speaks for it and against it.
func Rank(all []Boat, beginner bool) []Boat {
	out := slices.Clone(all)
	order := func(a, b *Boat) int {
		return cmp.Or(cmp.Compare(a.grade(beginner), b.grade(beginner)), cmp.Compare(a.Hours, b.Hours))
	}
	sort.SliceStable(out, func(i, j int) bool { return order(&out[i], &out[j]) < 0 })
	for i := range out {
		out[i].Why = out[i].why(all, beginner)
	}
	return out
}

// grade is lower for what is advised sooner.
func (b Boat) grade(beginner bool) int {
	switch {
	case b.NoBoat != "":
		return 5
	case len(b.Missed) > 0:
		return 4
	case b.tooLong():
		return 3
	case b.Unsuited != "":
		return 2
	case beginner && !b.First:
		return 1
	}
	return 0
}

func (b Boat) tooLong() bool { return b.Car > 0 && b.Length > b.Car }

// why says what a boat has the least or most of among several, how it goes with use, wood
// and car, what it asks for, and what can go wrong.
func (b Boat) why(all []Boat, beginner bool) []string {
	if b.NoBoat != "" {
		return []string{"no boat: " + b.NoBoat}
	}
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if beginner && b.First {
		say("to begin with: the smallest boat teaches the same work, and a rib that breaks costs least (common practice)")
	}
	if best := b.best(all); len(best) > 0 {
		say("of these boats it has %s", strings.Join(best, ", "))
	}
	if b.Unsuited != "" {
		say("use: %s", b.Unsuited)
	}
	if b.Car > 0 {
		fits := "the car carries it, %.0f mm where %.0f mm go"
		if b.tooLong() {
			fits = "too long for the car, %.0f mm where %.0f mm go: carry it another way, or build a shorter one"
		}
		say(fits, b.Length, b.Car)
	}
	b.sayWood(say)
	if len(b.Hard) > 0 {
		say("hard bends, spare ribs first: %s", strings.Join(b.Hard, ", "))
	}
	for _, f := range b.Missed {
		say("%s", f.String())
	}
	if len(b.Dangers) > 0 {
		say("what can go wrong: %s", strings.Join(b.Dangers, "; "))
	}
	return out
}

// best lists what a boat alone has the least of.
func (b Boat) best(all []Boat) (out []string) {
	for _, m := range []struct {
		words string
		of    func(Boat) float64
	}{
		{"the fewest hours", func(b Boat) float64 { return b.Hours }}, {"the least cost", func(b Boat) float64 { return b.Cost }},
		{"the least weight to carry", func(b Boat) float64 { return b.Mass }}, {"the least length on a car", func(b Boat) float64 { return b.Length }},
		{"the fewest hard bends", func(b Boat) float64 { return float64(len(b.Hard)) }},
	} {
		if b.alone(all, m.of) {
			out = append(out, m.words)
		}
	}
	return out
}

// sayWood says whether the sticks at hand are long enough.
func (b Boat) sayWood(say func(string, ...any)) {
	switch {
	case b.Scarfs > 0:
		say("wood: the longest stick is %.0f mm, and with sticks of %.0f mm each gunwale wants %s", b.Stick, b.AtHand, wording.Counted(b.Scarfs, "scarf"))
	case b.AtHand > 0:
		say("wood: sticks of %.0f mm are long enough for its gunwales, no scarf", b.AtHand)
	}
}

// LightGear is the most gear that a pack canoe is for, kg; our own choice: a night or two.
const LightGear = 15.0

// Suits says why a family that comes with the program is not for some water or gear, ""
// where it is; common practice, no source: a small low boat is for quiet water and little
// gear.
func Suits(family, waters string, gear float64) string {
	switch {
	case family != "pack":
		return ""
	case waters != "sheltered":
		return fmt.Sprintf("a pack canoe is for sheltered water, and %s water wants a longer boat", waters)
	case gear > LightGear:
		return fmt.Sprintf("a pack canoe is for up to %.0f kg of gear, not %.0f kg", LightGear, gear)
	}
	return ""
}

// alone reports whether no other boat has as little of something.
func (b Boat) alone(all []Boat, of func(Boat) float64) bool {
	boats, same := 0, 0
	for _, o := range all {
		if o.NoBoat == "" {
			boats++
			if of(o) <= of(b) {
				same++
			}
		}
	}
	return boats > 1 && same == 1
}
