package book_test

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/course"
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
	c.Days = planOf(t, 0)
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

// TestCourseAsksForRings: where some boards of a wood are flat-sawn and others quarter-sawn, the
// course asks for both, and every board says which it is: else half of the ribs get upright rings.
func TestCourseAsksForRings(t *testing.T) {
	var plans []*cutlist.Plan
	for range 4 {
		plans = append(plans, cutlist.Heat(nil).Make(frametest.Shipped(t, "brook", func(d *design.Design) { d.Stock.Boards = nil })))
	}
	pool := cutlist.Pool(plans)
	for _, v := range pool.Woods {
		if s := &v.Boards[0].Board; v.Species == "white ash" {
			s.Sawn = map[cutlist.Faces]cutlist.Faces{cutlist.FlatFaces: cutlist.QuarterFaces, cutlist.QuarterFaces: cutlist.FlatFaces}[s.Sawn]
		}
	}
	prices, err := cost.Level("mixed")
	if err != nil {
		t.Fatal(err)
	}
	b := book.OfCourse(book.Course{Pool: pool, Prices: prices, Days: planOf(t, 0), Units: measure.Metric,
		Cost: cost.Of(materials.Together(nil, &pool.Plan), &pool.Plan, prices)})
	titles, bought := "", ""
	for _, k := range b.Blocks {
		if k, ok := k.(report.Table); ok {
			titles += k.Title + "\n"
			for _, row := range k.Rows {
				if k.Title == "What to buy" && row[0] == "white ash" {
					bought = row[3]
				}
			}
		}
	}
	ways := map[cutlist.Faces]int{}
	for _, v := range pool.Woods {
		for i, s := range v.Boards {
			if v.Species != "white ash" {
				continue
			}
			ways[s.Board.Sawn]++
			if want := fmt.Sprintf("White ash, board %d of %d, %s-sawn, mm", i+1, len(v.Boards), s.Board.Sawn); !strings.Contains(titles, want) {
				t.Errorf("no %q in %s", want, titles)
			}
			if size := fmt.Sprintf("%.0f x %.0f x %.1f mm, %s-sawn", s.Board.Length, s.Board.Width, s.Board.Thickness, s.Board.Sawn); !strings.Contains(bought, size) {
				t.Errorf("no %q is bought: %q", size, bought)
			}
		}
	}
	if ways[cutlist.FlatFaces] == 0 || ways[cutlist.QuarterFaces] == 0 {
		t.Errorf("ways to be sawn: %v", ways)
	}
}

// planOf plans two builders of three operations each.
func planOf(t *testing.T, days int) *course.Plan {
	t.Helper()
	boat := []course.Operation{
		{Name: "print and tape the patterns", Hours: 2, Practiced: 1},
		{Name: "steam and bend the ribs", Hours: 5, Practiced: 4, At: course.Boiler, Whole: true, After: []course.After{{Name: "print and tape the patterns"}}},
		{Name: "fit out the boat", Hours: 9, Practiced: 7, After: []course.After{{Name: "steam and bend the ribs", Hours: 12}}},
	}
	p, err := course.Make([]course.Builder{{Name: "Ann", Work: boat}, {Name: "Bob", Work: boat}}, course.Terms{Days: days, HoursADay: 8})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestCoursePlan: the chapter tells whether the days are enough, each task on each of its days,
// each turn at the boiler once, and what is taken out of the course.
func TestCoursePlan(t *testing.T) {
	for days, want := range map[int]string{
		0: "It takes 4 days.",
		4: "It takes 4 days of the 4 given.",
		3: "It takes 2 days of the 3 given, with what the next tables take out of the course: with nothing prepared and nothing left it takes 4 days.",
		1: "The course does not fit. With nothing prepared and nothing left it takes 4 days; with all that the next tables have it still takes 2 days, of 1 given.",
	} {
		words, tables := "", map[string]report.Table{}
		for _, b := range book.OfCourse(book.Course{Pool: cutlist.Pool(nil), Prices: &cost.Table{}, Days: planOf(t, days)}).Blocks {
			switch b := b.(type) {
			case report.Paragraph:
				words += b.Words + "\n"
			case report.Caution:
				words += b.Words + "\n"
			case report.Table:
				tables[b.Title] = b
			}
		}
		if !strings.Contains(words, want) {
			t.Errorf("%d days: no %q in %s", days, want, words)
		}
		if n := len(tables["Who has the boiler"].Rows); n != 2 {
			t.Errorf("%d days: %d turns at the boiler", days, n)
		}
		if days == 1 || days == 3 {
			if left := tables["Each builder does after the course"].Rows; len(left) != 1 || left[0][0] != "fit out the boat" || left[0][1] != "18" {
				t.Errorf("%d days: %q", days, left)
			}
		} else if row := tables["Day 3"].Rows; len(row) != 2 || !strings.Contains(row[0][2]+row[1][2], "0:00 go on: fit out the boat") {
			t.Errorf("%d days: %q", days, row)
		}
	}
}
