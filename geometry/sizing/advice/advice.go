// Package advice ranks the boats that would do for somebody, with what speaks for and
// against each, and says which to begin with.
package advice

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/finding"
)

// Boat is one that would do, sized and tried.
type Boat struct {
	Family string
	For    string
	First  bool // a first builder may begin with it: for one of the people alone
	Why    string

	Length, Beam float64 // mm
	Mass         float64 // kg
	Hours        float64
	Cost         float64 // in the currency of the prices
	Stick        float64 // mm, the longest one before scarfs
	Scarfs       int     // in each gunwale
	Lever        float64 // mm, the greatest righting one
	People       int

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
// are before such as cannot, for a beginner those to begin with before others, and then by
// hours, the fewest first. It says of each what speaks for it and against it.
func Rank(all []Boat, beginner bool) []Boat {
	out := slices.Clone(all)
	slices.SortStableFunc(out, func(a, b Boat) int {
		return cmp.Or(cmp.Compare(a.grade(beginner), b.grade(beginner)), cmp.Compare(a.Hours, b.Hours))
	})
	for i := range out {
		out[i].Why = out[i].why(all, beginner)
	}
	return out
}

// grade is lower for what is advised sooner.
func (b Boat) grade(beginner bool) int {
	switch {
	case b.NoBoat != "":
		return 3
	case len(b.Missed) > 0:
		return 2
	case beginner && !b.First:
		return 1
	}
	return 0
}

// why says what a boat has the least or most of among several, what it asks for, and what
// can go wrong.
func (b Boat) why(all []Boat, beginner bool) string {
	if b.NoBoat != "" {
		return "no boat: " + b.NoBoat
	}
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if beginner && b.First {
		say("to begin with: the smallest boat teaches the same work, and a rib that breaks costs least (common practice)")
	}
	for _, m := range []struct {
		words string
		of    func(Boat) float64
	}{
		{"fewest hours", func(b Boat) float64 { return b.Hours }}, {"cheapest", func(b Boat) float64 { return b.Cost }},
		{"lightest to carry", func(b Boat) float64 { return b.Mass }}, {"shortest on a car", func(b Boat) float64 { return b.Length }},
		{"fewest hard bends", func(b Boat) float64 { return float64(len(b.Hard)) }},
	} {
		if b.alone(all, m.of) {
			say("%s", m.words)
		}
	}
	if b.Scarfs > 0 {
		say("each gunwale wants %d scarfs with the sticks at hand", b.Scarfs)
	}
	if len(b.Hard) > 0 {
		say("hard bends, spare ribs first: %s", strings.Join(b.Hard, ", "))
	}
	for _, f := range b.Missed {
		say("%s", f.String())
	}
	if len(b.Dangers) > 0 {
		say("what can go wrong: %s", strings.Join(b.Dangers, "; "))
	}
	return strings.Join(out, "; ")
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
