package fitted

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ribwright/geometry/boat/aboard"
	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/boat/weight"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/rowing"
	"ribwright/geometry/outfit/sail"
	"ribwright/geometry/water"
	"ribwright/layout/report"
)

func boat(t *testing.T, name string) (aboard.Boat, water.Water) {
	t.Helper()
	f := frametest.Shipped(t, name, nil)
	b, err := aboard.New(f, weight.People(f.Design), f.Design.Gear)
	if err != nil {
		t.Fatal(err)
	}
	w, err := water.At(water.Fresh, water.Usual)
	if err != nil {
		t.Fatal(err)
	}
	return b, w
}

// table is the one whose title begins so.
func table(t *testing.T, blocks []report.Block, title string) report.Table {
	t.Helper()
	for _, b := range blocks {
		if v, ok := b.(report.Table); ok && strings.HasPrefix(v.Title, title) {
			return v
		}
	}
	t.Fatalf("no table is called %q", title)
	return report.Table{}
}

// TestWinds: in the tables of winds no sail comes in past 7.9 m/s, none goes over past
// the 20.7 m/s where force 8 of the scale ends, and a sail that comes in at 7.9 for the
// weather alone is marked so.
func TestWinds(t *testing.T) {
	for _, r := range design.Rigs() {
		for _, area := range []float64{0.5, 2, 4} {
			b, w := boat(t, "lake")
			s := b.Frame.Design.Sail()
			s.Rig, s.Area, s.Reefs = r, area, 3
			f, err := sail.New(b, s, w)
			if err != nil {
				t.Fatal(err)
			}
			blocks := Sail(f, measure.Metric)
			for _, row := range table(t, blocks, "Wind, m/s").Rows {
				if len(row) != 7 {
					t.Fatalf("%v of %g m2: %q", r, area, row)
				}
				for i := 1; i < len(row); i += 2 {
					in, mark := number(t, row[i]), strings.Contains(row[i], "*")
					if in > 7.9 || (in == 7.9) != mark {
						t.Errorf("%v of %g m2: taken in at %s", r, area, row[i])
					}
					if at, _, _ := strings.Cut(row[i+1], " ("); !strings.HasPrefix(at, "over ") && number(t, at) > 20.7 {
						t.Errorf("%v of %g m2: goes over in %s", r, area, row[i+1])
					}
				}
			}
			what := table(t, blocks, "Wind: what to do")
			for _, row := range what.Rows[:len(what.Rows)-1] {
				if number(t, row[2]) >= 7.9 {
					t.Errorf("%v of %g m2: a reef is taken in at %s m/s", r, area, row[2])
				}
			}
		}
	}
}

// number reads the number that a cell begins with.
func number(t *testing.T, cell string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(regexp.MustCompile(`^[0-9.]+`).FindString(cell), 64)
	if err != nil {
		t.Fatalf("%q begins with no number", cell)
	}
	return v
}

// TestNotAfloat: no figure that depends on the water is shown of a boat that does not
// float under its rower.
func TestNotAfloat(t *testing.T) {
	b, w := boat(t, "brook")
	r := b.Frame.Design.Row()
	r.Mass, r.SeatAt = 200, 1000
	f, err := rowing.New(b, r, w)
	if err != nil {
		t.Fatal(err)
	}
	blocks := Rowing(f, measure.Metric)
	rows := append(table(t, blocks, "Oars and places").Rows, table(t, blocks, "Reach").Rows...)
	for _, what := range []string{"rowlocks over the seat, over the water", "handles over the seat, pulled", "handles over the seat, carried clear",
		"hands over the legs, oar over the gunwale", "rower alone: draft, bow up by, least freeboard"} {
		i := slices.IndexFunc(rows, func(row []string) bool { return row[0] == what })
		if i < 0 {
			t.Errorf("nothing is said of %s", what)
		} else if !strings.HasSuffix(rows[i][1], "-") {
			t.Errorf("%s: %s", what, rows[i][1])
		}
	}
}

// TestDangersFirst: a page begins with its cautions, and no cell of it is a number
// that is none, in either system.
func TestDangersFirst(t *testing.T) {
	b, w := boat(t, "lake")
	f, err := sail.New(b, b.Frame.Design.Sail(), w)
	if err != nil {
		t.Fatal(err)
	}
	for _, units := range []measure.System{measure.Metric, measure.Imperial} {
		blocks := Sail(f, units)
		first, ok := blocks[0].(report.Findings)
		if !ok || len(first.List) == 0 || len(first.List) != len(f.Findings.Dangers()) {
			t.Errorf("the page begins with %T, want its %d dangers", blocks[0], len(f.Findings.Dangers()))
		}
		for _, x := range blocks {
			if v, ok := x.(report.Table); ok {
				for _, row := range v.Rows {
					for _, cell := range row {
						if strings.Contains(cell, "NaN") || strings.Contains(cell, "Inf") {
							t.Errorf("%s: %q", v.Title, row)
						}
					}
				}
			}
		}
	}
	if math.IsNaN(f.Mast.At) {
		t.Error("the mast stands nowhere")
	}
}
