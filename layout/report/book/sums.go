package book

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/geometry/boat/kit"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// scopes are the sums that the book has: the one with outfits where there are some.
func (f Facts) scopes() []kit.Scope {
	if len(f.Outfits.Kits()) == 0 {
		return []kit.Scope{kit.FrameAndSkin, kit.ReadyForWater}
	}
	return kit.Scopes()
}

// Money says what the materials come to, scope by scope.
func (f Facts) Money() string {
	return wording.List(f.scopes(), func(s kit.Scope) string { return fmt.Sprintf("%s %.0f", s, f.Cost.Within(s)) })
}

// Time says how long the work takes, scope by scope.
func (f Facts) Time() string {
	return wording.List(f.scopes(), func(s kit.Scope) string { return fmt.Sprintf("%s %.0f", s, hours.Within(f.Work, s, f.Skill)) })
}

// sums is a table of a sum for each scope, with what it may be off by.
func (w *writer) sums(title, head string, sum func(kit.Scope) float64, off float64) report.Table {
	t := report.Titled(title).Words("For").Numbers(head, "Give or take")
	for _, s := range w.scopes() {
		t.Row(wording.Capital(s.String()), fmt.Sprintf("%.0f", sum(s)), fmt.Sprintf("%.0f", off*sum(s)))
	}
	t.Note = "Each line has the ones before in it. Ready for the water adds all that is fitted to the covered frame: the sticks marked P of the cut list and what is bought for them. The boards that the frame would take alone count as the frame's, what is bought beyond them as the rest's."
	return t
}

// guessed says what of the boat's weight is still an estimate.
func (w *writer) guessed() report.Paragraph {
	var things []string
	for _, k := range w.Afloat.Fittings {
		for _, t := range k.Things {
			if t.Mass > 0 {
				name, _, _ := strings.Cut(t.Name, ",")
				if !slices.Contains(things, name) {
					things = append(things, name)
				}
			}
		}
	}
	words := fmt.Sprintf("What of this is still an estimate: the wood is weighed piece by piece as drawn, but at its usual density, from which a board may be off by a tenth and more. Cord, pegs, glue and oil are taken as %s of the wood, hems and seams as %s of the cloth", report.Percent(weight.Lashing), report.Percent(weight.Lap))
	if len(things) > 0 {
		words += "; by usual masses count " + wording.Joined(things, ", ", func(s string) string { return s })
	}
	return report.Say("%s. Nothing else is guessed at, and nothing left out: weigh the finished boat.", words)
}
