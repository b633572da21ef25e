package book

import (
	"fmt"
	"math"
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
	for _, w := range []string{"beside the place of the boat, and spread them", "Tie them a hand's length", "join it to both stems", "keel on three blocks", "two trestles across the keel", "lower them until their ends lie on the shelves", "Now spring the edge-set", "Draw the gunwales down", "over midship's", "Glue the breasthooks in", "stays joined to both stems", "Lash the keel first", "Take the props away", "Lash the stringers", "each cross piece, with the spreaders still in", "take the spreaders out"} {
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

// TestMadeInTheBook: the curve stands in a table from where it begins to the gunwales' end
// and is sawn before anything is marked; nothing is sprung, propped or marked on straight
// stock then. With a part of it made both are told.
func TestMadeInTheBook(t *testing.T) {
	d := shipped(t, "brook")
	d.Gunwale.EdgeSetMade = d.Gunwale.EdgeSetBow
	b := bookOf(t, facts(t, d, measure.Metric))
	steps := stepsOf(b)
	for _, w := range []string{"spring the edge-set", "props", "While the stock is straight"} {
		if strings.Contains(steps, w) {
			t.Errorf("gunwales made to the sheer: %q", w)
		}
	}
	saw, mark := strings.Index(steps, "Set off the heights of the table The sheer to saw"), strings.Index(steps, "Before the stock is bent or sprung, mark")
	if saw < 0 || mark < saw {
		t.Errorf("the curve is sawn at %d, marks are made at %d", saw, mark)
	}
	var rows [][]string
	for _, block := range b.Blocks {
		if table, ok := block.(report.Table); ok && strings.HasPrefix(table.Title, "The sheer to saw") {
			rows = table.Rows
		}
	}
	// 30 mm square to stock that leans by brook's tilt.
	if want := measure.MM(30*math.Cos(float64(d.Gunwale.Tilt)), 1); len(rows) < 8 || rows[len(rows)-1][2] != want {
		t.Errorf("want %s mm in the last row of %q", want, rows)
	}
	d.Gunwale.EdgeSetMade = 10
	steps = stepsOf(bookOf(t, facts(t, d, measure.Metric)))
	for _, w := range []string{"The sheer to saw", "blocks of one height, under their straight middles", "Now spring the edge-set"} {
		if !strings.Contains(steps, w) {
			t.Errorf("a part of it made: no %q", w)
		}
	}
}

// TestTrestles: a bar stands as high over the keel as the two ribs beside it are deep to the keel's
// face, and as much higher as the free middle asks; its legs are clear of the beam over all; what
// is told to hold is what the facts say.
func TestTrestles(t *testing.T) {
	f := facts(t, shipped(t, "lake"), measure.Metric)
	w := &writer{Facts: f}
	for _, h := range w.trestlesAt() {
		deep, n := 0.0, 0.0
		for _, r := range f.Frame.Ribs {
			if r.Name == h.Between[0] || r.Name == h.Between[1] {
				deep, n = deep+r.Section.Depth+r.Thickness/2, n+1
			}
		}
		if want := deep/n + h.Over; math.Abs(w.barOver(h)-want) > 0.5 {
			t.Errorf("a bar %.1f mm over the keel, want %.1f", w.barOver(h), want)
		}
		for _, r := range f.Frame.Ribs {
			if math.Abs(r.Station-h.At) < float64(f.Frame.Design.Ribs.Width)/2+20 {
				t.Errorf("a trestle at %.0f mm stands where rib %s comes", h.At, r.Name)
			}
		}
	}
	if legs := w.legsApart(); legs < f.Frame.Hull.Beam+100 {
		t.Errorf("legs %.0f mm apart", legs)
	}
	said := steps(bookOf(t, f))["Setting up"]
	inOrder(t, said, fmt.Sprintf("stands %.0f mm over the keel", w.barOver(w.trestlesAt()[0])), fmt.Sprintf("by up to %.0f kg", w.pull()/measure.Gravity), "Nothing holds them amidships")
}
