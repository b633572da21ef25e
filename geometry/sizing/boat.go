package sizing

import (
	"io"
	"maps"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/trial/cargo"
	"ribwright/geometry/water/float"
)

// Boat is a sized boat: a design that lofts, with what is known of it.
type Boat struct {
	Design   *design.Design
	Frame    *frame.Frame
	Found    Found
	Standing float.Standing
	Cargo    *cargo.Report // when it moves; nil without live cargo
	Checks   []formula.Check
	Case     *Case // its Run holds every value

	beside int // of the checks, that were asked beside the family's: the last ones
}

// Rules is how many of the checks are the family's own.
func (b *Boat) Rules() int { return len(b.Checks) - b.beside }

// Ask adds a check that was asked beside the family's.
func (b *Boat) Ask(v formula.Check) {
	b.Checks = append(b.Checks, v)
	b.beside++
}

// Failures lists the checks that do not hold.
func (b *Boat) Failures() finding.List {
	var out finding.List
	for _, v := range b.Checks {
		if !v.Passed {
			out = append(out, v.Finding())
		}
	}
	return out
}

// SeatPrice is how much of the greatest righting lever a seat costs that is so much
// higher, mm: the people's share of all weight is raised by it, at the heel where the
// lever is greatest. A lower seat gives as much.
func (b *Boat) SeatPrice(higher float64) float64 {
	people := 0.0
	for _, p := range b.Design.Crew {
		people += p.Mass
	}
	return higher * people / b.Found["all_up"] * math.Sin(b.Standing.MostAt)
}

// SeatWish is by how much the seat stands over the lowest in comfort because it was set
// by hand, mm; 0 where it was not, or the family does not say what is comfortable.
func (b *Boat) SeatWish() float64 {
	run := b.Case.run
	if !run.IsFixed("seat_height") || !b.Case.Family.Program.HasFormula("seat_low") {
		return 0
	}
	return run.Number("seat_height") - run.Number("seat_low")
}

// Why is a value's reason, and what won where it is the least or greatest of several.
func (b *Boat) Why(name string) string {
	run := b.Case.run
	reason := run.Reason(name)
	if run.IsFixed(name) {
		return "set by hand or found by the search; the formula's reason was: " + reason
	}
	if held := run.HeldBy(name); held != "" {
		return "held by " + held + "; " + reason
	}
	return reason
}

// Notes says for every key of the design where its value came from.
func (b *Boat) Notes() map[string]string {
	out := map[string]string{}
	run := b.Case.run
	for key, name := range b.Case.Family.Sources(run) {
		s, ok := run.Origin(name)
		if !ok {
			continue
		}
		var words []string
		if s.Name != name {
			words = append(words, s.Name)
		}
		if s.Formula != "" {
			words = append(words, s.Formula)
		}
		out[key] = strings.Join(words, " = ") + " (" + s.Where + ")"
		if s.Reason != "" {
			out[key] += ": " + b.Case.Brief.Units.Words(s.Reason)
		}
	}
	return out
}

// Write writes the design file with a note before each key.
func (b *Boat) Write(w io.Writer) error {
	head := []string{
		"Sized by the family " + b.Case.Family.Name + " for " + b.Case.Brief.Who() + ".",
		"Each note gives the formula, where it stands, and its reason. Change what you like and loft it; or change the formulas and size again.",
		"",
	}
	if set := slices.Sorted(maps.Keys(b.Case.hand)); len(set) > 0 {
		head = slices.Insert(head, 1, "Set by hand or found by the search: "+strings.Join(set, ", ")+".")
	}
	return design.EncodeNoted(w, b.Design, head, b.Notes())
}
