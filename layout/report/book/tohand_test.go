package book

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cutlist"
)

// TestAskedOfTheYard: the line of a wood that is bought has its boards, how they lie and how dry
// they are wanted; a board that the builder has is asked of nobody.
func TestAskedOfTheYard(t *testing.T) {
	f := own(t, shipped(t, "brook"))
	how := func(wood string) string {
		return rowOf(t, tables(bookOf(t, f))["What to buy"], wood)[3]
	}
	for _, want := range []string{"1 of 4270 x 150 x 25.0 mm", "quarter-sawn", "air-dried;"} {
		if said := how("white ash"); !strings.Contains(said, want) {
			t.Errorf("%q is not in %q", want, said)
		}
	}
	for i := range f.Plan.Woods {
		for k := range f.Plan.Woods[i].Boards {
			b := &f.Plan.Woods[i].Boards[k].Board
			b.Priced, b.Price = true, 0
		}
	}
	if said := how("white ash"); strings.Contains(said, "4270") {
		t.Errorf("the builder's own boards are asked for: %q", said)
	}
}

// TestSpareOfRips by hand: what is told as spare of a rip, its pieces with a saw cut after each and
// both checked ends make the board's length, to the millimeter told.
func TestSpareOfRips(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	w := &writer{Facts: f}
	b, rips := f.Plan.Woods[0].Boards[0].Board, 0
	for _, v := range f.Plan.Woods {
		for _, s := range v.Boards {
			for _, r := range s.Rips {
				if len(r.Rest) > 0 || len(r.Layers) != 1 {
					continue
				}
				rips++
				sum, spare := 2*25.0, 0.0
				for _, p := range r.Layers[0] {
					sum += p.Length + f.Plan.Kerf
				}
				if _, err := fmt.Sscan(w.spare(r, s.Board.Clear()), &spare); err != nil || math.Abs(sum+spare-s.Board.Length) > 1 {
					t.Errorf("%.1f mm taken, %.0f to spare of %.0f", sum, spare, s.Board.Length)
				}
			}
		}
	}
	if rips == 0 {
		t.Error("no rip")
	}
	long := cutlist.RipCut{Layers: [][]cutlist.Piece{{{Length: b.Length}}}}
	if got := w.spare(long, b.Clear()); got != "0" {
		t.Errorf("a rip that is short has %s to spare", got)
	}
}

// TestNarrowerBoards: a plan may be laid on narrower boards, but none narrower than the widest
// stick of that wood: brook's breasthooks and knees. Of the builder's own boards nothing is said.
func TestNarrowerBoards(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	w := &writer{Facts: f}
	inOrder(t, w.shortOf(), "or a piece splits", "narrower boards, as long, as thick and sawn alike", "its width and 4.0 mm more", "95.0 mm of western redcedar and 137.0 mm of white ash")
	for i := range f.Plan.Woods {
		for k := range f.Plan.Woods[i].Boards {
			f.Plan.Woods[i].Boards[k].Board.Asked = false
		}
	}
	if said := w.shortOf(); strings.Contains(said, "narrower") {
		t.Error(said)
	}
}

// TestOnTheBench: bolts' holes are bored before the frame stands; pegs' places are told where they
// are marked, nearer to the end by the slant of the cut over the gunwale's width.
func TestOnTheBench(t *testing.T) {
	f := own(t, shipped(t, "river"))
	g := &f.Frame.Gunwale
	g.AftCut *= 1.5 // the ends of a shipped boat hardly differ
	b := bookOf(t, f)
	inOrder(t, steps(b)["Gunwales"], "Bore each end across", "Bore the holes of the cross pieces' bolts", "6.0 mm", "mm across and 5 mm deep")
	said := told(b)
	for i, cut := range []float64{g.AftCut, g.ForeCut} { // the stern's differ from the bow's
		h, nearer := f.Bend.Joints.Hooks[i], g.Width*math.Tan(cut)
		want := fmt.Sprintf("On the outer face, where you mark and bore, that is %.0f, %.0f and %.0f mm from the end, for the end is cut aslant; %.0f mm deep", h.FromEnd[0]-nearer, h.FromEnd[1]-nearer, h.FromEnd[2]-nearer, h.Fastener.Length)
		if !strings.Contains(said, want) {
			t.Errorf("nothing says %q", want)
		}
	}
	if !strings.Contains(said, "Set no tack within 10 mm of a bolt") {
		t.Error("a tack may meet a bolt")
	}
}

// TestLoopsCounted: the loops that are tied before the skin are those of the works, and their
// webbing is to hand then.
func TestLoopsCounted(t *testing.T) {
	f := facts(t, shipped(t, "brook"), measure.Metric)
	n := 0.0
	for _, k := range f.Afloat.Fittings {
		for _, v := range k.Works {
			if v.Unit == "loops" {
				n += v.Count
			}
		}
	}
	b := sharedBook(t, f)
	if said := steps(b)["Smoothing and oiling"]; n == 0 || !strings.Contains(said, fmt.Sprintf("%.0f in all, of 450 mm of webbing", n)) {
		t.Errorf("%g loops: %s", n, said)
	}
	w := &writer{Facts: f}
	for _, s := range w.steps() {
		if s.name == "smoothing and oiling" && !strings.Contains(w.bought(s), "webbing") {
			t.Errorf("to hand: %s", w.bought(s))
		}
	}
}

// TestCard: every rib has a row to write on, with its drawn length and depth.
func TestCard(t *testing.T) {
	f := facts(t, shipped(t, "river"), measure.Metric)
	card := tables(sharedBook(t, f))["Card of the ribs, to write on, mm"]
	if len(card.Rows) != len(f.Frame.Ribs) {
		t.Fatalf("%d rows for %d ribs", len(card.Rows), len(f.Frame.Ribs))
	}
	for i, r := range f.Frame.Ribs {
		row := card.Rows[i]
		if row[0] != r.Name || row[1] != fmt.Sprintf("%.1f", r.Length) || row[4] == "" || !strings.HasPrefix(row[6], "...") {
			t.Errorf("rib %s: %v", r.Name, row)
		}
	}
}
