package trial

import (
	"fmt"
	"math"

	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// HowTrue tells what errors of hand work do to the boat, which of them matter, and how
// far boats come out apart.
func HowTrue(r *handwork.Report, b *bend.Report, l report.Letters) []report.Block {
	out := []report.Block{report.Section("How true must you be"),
		report.Paragraph{Words: "Hands make a boat that is a little off the drawing. Nine first boats in ten come out within the first column, nine in ten of a practiced builder's within the second. Port and starboard are taken to be alike."},
		spreads(r, l)}
	ranked := r.Ranked()
	if len(ranked) == 0 {
		return append(out, report.Paragraph{Words: "No error of hand work matters to this boat."})
	}
	out = append(out, errorsThatMatter(r, ranked, l))
	if rest := r.Rest(); len(rest) > 0 {
		out = append(out, report.Paragraph{Words: "What hardly matters: " + wording.List(rest, func(e handwork.Error) string { return named(e, l) + " (" + usual(e, e.Usual.First, l) + ")" }) + ". Work to the mark and go on."})
	}
	return append(out, report.Say("A point of springback opens the free rib %s by %s. Bend one rib of each board first and measure it free: its board is then known to less than half of the error above. A rib that is measured and relaxed to its width before it is fitted carries no more of it than you misread.",
		b.Ribs[b.TestRib()].Name, l.Point(b.Ribs[b.TestRib()].Point)))
}

func spreads(r *handwork.Report, l report.Letters) report.Table {
	t := report.Titled("Nine boats in ten come within, "+l.Unit()+", either way").Words("Measure").Numbers("First boat", "Practiced builder")
	for _, o := range r.Outcomes {
		t.Row(o.Name, within(o.Spread.First, l), within(o.Spread.Practiced, l))
	}
	return t
}

func errorsThatMatter(r *handwork.Report, ranked []handwork.Error, l report.Letters) report.Table {
	t := report.Titled("Errors that matter, the worst first").Words("Error").Numbers("Usual, first boat", "Practiced").Words("Moves most").Numbers("By, "+l.Unit(), "Share, %").
		Noted(fmt.Sprintf("Usual: one builder in three does worse; these figures are from memory. By: nine first boats in ten are moved within so much by this error alone. Share: of all that makes this measure differ from boat to boat, by squares. Worst: measured by what a builder would mind, %s of any measure and %s of trim, our own choice.",
			l.Length(handwork.Minds), l.Length(handwork.MindsTrim)))
	for _, e := range ranked {
		t.Row(named(e, l), usual(e, e.Usual.First, l), usual(e, e.Usual.Practiced, l), r.Outcomes[e.Hits].Name,
			within(e.Moves[e.Hits].First, l), fmt.Sprintf("%.0f", 100*e.Share))
	}
	return t
}

// named says which error it is.
func named(e handwork.Error, l report.Letters) string {
	switch {
	case e.Placed && e.From == 0:
		return e.Name + " at midship"
	case e.Placed:
		return e.Name + " " + l.Length(e.From) + " from midship"
	}
	return e.Name
}

// usual letters the size of an error.
func usual(e handwork.Error, v float64, l report.Letters) string {
	switch e.Unit {
	case "mm":
		return report.Either(l.Units, fmt.Sprintf("%g mm", v), fmt.Sprintf("%.2f in", v/25.4))
	case "points":
		if v == 1 {
			return "1 point"
		}
		return fmt.Sprintf("%g points", v)
	}
	return fmt.Sprintf("%g %%", v)
}

// within letters mm of spread: never finer than a millimeter, or a sixteenth.
func within(mm float64, l report.Letters) string {
	if least := report.Either(l.Units, 1.0, 25.4/16); mm < least {
		return "under " + report.Either(l.Units, "1", "1/16")
	}
	return l.Whole(math.Abs(mm))
}
