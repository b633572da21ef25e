package trial

import (
	"fmt"

	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// HowTrue tells how far boats come out apart, which errors of hand work do most to the
// boat, and which of them matter.
func HowTrue(r *handwork.Report, b *bend.Report, l report.Letters) []report.Block {
	out := []report.Block{report.Section("How true must you be"),
		report.Paragraph{Words: "Hands make a boat that is a little off the drawing. Nine first boats in ten come out within the first column, nine in ten of a practiced builder's within the second. Port and starboard are taken to be alike."},
		spreads(r, l)}
	out = append(out, worstErrors(r, l), report.Paragraph{Words: whatMatters(r, l)})
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

// worstErrors is a table of what the usual error of each kind does to the boat.
func worstErrors(r *handwork.Report, l report.Letters) report.Table {
	t := report.Titled("Errors, the worst first, and how far each moves the boat, " + l.Unit()).Numbers("Rank").Words("Error").Numbers("Usual")
	balance := ""
	for _, m := range r.Measures() {
		t = t.Numbers(wording.Capital(string(m)))
		if m == handwork.Balance {
			balance = " Balance: the beam when all cross pieces come out."
		}
	}
	for _, e := range r.Ranked() {
		row := []string{fmt.Sprint(e.Rank), named(e, l), usual(e, l)}
		for _, m := range r.Measures() {
			row = append(row, moved(r.Moved(e, m), l))
		}
		t.Row(row...)
	}
	return t.Noted(fmt.Sprintf("Usual: on a first boat, from memory. One builder in three does worse; a practiced builder makes about half of it. Beam: where it moves most.%s -: under %s.", balance, leastTold(l)+" "+l.Unit()))
}

// whatMatters says down to which rank errors matter, and names those past the ranked.
func whatMatters(r *handwork.Report, l report.Letters) string {
	ranked, n := r.Ranked(), 0
	for n < len(ranked) && ranked[n].Matters() {
		n++
	}
	minds := fmt.Sprintf("a fifth of what a builder would mind (%s; of trim %s; our own choice).", l.Length(handwork.Minds), l.Length(handwork.MindsTrim))
	words := fmt.Sprintf("Errors down to rank %d matter. Those below hardly do: alone each moves nine first boats in ten by less than %s Work to the mark there and go on.", n, minds)
	switch n {
	case 0:
		words = "No error matters much: alone each moves nine first boats in ten by less than " + minds
	case len(ranked):
		words = "All of these matter: alone each moves one first boat in ten by more than " + minds
	}
	if rest := r.Rest(); len(rest) > 0 {
		words += " These do less still: " + wording.List(rest, func(e handwork.Error) string { return named(e, l) + " (" + usual(e, l) + ")" }) + "."
	}
	return words
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

// usual letters the usual size of an error on a first boat.
func usual(e handwork.Error, l report.Letters) string {
	v := e.Usual.First
	switch e.Unit {
	case "mm":
		if v < 1 {
			return report.Either(l.Units, fmt.Sprintf("%g mm", v), l.Gauge(v)+" in")
		}
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
func within(mm float64, l report.Letters) string { return told(mm, "under "+leastTold(l), l) }

// moved letters mm of a measure, "-" for less than is told.
func moved(mm float64, l report.Letters) string { return told(mm, "-", l) }

func told(mm float64, less string, l report.Letters) string {
	if mm < report.Either(l.Units, 1.0, 25.4/16) {
		return less
	}
	return l.Whole(mm)
}

// leastTold is the least that is told of.
func leastTold(l report.Letters) string { return report.Either(l.Units, "1", "1/16") }
