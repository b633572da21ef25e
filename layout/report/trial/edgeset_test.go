package trial

import (
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/edgeset"
	"ribwright/layout/report"
)

// TestEdgeSetTold: what is let go stands in the table with its sign, in both systems; the
// moment names the ends that have a set; without one nothing is told.
func TestEdgeSetTold(t *testing.T) {
	if out := EdgeSet(&bend.Report{}, report.Letters{}); out != nil {
		t.Errorf("no edge-set tells %v", out)
	}
	least := &edgeset.Rest{Sheer: edgeset.Pair{0.3, -12.4}, Thrust: 141, Pull: 62}
	e := &edgeset.Report{Moment: edgeset.Pair{0, 55300}, Loose: &edgeset.Rest{Sheer: edgeset.Pair{-1, -47.6}}, Free: least, Usual: least, Fast: least}
	for units, want := range map[measure.System][]string{measure.Metric: {"-48", "-1", "0", "0", "0"}, measure.Imperial: {"-1 7/8", "-1/16", "0", "0", "0"}} {
		out := EdgeSet(&bend.Report{EdgeSet: e}, report.Letters{Units: units})
		for i, cell := range out[2].(report.Table).Rows[0][1:] {
			if cell != want[i] {
				t.Errorf("column %d: %q, want %q", i, cell, want[i])
			}
		}
		words := out[1].(report.Paragraph).Words
		for _, w := range []string{"55 N m at the bow on", "up to 150 N along", "up to 70 N between"} {
			if !strings.Contains(words, w) {
				t.Errorf("not said: %q in %q", w, words)
			}
		}
	}
	for want, m := range map[string]edgeset.Pair{"27 N m at either end": {27010, 26990}, "60 N m at the stern": {60000, 0}, "79 N m at the bow and 55 N m at the stern": {55000, 79000}} {
		if got := moments(m); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
