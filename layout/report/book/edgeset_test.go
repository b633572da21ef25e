package book

import (
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// stepsOf gathers the order of work.
func stepsOf(b report.Report) string {
	var out []string
	for _, k := range b.Blocks {
		if l, ok := k.(report.List); ok {
			out = append(out, l.Items...)
		}
	}
	return strings.Join(out, "\n")
}

// TestOrderOfEdgeSet: keel and stems are joined before the gunwales are spread, the set is
// sprung after, and props go when the keel is lashed and before the stringers are; a boat
// without a set is told nothing of it.
func TestOrderOfEdgeSet(t *testing.T) {
	d := shipped(t, "brook")
	steps := stepsOf(bookOf(t, facts(t, d, measure.Metric)))
	var at []int
	for _, w := range []string{"beside the place of the boat, and spread them", "Tie them a hand's length", "join it to both stems", "keel on blocks", "two trestles across the keel", "lower them until their ends lie on the shelves", "Now spring the edge-set", "Draw the gunwales down", "over midship's", "Glue the breasthooks in", "stays joined to both stems", "Lash the keel first", "Take the props and the tie amidships away", "Lash the stringers", "each cross piece, with the spreaders still in", "take the spreaders out"} {
		at = append(at, strings.Index(steps, w))
	}
	if at[0] < 0 || !slices.IsSorted(at) {
		t.Errorf("the steps stand at %v", at)
	}
	d.Gunwale.EdgeSetBow, d.Gunwale.EdgeSetAft = 0, 0
	b := bookOf(t, facts(t, d, measure.Metric))
	for _, w := range []string{"edge-set", "props"} {
		if strings.Contains(stepsOf(b), w) {
			t.Errorf("a boat without edge-set is told of %q", w)
		}
	}
}
