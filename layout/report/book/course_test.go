package book_test

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/shop/materials"
	"ribwright/layout/report"
	"ribwright/layout/report/book"
)

// TestOfCourse: every stick of every builder stands once in its own bin, with a board that the
// ripping plan has, and each mark that the ripping plan saws is in a bin.
func TestOfCourse(t *testing.T) {
	var plans []*cutlist.Plan
	c := book.Course{Title: "Spring course", Units: measure.Metric, LeftOut: []string{"Cid"}}
	for i, name := range []string{"brook", "lake"} {
		f := frametest.Shipped(t, name, func(d *design.Design) { d.Stock.Boards = nil })
		plans = append(plans, cutlist.Heat(nil).Quick(f))
		c.Boats = append(c.Boats, book.CourseBoat{Builder: []string{"Ann", "Bob"}[i], Folder: name, Length: 3500, Beam: 700, Depth: 280, Hours: 70, Cost: 500})
	}
	var err error
	if c.Prices, err = cost.Level("mixed"); err != nil {
		t.Fatal(err)
	}
	c.Pool = cutlist.Pool(plans)
	one := []materials.Item{{Key: "glue", Name: "waterproof glue", Amount: 0.4, Unit: "kg"}, {Key: "wood: white ash", Amount: 99}}
	needs := materials.Together([][]materials.Item{one, one}, &c.Pool.Plan)
	c.Cost = cost.Of(needs, &c.Pool.Plan, c.Prices)
	for _, item := range needs.Items {
		if item.Key == "glue" && (item.Amount != 0.8 || item.How != "added up for 2 boats") || item.Amount > 50 {
			t.Errorf("%+v", item)
		}
	}
	bin, marks, words := "", map[string]string{}, ""
	boards := map[string]int{}
	for _, v := range c.Pool.Woods {
		boards[v.Species] = len(v.Boards)
	}
	for _, b := range book.OfCourse(c).Blocks {
		switch b := b.(type) {
		case report.Heading:
			if bin = b.Words; strings.Contains(bin, ": ") {
				bin, _, _ = strings.Cut(bin, ": ")
			}
		case report.Caution:
			words += b.Words
		case report.Table:
			if b.Columns[0].Head != "Mark" {
				continue
			}
			for _, row := range b.Rows {
				var board int
				fmt.Sscan(row[6], &board)
				if marks[row[0]] != "" || !strings.HasPrefix(row[0], bin+":") || board < 1 || board > boards[row[2]] {
					t.Errorf("in bin %s: %q, twice %v, of %d boards", bin, row, marks[row[0]] != "", boards[row[2]])
				}
				marks[row[0]] = bin
			}
		}
	}
	pieces := 0
	for _, v := range c.Pool.Woods {
		for _, s := range v.Boards {
			for _, p := range s.Pieces() {
				mark := c.Pool.Sticks[p.Stick].Mark
				if p.Of > 1 {
					mark += fmt.Sprintf("/%d", p.Number)
				}
				if pieces++; marks[mark] == "" {
					t.Errorf("%s is sawn and lies in no bin", mark)
				}
			}
		}
	}
	if pieces != len(marks) || !strings.Contains(words, "Nothing is counted here for Cid") {
		t.Errorf("%d pieces, %d in bins; %q", pieces, len(marks), words)
	}
}
