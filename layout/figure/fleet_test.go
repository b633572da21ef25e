package figure

import (
	"math"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
	"ribwright/layout"
)

func nested(t *testing.T, names ...string) *stow.Stack {
	t.Helper()
	var boats []*stow.Boat
	for _, n := range names {
		f := frametest.Shipped(t, n, nil)
		b, err := stow.NewBoat(f)
		if err != nil {
			t.Fatal(err)
		}
		boats = append(boats, b)
	}
	s, err := stow.Nest(boats, stow.Options{Pad: 5})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestTrueToScale: the profile is as long as the longest boat's length overall and
// the section as wide as its gunwales, by the scales written beside them.
func TestTrueToScale(t *testing.T) {
	s := nested(t, "brook", "lake", "river")
	p := profile(s, measure.Metric)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range p.Strokes[:5] { // the outermost boat's own lines
		b := l.Path.Bounds()
		lo, hi = math.Min(lo, b.Min.X), math.Max(hi, b.Max.X)
	}
	if got := hi - lo; math.Abs(got-4900.0/20) > 0.05 {
		t.Errorf("River is %.2f mm long at 1:20, want 245", got)
	}
	words := ""
	for _, x := range append(p.Texts, section(s, measure.Metric).Texts...) {
		words += x.Words + "\n"
	}
	for _, want := range []string{"Profile, 1:20", "1:4: 1 River rib M", "4900 mm", "1 River", "2 Lake", "3 Brook", "3 in 2: "} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is nowhere in\n%s", want, words)
		}
	}
}

// TestApart: no two lines of lettering lie over each other.
func TestApart(t *testing.T) {
	d := Fleet(nested(t, "brook", "lake", "river"), nil, measure.Metric)
	for i, a := range d.Texts {
		for _, b := range d.Texts[:i] {
			if a.Bounds().Overlaps(b.Bounds()) {
				t.Errorf("%q and %q lie over each other", a.Words, b.Words)
			}
		}
	}
}

// TestFailureIsDrawn: of boats that do not nest the figure shows where, and says which,
// by how much and what would cure it, clear of all other words.
func TestFailureIsDrawn(t *testing.T) {
	s := nested(t, "river", "river")
	if s.Nests {
		t.Fatal("two of one boat nest: this shows nothing")
	}
	r := stow.Report{Stack: s, Cures: make([][]stow.Cure, len(s.Pairs))}
	failed := r.Failures(measure.Metric.Length, measure.Metric.Fine)
	d := Fleet(s, failed, measure.Metric)
	words := ""
	for _, x := range d.Texts {
		words += x.Words + " "
	}
	for _, want := range []string{"2 River in 1 River does not nest: ", "too high", "a smaller boat may"} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is nowhere in %q", want, words)
		}
	}
	for i, a := range d.Texts {
		for _, b := range d.Texts[:i] {
			if a.Bounds().Overlaps(b.Bounds()) {
				t.Errorf("%q and %q lie over each other", a.Words, b.Words)
			}
		}
	}
	// The place that holds the boat up is marked in both views, the section has the ribs
	// where they should lie, both sides.
	rings, ghosts := 0, 0
	for _, k := range d.Strokes {
		if k.Pen == layout.Mark && k.Path.Closed() && k.Path.Bounds().W() < 7 {
			rings++
		}
		if k.Pen == layout.Guide && len(k.Path) > 2 {
			ghosts++
		}
	}
	if rings != 2 || ghosts != 2 {
		t.Errorf("%d marks and %d halves of a rib where it should lie, want 2 and 2", rings, ghosts)
	}
}
