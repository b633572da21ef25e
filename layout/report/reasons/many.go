package reasons

import (
	"fmt"
	"strings"

	"ribwright/geometry/sizing"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Population tells how a family came out that was tried on many.
func Population(family string, p sizing.Population) []report.Block {
	out := []report.Block{report.Say("%s tried on %d: %d pass every check, loft, float and bend; %d do not.", family, p.Tried, p.Passed, p.Tried-p.Passed)}
	t := report.Titled("").Names("Fails").Numbers("Times", "Share").Words("The worst of them")
	for _, c := range p.Counts() {
		t.Row(c.Name, fmt.Sprint(c.Times), fmt.Sprintf("%.1f %%", 100*float64(c.Times)/float64(p.Tried)),
			fmt.Sprintf("number %d, %s: %s", c.Worst.Number, c.Worst.Brief.Who(), c.Text))
	}
	return append(append(out, t.IfAny()...), report.Paragraph{Words: "Bodies as common as the survey has them, inside its 5th to 95th percentile; 0 to 40 kg of gear, all waters, skills and postures, sticks of 2.4 to 6 m."})
}

// mostTold is how many rows of a class a page tells of by name; the summary has all.
const mostTold = 20

// Class tells how many rows of a class came out how, which boats fail a check, and why
// rows have no boat.
func Class(all []sizing.Outcome) []report.Block {
	failing := report.Titled("Boats that fail a check of their family").Numbers("Line").Words("Builder", "Checks")
	without := report.Titled("Rows without files").Numbers("Line").Words("Builder", "Why")
	for _, o := range all {
		line := fmt.Sprint(o.Line)
		if len(o.ChecksFailed) > 0 {
			failing.Row(line, o.Name, strings.Join(o.ChecksFailed, ", "))
		}
		if o.Why != "" {
			without.Row(line, o.Name, o.Why)
		}
	}
	out := []report.Block{report.Paragraph{Words: ClassCount(all) + "."}}
	for _, t := range []report.Table{failing, without} {
		if n := len(t.Rows); n > mostTold {
			t.Rows, t.Note = t.Rows[:mostTold], fmt.Sprintf("and %d more; the summary has all", n-mostTold)
		}
		out = append(out, t.IfAny()...)
	}
	return out
}

// ClassCount counts how the rows of a class came out, in a line.
func ClassCount(all []sizing.Outcome) string {
	n := sizing.Counts(all)
	return fmt.Sprintf("%s: %d made, %d kept from before, %d failed, %d not done", wording.Counted(len(all), "builder"),
		n[sizing.Made], n[sizing.Kept], n[sizing.Failed], n[sizing.NotDone])
}
