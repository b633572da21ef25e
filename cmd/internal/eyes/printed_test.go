package eyes

import (
	"fmt"
	"math"
	"testing"

	"ribwright/render/rendertest"
)

// stretched is a printer as home printers are: longer along the feed than
// across it, or the other way round. Makers allow 1 to 3 %.
var stretched = Printer{Across: 1.004, Down: 0.9985}

// correction returns the flags that a builder gives after measuring the bars of
// the test sheet: what 200 mm came out as, across the paper (its short edge) and
// down it (its long edge).
func correction(p Printer) []string {
	return []string{
		"--printed-across", fmt.Sprintf("%g mm of 200 mm", 200*p.Across),
		"--printed-down", fmt.Sprintf("%g mm of 200 mm", 200*p.Down),
	}
}

// TestPrinted prints the corrected gunwale strip and stems on the stretching
// printer and lays the tiles by their middles: the true pattern comes back.
func TestPrinted(t *testing.T) {
	flags := correction(stretched)
	for _, paper := range []string{"letter", "a4"} {
		s := loft(t, "river", paper, flags...)
		for _, pattern := range patterns() {
			t.Run(pattern+" on "+paper, func(t *testing.T) {
				c := check{s, whole(t, "river", pattern), pattern, stretched.Laid}
				c.linesInOnePiece(t)
				c.againstNumbers(t, mayPrint)
			})
		}
	}
}

// TestPrintedBothWays: the printer stretches the paper, not the drawing, so the
// same correction serves sheets that stand and sheets that lie.
func TestPrintedBothWays(t *testing.T) {
	flags := correction(stretched)
	for _, way := range []string{"standing", "lying"} {
		t.Run(way, func(t *testing.T) {
			s := loft(t, "river", "a4", append(flags, "--way", way)...)
			if size := s.Views[0].Sheet; (size[0] > size[1]) != (way == "lying") {
				t.Fatalf("a sheet of %v is not %s", size, way)
			}
			c := check{s, whole(t, "river", "stem-bow"), "stem-bow", stretched.Laid}
			c.linesInOnePiece(t)
			c.againstNumbers(t, mayPrint)
		})
	}
}

// TestPrintedUncorrected is the measure of TestPrinted: on the same printer
// sheets without a correction must be found false, by what arithmetic says: the
// stretch over the half of a tile, less the end of it that holds no cut line.
func TestPrintedUncorrected(t *testing.T) {
	s := loft(t, "river", "letter")
	c := check{set: s, pattern: "mortises", lay: stretched.Laid}
	lines, err := s.numbers.CutLines("mortises")
	if err != nil {
		t.Fatal(err)
	}
	r := c.measure(t, lines, cutOnly())
	expected := 0.0
	for _, v := range s.Of("mortises") {
		by, f := stretched.stretch(v.Sheet), v.OnSheet() // which may lie turned
		expected = math.Max(expected, math.Max(math.Abs(by[0]-1)*f.W()/2, math.Abs(by[3]-1)*f.H()/2))
	}
	t.Logf("without a correction: %v; the edge of a tile is off by %.4f", r, expected)
	if r.Unclear > 0 || r.Worst < 0.7*expected || r.Worst > expected+0.01 {
		t.Errorf("%v; expected 0.7 to 1 times %.4f", r, expected)
	}
}

// TestLaid checks by hand what the printer does: a tile of a portrait sheet,
// stretched 1 % across and shrunk 2 % down, laid by its middle.
func TestLaid(t *testing.T) {
	v := rendertest.View{Edges: [4]float64{1000, 0, 1100, 200}, ToSheet: [6]float64{1, 0, 0, 1, -990, 10}, Sheet: [2]float64{210, 297}}
	p := Printer{Across: 1.01, Down: 0.98}
	for _, at := range []struct{ sheet, want rendertest.Point }{
		{rendertest.Point{X: 60, Y: 110}, rendertest.Point{X: 1050, Y: 100}},    // the middle stays
		{rendertest.Point{X: 110, Y: 210}, rendertest.Point{X: 1100.5, Y: 198}}, // a corner 50 and 100 from it
	} {
		if got := p.Laid(v).Apply(at.sheet); got.To(at.want) > 1e-9 {
			t.Errorf("%v is laid at %v, want %v", at.sheet, got, at.want)
		}
	}
	// The same paper lying on its side: across is now up.
	v.Sheet = [2]float64{297, 210}
	if got := p.Laid(v).Apply(rendertest.Point{X: 10, Y: 210}); got.To(rendertest.Point{X: 1001, Y: 201}) > 1e-9 {
		t.Errorf("on its side: laid at %v, want 1001 201", got)
	}
}
