package bins

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ribwright/geometry/shop/cutlist"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
	"ribwright/layout/report"
)

// pooled is a plan of two builders by hand: six plies, four ribs and a spare, a scarfed keel;
// the second has two stringers.
func pooled() *cutlist.Pooled {
	p := &cutlist.Pooled{}
	add := func(owner, pieces int, s cutlist.Stick) {
		p.Owners = append(p.Owners, owner)
		p.Sticks = append(p.Sticks, s)
		p.Cuttings = append(p.Cuttings, cutlist.Cutting{Pieces: make([]cutlist.Piece, pieces)})
	}
	for i := range 6 {
		add(0, 1, cutlist.Stick{Mark: fmt.Sprintf("1:G%d", i+1), Family: cutlist.Gunwale, Species: "western redcedar", Width: 35, Thickness: 6.5})
	}
	for i := range 4 {
		add(0, 1, cutlist.Stick{Mark: fmt.Sprintf("1:R-A%d", i+1), Family: cutlist.Rib, Species: "white ash", Width: 21, Thickness: 5.5 + float64(i/2)})
	}
	add(1, 1, cutlist.Stick{Mark: "2:S1p", Family: cutlist.Stringer, Species: "white ash", Width: 20, Thickness: 9})
	add(0, 1, cutlist.Stick{Mark: "1:RS1", Family: cutlist.Rib, Species: "white ash", Width: 21, Thickness: 6.5, Spare: true})
	add(0, 2, cutlist.Stick{Mark: "1:K1", Family: cutlist.Keel, Species: "western redcedar", Width: 40, Thickness: 12})
	for i, wood := range []string{"white ash", "western redcedar", "white ash"} {
		add(0, 1, cutlist.Stick{Mark: fmt.Sprintf("1:P%d", i+1), Family: []cutlist.Family{cutlist.Beam, cutlist.Fitting, cutlist.Beam}[i], Species: wood, Width: 40, Thickness: 12, Own: true, Kit: "floor"})
	}
	add(1, 1, cutlist.Stick{Mark: "2:S1s", Family: cutlist.Stringer, Species: "white ash", Width: 20, Thickness: 9})
	return p
}

// TestOf reads the labels of the plan by hand.
func TestOf(t *testing.T) {
	var got []string
	for _, l := range Of([]string{"Ada", "Bo"}, pooled(), report.Letters{}) {
		got = append(got, strings.Join(append([]string{l.Head}, l.Lines...), " | "))
	}
	want := []string{
		"1: Ada | Bin | 16 pieces in 4 bundles | Ticked off by: ____________",
		"1: Ada | gunwale, 6 pieces | 1:G1 to 1:G6 | western redcedar, 35.0 x 6.5 mm",
		"1: Ada | rib, 5 pieces | 1:R-A1 to 1:R-A4, 1:RS1 | white ash, several sections",
		"1: Ada | keel, 2 pieces | 1:K1 | western redcedar, 40.0 x 12.0 mm",
		"1: Ada | fittings, 3 pieces | 1:P1 to 1:P3 | several woods, 40.0 x 12.0 mm",
		"2: Bo | Bin | 2 pieces in 1 bundle | Ticked off by: ____________",
		"2: Bo | stringer, 2 pieces | 2:S1p, 2:S1s | white ash, 20.0 x 9.0 mm",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("labels:\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestGrids: a sheet of labels is cut alike on both sides, so the rows and columns of each end
// as far from the paper's edges as they begin, and no label lies on another.
func TestGrids(t *testing.T) {
	for name, g := range grids() {
		size, err := paper.ParseSize(name)
		if err != nil {
			t.Fatal(err)
		}
		right := size.Across - g.left - g.aside*float64(g.across-1) - g.wide
		under := size.Down - g.top - g.onward*float64(g.down-1) - g.high
		if math.Abs(right-g.left) > 0.01 || math.Abs(under-g.top) > 0.01 {
			t.Errorf("%s: %.2f mm left and %.2f mm right, %.2f mm over and %.2f mm under", name, g.left, right, g.top, under)
		}
		if g.aside < g.wide || g.onward < g.high {
			t.Errorf("%s: labels lie on one another", name)
		}
	}
}

// TestLay: every word stands inside the label of its turn, 2 mm and more from its edges, and
// all lines stand, whatever the names and however many the sections.
func TestLay(t *testing.T) {
	long := Label{"12: " + strings.Repeat("Wilhelmina ", 20), strings.Fields(strings.Repeat("21.0x5.5 ", 40))}
	for name, g := range grids() {
		size, _ := paper.ParseSize(name)
		sheet, err := paper.Setup{Size: size, Margins: paper.HomeMargins(), Across: 1, Down: 1}.Sheet(false)
		if err != nil {
			t.Fatal(err)
		}
		all := append(Of([]string{"Ada", "Bo"}, pooled(), report.Letters{}), long, Label{"13: ", nil}, Label{"13: Di", []string{strings.Repeat("A ", 60)}})
		for len(all) < 2*g.across*g.down {
			all = append(all, Label{"14: Cy", []string{"keel"}})
		}
		doc, err := Lay("a course", all, sheet)
		if err != nil {
			t.Fatal(err)
		}
		lines := 0
		for _, s := range doc.Sheets {
			for _, x := range s.Texts {
				col, row := math.Floor((x.At.X-g.left)/g.aside), math.Floor((size.Down-g.top-x.At.Y)/g.onward)
				left, top := g.left+col*g.aside, size.Down-g.top-row*g.onward
				if x.At.X < left+2 || x.At.X+lettering.Width(x.Words, x.Height) > left+g.wide-2 || x.At.Y+x.Height > top-2 || x.At.Y < top-g.high+2 {
					t.Errorf("%s: %q stands off its label in column %g, row %g", name, x.Words, col, row)
				}
				if x.Words == "21.0x5.5" {
					lines++
				}
			}
		}
		if lines != 40 || len(doc.Sheets) < 2 {
			t.Errorf("%s: %d lines of 40 on %d sheets", name, lines, len(doc.Sheets))
		}
	}
	legal, _ := paper.ParseSize("legal")
	if _, err := Lay("a course", nil, paper.Sheet{Setup: paper.Setup{Size: legal}}); err == nil || Fits(legal) {
		t.Error("legal paper has labels")
	}
}
