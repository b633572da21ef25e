package book_test

import (
	"slices"
	"testing"

	"ribwright/geometry/boat/frame/frametest"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/trial/stow"
	"ribwright/layout/report"
	"ribwright/layout/report/book"
)

// TestWayHome: a row for each stack, with its boats from the outside in and what comes out of
// the lower ones; where none nests a course is told so, and nothing where nobody asked.
func TestWayHome(t *testing.T) {
	var boats []*stow.Boat
	for _, name := range []string{"brook", "lake", "river"} {
		b, err := stow.NewBoat(frametest.Shipped(t, name, nil))
		if err != nil {
			t.Fatal(err)
		}
		boats = append(boats, b)
	}
	rows := func(boats ...*stow.Boat) (found bool, out [][]string) {
		c := book.Course{Pool: cutlist.Pool(nil), Prices: &cost.Table{}, Days: planOf(t, 0), Home: stow.Piles(boats, stow.Options{Pad: 5}), Room: 5}
		blocks := book.OfCourse(c).Blocks
		i := slices.IndexFunc(blocks, func(b report.Block) bool { h, is := b.(report.Heading); return is && h.Words == "The way home" })
		if i < 0 {
			return false, nil
		}
		for _, b := range blocks[i:] {
			if table, is := b.(report.Table); is {
				out = table.Rows
			}
		}
		return true, out
	}
	if found, got := rows(boats...); !found || len(got) != 1 || got[0][0] != "River, Lake, Brook" || got[0][5] == "" {
		t.Errorf("%v, %q", found, got)
	} else if want := "River: "; len(got[0][1]) < 20 || got[0][1][:len(want)] != want {
		t.Errorf("out comes %q", got[0][1])
	}
	if found, got := rows(boats[1], boats[1]); !found || got != nil {
		t.Errorf("two of a kind: %v, %q", found, got)
	}
	if found, _ := rows(); found {
		t.Error("no boats go home")
	}
}
