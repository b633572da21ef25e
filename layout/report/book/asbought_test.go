package book

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// told is all text of a book.
func told(b report.Report) string {
	var out strings.Builder
	for _, k := range b.Blocks {
		fmt.Fprintf(&out, "%+v\n", k)
	}
	return out.String()
}

// TestGapsInBook: the book tells of the blocks before the plies are glued, of gauges in
// every gap, and of no router; the table has every block.
func TestGapsInBook(t *testing.T) {
	for _, glued := range []string{design.GluedBent, design.GluedStraight, design.GluedOnForm} {
		d := shipped(t, "brook")
		d.Gunwale.Mortises, d.Gunwale.Glued = design.ByGap, glued
		f := facts(t, d, measure.Metric)
		b := sharedBook(t, f)
		do := steps(b)["Gunwales"]
		inOrder(t, do, "Saw 23 gauges", "Trim the blocks", "each gauge on its own place", "Glue the 3 plies", "waxed gauge in every gap", "Clear the gaps", "Cut the gunwales to length")
		if all := told(b); strings.Contains(do, "Cut the mortises") || strings.Contains(all, "router or drill") || !strings.Contains(all, "Mortises by gap spare ") {
			t.Errorf("%s: %s", glued, do)
		}
		for _, k := range b.Blocks {
			if tab, ok := k.(report.Table); ok && strings.HasPrefix(tab.Title, "Blocks of one middle ply") {
				if len(tab.Rows) != 24 || tab.Rows[12][3] != "104.7" {
					t.Errorf("%d blocks, the 13th %v", len(tab.Rows), tab.Rows[12])
				}
			}
		}
	}
}

// TestStockInBook: how stock was dried shows in soaking, steaming and drying.
func TestStockInBook(t *testing.T) {
	for _, c := range []struct {
		stock        design.Seasoning
		moisture     float64
		soak, others string
		minutes      string
		not          string
	}{
		{design.AirDried, 23, "soak it and one spare blank overnight, steam it for 14 minutes", "Soak the other blanks overnight and steam each for 14 minutes.", "14 minutes", "for days"},
		{design.KilnDried, 27, "soak it and one spare blank for a day and a night, steam it for 18 minutes", "Soak the other blanks for a day and a night and steam each for 18", "18 minutes", "overnight, steam"},
		{design.Green, 30, "Bend rib M first, by itself: steam it for 14 minutes", "Steam each of the other blanks for 14 minutes.", "14 minutes", "Soak"},
	} {
		d := shipped(t, "brook")
		d.Bending.Stock, d.Bending.Moisture = c.stock, c.moisture
		b := sharedBook(t, facts(t, d, measure.Metric))
		do := steps(b)["Ribs"]
		inOrder(t, do, c.soak, c.others)
		if strings.Contains(do, c.not) || !strings.Contains(told(b), "The design reckons on "+c.stock.String()+" stock") {
			t.Errorf("%v: %s", c.stock, do)
		}
	}
}

// TestShortInBook: where boards are short the book says what to buy, and where they are
// narrow which parts are glued up; what is owned costs nothing.
func TestShortInBook(t *testing.T) {
	d := shipped(t, "brook")
	d.Stock.Boards = []design.Board{{Species: "white ash", Length: 1300, Width: 90, Thickness: 25, Count: 1, Price: new(0.0), Sawn: "flat"}}
	b := sharedBook(t, facts(t, d, measure.Metric))
	all := told(b)
	for _, want := range []string{"No other wood, and no wood of another part, is taken for them", "Buy for them, besides the boards of the plan", "boards of white ash, 1300 x 90 x 25.0 mm, flat-sawn",
		"No board is wide enough for", "nothing to buy: 1 board of the ripping plan, your own", "1 board of your own costs nothing", "rings flat"} {
		if !strings.Contains(all, want) {
			t.Errorf("the book does not say %q", want)
		}
	}
}
