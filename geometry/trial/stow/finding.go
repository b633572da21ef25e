package stow

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/finding"
)

// Name numbers a boat of the stack, for two may share a title.
func (s *Stack) Name(i int) string { return fmt.Sprintf("%d %s", i+1, s.Boats[i].Title) }

// Failures tells of every boat that does not stand in the one before it: what holds it
// up, and what would cure it. A length is lettered by long, a small room by fine.
func (r *Report) Failures(long, fine func(mm float64) string) finding.List {
	var out finding.List
	for i, p := range r.Stack.Pairs {
		if p.Nests {
			continue
		}
		f := finding.Finding{About: r.Stack.Name(i+1) + " in " + r.Stack.Name(i), Text: p.held(long, fine), Standing: finding.Arithmetic, Verdict: finding.Missed}
		if p.Bound.Lower.Kind == CrossPiece {
			f.Cure = "take out " + p.Bound.Lower.Name
		} else {
			var cures []string
			for _, c := range r.Cures[i] {
				cures = append(cures, c.words(long))
			}
			f.Cure = strings.Join(cures, ", or ")
		}
		if f.Cure == "" && p.Far == nil {
			f.Text += ". No change of one beam, flare, depth or length alone cures it; a smaller boat may"
		}
		out = append(out, f)
	}
	return out
}

// held says what holds the upper boat up.
func (p *Pair) held(long, fine func(mm float64) string) string {
	b := p.Bound
	if p.Far != nil {
		return fmt.Sprintf("rests on %s, farther down: its %s on the %s, %s higher than its seat", p.Far.Title, b.Upper.Name, b.Lower.Name, long(p.Short))
	}
	what := fmt.Sprintf("lacks %s a side", fine(p.Short))
	if k := b.Lower.Kind; k == Stem || k == Breasthook || k == CrossPiece || k == Gunwale && b.Upper.Kind == Keel {
		what = "rides " + long(p.Short) + " up"
	}
	overlap := ""
	if b.Room < 0 {
		overlap = fmt.Sprintf(" (%s of it overlap)", fine(-b.Room))
	}
	return fmt.Sprintf("%s at station %s, %s against %s%s: it lies %s over its pads", what, long(b.At.X), b.Upper.Name, b.Lower.Name, overlap, long(p.Lift()))
}

// words say the change.
func (c Cure) words(long func(mm float64) string) string {
	by, word := long(math.Abs(c.By)), "more"
	if c.By < 0 {
		word = "less"
	}
	if c.Measure == Flare {
		return fmt.Sprintf("%s with %.2f deg %s flare all along", c.Boat.Title, math.Abs(c.By)*180/math.Pi, word)
	}
	return fmt.Sprintf("%s with %s %s %s", c.Boat.Title, by, word, c.Measure)
}
