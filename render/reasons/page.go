// Package reasons writes why a boat was sized as it was, to be read on a terminal.
package reasons

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ribwright/geometry/body"
	"ribwright/geometry/sizing"
	"ribwright/geometry/sizing/formula"
)

// Page writes the reasons on one page: what was decided and why, what the boat
// does with its load, and what to be careful about.
func Page(w io.Writer, b *sizing.Boat) error {
	var out strings.Builder
	run := b.Case.Run()
	fmt.Fprintf(&out, "%s, for %s\n", b.Design.Title, b.Case.Brief.Who())
	fmt.Fprintf(&out, "Family %s; each line is a formula of its file.\n\n", b.Case.Family.Name)
	for _, name := range b.Case.Family.Program.Told() {
		wrap(&out, fmt.Sprintf("%-15s %9s", name, run.Shown(name)), reasonOf(run, name))
	}
	out.WriteString("\nAfloat with this load\n")
	for _, n := range []string{"all_up", "boat_weight", "draft", "freeboard", "gm", "trim", "effort"} {
		doc := run.Reason(n)
		if n == "effort" {
			doc = fmt.Sprintf("at %.1f km/h; an estimate, only to compare designs", b.Case.Brief.Speed*3.6/1000)
		}
		wrap(&out, fmt.Sprintf("%-15s %9s", n, run.Shown(n)), doc)
	}
	checks(&out, b)
	bodies(&out, b)
	_, err := io.WriteString(w, out.String())
	return err
}

// reasonOf is a value's reason, and what won where it is the least or greatest of
// several.
func reasonOf(run *formula.Run, name string) string {
	reason := run.Reason(name)
	if run.IsFixed(name) {
		return "set by hand or found by the search; the formula's reason was: " + reason
	}
	if held := run.HeldBy(name); held != "" {
		return "held by " + held + "; " + reason
	}
	return reason
}

// checks lists what does not hold, or says that all does.
func checks(out *strings.Builder, b *sizing.Boat) {
	failed := b.Failures()
	if len(failed) == 0 {
		fmt.Fprintf(out, "\nAll %d checks of the family hold.\n", len(b.Checks))
		return
	}
	fmt.Fprintf(out, "\n%d of the family's %d checks do not hold:\n", len(failed), len(b.Checks))
	for _, v := range failed {
		wrap(out, "  !", v.String())
	}
}

// bodies says what is known of the crew only by estimate.
func bodies(out *strings.Builder, b *sizing.Boat) {
	fmt.Fprintf(out, "\nBodies: %s.\n", body.Source)
	for _, p := range b.Case.Brief.Crew {
		for _, e := range p.Estimates() {
			if e.Name == "span" && e.Spread > 0 {
				wrap(out, "  -", fmt.Sprintf("arm span estimated at %.0f mm, give or take %.0f mm for two people in three; measure it with a tape and add \"span %.0f cm\"", e.Value, e.Spread, math.Round(e.Value/10)))
			}
		}
		for _, o := range p.Outside() {
			wrap(out, "  -", o)
		}
	}
}

// pageWide is the width of the page in letters.
const pageWide = 96

// wrap writes a head and a text beside it, wrapped.
func wrap(out *strings.Builder, head, text string) {
	line := head + " "
	indent := strings.Repeat(" ", len(line)+1)
	for _, word := range strings.Fields(text) {
		if len(line)+1+len(word) > pageWide {
			out.WriteString(strings.TrimRight(line, " ") + "\n")
			line = indent + word
			continue
		}
		line += " " + word
	}
	out.WriteString(strings.TrimRight(line, " ") + "\n")
}
