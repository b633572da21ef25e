package book

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cutlist"
)

// TestBetweenTheEnds by hand: a gunwale of width w that is cut aslant by an angle is w over the
// cosine of it wide across the boat; between two whose middles stand as far apart as the stem
// is thick, the rest of that thickness stays open.
func TestBetweenTheEnds(t *testing.T) {
	f := own(t, shipped(t, "brook"))
	if do := stepsOf(bookOf(t, f)); strings.Contains(do, "round a block") || !strings.Contains(do, "inner edges touching") {
		t.Error("a block is put where there is no room for one")
	}
	f.Frame.Bow.Thickness, f.Frame.Stern.Thickness = 34, 34
	room := 34 - f.Frame.Gunwale.Width/math.Cos(f.Frame.Gunwale.ForeCut)
	want := fmt.Sprintf("round a block between their inner faces (%.0f mm thick)", room)
	b := bookOf(t, f)
	if do := stepsOf(b); strings.Count(do, want) != 2 {
		t.Errorf("no step says %q twice", want)
	}
	if helpsOf(b)["blocks"] != fmt.Sprintf("%.0f mm thick", room) {
		t.Error("the block is not among the helps")
	}
}

// TestFullEnds: the step leaves a cross piece as much longer as its blank in the cut list is.
func TestFullEnds(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	for _, s := range f.Plan.Sticks {
		if s.Family != cutlist.Thwart {
			continue
		}
		more := (s.Length - f.Frame.Thwarts[0].Length) / 2
		if want := fmt.Sprintf("%.0f mm longer at each end", more); !strings.Contains(stepsOf(sharedBook(t, f)), want) {
			t.Errorf("no step says %q", want)
		}
	}
}

// TestTackedInWholeWood: tacks stand in the wood over the mortises, whose depth is measured
// from the underside, and not in the heads of ribs.
func TestTackedInWholeWood(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	d := f.Frame.Design
	over := float64(d.Gunwale.Height - d.Ribs.MortiseDepth)
	_, words, _ := strings.Cut(stepsOf(sharedBook(t, f)), "Tack amidships on one side, ")
	down := 0.0
	if _, err := fmt.Sscanf(words, "%f mm under the gunwale's upper edge", &down); err != nil || down < 5 || down > over-5 {
		t.Errorf("tacks %.0f mm down, %.40q; the mortises begin at %.0f mm", down, words, over)
	}
}

// TestClothMarks: every rib that the cloth is tacked at has its marks, with its place along the
// middle thread, which lies on the keel.
func TestClothMarks(t *testing.T) {
	f := facts(t, shipped(t, "river"), measure.Metric)
	rows := tables(sharedBook(t, f))["Marks on the cloth, mm"].Rows
	if len(rows) == 0 {
		t.Fatal("no marks")
	}
	for i, r := range f.Frame.Ribs {
		found := false
		for _, row := range rows {
			for _, name := range strings.Split(row[0], ", ") {
				found = found || name == r.Name && row[1] == fmt.Sprintf("%.0f", math.Abs(f.Frame.Keel.RibMarks[i]))
			}
		}
		if !found {
			t.Errorf("rib %s has no mark %.0f mm along the thread", r.Name, math.Abs(f.Frame.Keel.RibMarks[i]))
		}
	}
}

// TestScrewsAreShallow by hand: a wood screw No. 6 is 3.51 mm thick and wants six diameters of
// wood, 21 mm (NDS, as geometry/wood/fasten has it). River's screws of 25 mm go through 10 mm of outwale and 0.7 mm of
// cloth, sunk by 1 mm: 15 mm are in the gunwale; those of 12 mm through 5 mm of keel strip, 7 mm.
func TestScrewsAreShallow(t *testing.T) {
	do := stepsOf(bookOf(t, facts(t, shipped(t, "river"), measure.Metric)))
	for _, into := range []string{"15 mm", "7 mm"} {
		if want := "They go " + into + " into the wood, where rules for buildings want 21 mm"; !strings.Contains(do, want) {
			t.Errorf("no step says %q", want)
		}
	}
}
