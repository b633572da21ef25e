package sizing

import (
	"io"
	"strings"

	"ribwright/geometry/design"
)

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
