package stow

import (
	"fmt"
	"math"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/finding"
)

// TestFailures words by hand what holds a boat up and what would cure it: at a side, on
// a stem, on a thwart that was left in, on a boat farther down.
func TestFailures(t *testing.T) {
	a, b := &Boat{Title: "Alder"}, &Boat{Title: "Birch"}
	at := func(room float64, lower, upper Part) Contact {
		return Contact{Room: room, At: geometry.Point3{X: 120}, Lower: lower, Upper: upper}
	}
	rail, cloth, keel := Part{Gunwale, "gunwale"}, Part{Cloth, "cloth"}, Part{Keel, "keel"}
	held := func(short float64, c Contact) *Pair {
		return &Pair{Lower: a, Upper: b, Place: Place{Z: 90}, Seat: 60, Short: short, Bound: c}
	}
	far := held(40, at(0, Part{Rib, "rib F1"}, keel))
	far.Far = a
	r := &Report{Stack: &Stack{Boats: []*Boat{a, b, b, b, b, b}, Pairs: []*Pair{
		{Nests: true}, held(4.5, at(-1.5, rail, cloth)), held(30, at(2, Part{Stem, "bow stem"}, cloth)), held(30, at(2, Part{CrossPiece, "Yoke"}, cloth)), far,
	}}, Cures: [][]Cure{nil, {{a, false, Beam, 9}, {b, true, Flare, -2 * math.Pi / 180}}, nil, nil, nil}}
	got := r.Failures(func(mm float64) string { return fmt.Sprintf("%.0f mm", mm) }, func(mm float64) string { return fmt.Sprintf("%.1f mm", mm) })
	want := []struct{ about, text, cure string }{
		{"3 Birch in 2 Birch", "lacks 4.5 mm a side at station 120 mm, cloth against gunwale (1.5 mm of it overlap): it lies 30 mm over its pads", "Alder with 9 mm more beam, or Birch with 2 deg less flare all along"},
		{"4 Birch in 3 Birch", "rides 30 mm up at station 120 mm, cloth against bow stem: it lies 30 mm over its pads. No change of one beam, flare, depth or length alone cures it; a smaller boat may", ""},
		{"5 Birch in 4 Birch", "rides 30 mm up at station 120 mm, cloth against Yoke: it lies 30 mm over its pads", "take out Yoke"},
		{"6 Birch in 5 Birch", "rests on Alder, farther down: its keel on the rib F1, 40 mm higher than its seat", ""},
	}
	if len(got) != len(want) || got.Passes() {
		t.Fatalf("%+v", got)
	}
	for i, w := range want {
		if f := got[i]; f.About != w.about || f.Text != w.text || f.Cure != w.cure || f.Verdict != finding.Missed || f.Standing == "" {
			t.Errorf("%+v\nwant %+v", f, w)
		}
	}
}
