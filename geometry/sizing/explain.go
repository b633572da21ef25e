package sizing

import (
	"fmt"
	"io"
	"strings"
)

// Explain writes the whole derivation of one value.
// Errors: a name that is not known, with the nearest.
func (b *Boat) Explain(w io.Writer, name string) error {
	steps, err := b.Case.run.Explain(name)
	if err != nil {
		return err
	}
	var out strings.Builder
	for _, s := range steps {
		head := strings.Repeat("  ", min(s.Depth, 12)) + s.Name + " = " + s.Value
		switch {
		case s.Again:
			fmt.Fprintf(&out, "%s (above)\n", head)
			continue
		case s.Formula != "":
			head += " = " + s.Formula
		}
		head += "  [" + s.Where + "]"
		if s.Reason != "" {
			head += " " + s.Reason
		}
		out.WriteString(head + "\n")
	}
	_, err = io.WriteString(w, out.String())
	return err
}
