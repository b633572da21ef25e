package sizing

import (
	"io"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/finding"
	"ribwright/geometry/sizing/formula"
	"ribwright/geometry/water/float"
)

// Boat is a sized boat: a design that lofts, with what is known of it.
type Boat struct {
	Design   *design.Design
	Frame    *frame.Frame
	Found    Found
	Standing float.Standing
	Checks   []formula.Check
	Case     *Case // its Run holds every value
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
			out[key] += ": " + s.Reason
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
	return design.EncodeNoted(w, b.Design, head, b.Notes())
}
