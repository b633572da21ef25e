package job

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/design"
	"ribwright/geometry/measure"
)

// workshop asks for the workshop of a boat, as a page gets it.
func workshop(t *testing.T, name string, fields ...[2]string) (w struct {
	Chapters []struct {
		Name   string
		Blocks []struct {
			Kind, Says string
			Rows       [][]string
		}
	}
	Cards []struct{ Name string }
}) {
	t.Helper()
	r, err := Ask("workshop", []string{name}, fields...)
	if err != nil {
		t.Fatal(err)
	}
	result, err := r.Do(World{Made: UsualDate()})
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(result.Numbers)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(text, []byte("NaN")) {
		t.Error("a number is none")
	}
	if err := json.Unmarshal(text, &w); err != nil {
		t.Fatal(err)
	}
	return w
}

// TestWorkshop: the bench has every chapter with something in it, a card for each rib,
// and the plan is of the boards that are given.
func TestWorkshop(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	w := workshop(t, "brook", [2]string{"board", "7 of western redcedar, 3 m x 150 mm x 26 mm"}, [2]string{"skill", "beginner"})
	if len(w.Chapters) != 5 {
		t.Errorf("%d chapters", len(w.Chapters))
	}
	for _, c := range w.Chapters {
		if len(c.Blocks) < 2 {
			t.Errorf("%s has %d blocks", c.Name, len(c.Blocks))
		}
	}
	if n := len(w.Cards); n < 15 || w.Cards[0].Name != "M" {
		t.Errorf("%d cards, the first of rib %v", n, w.Cards[0].Name)
	}
	given := 0
	for _, b := range w.Chapters[1].Blocks {
		for _, row := range b.Rows {
			if slices.ContainsFunc(row, func(s string) bool { return strings.Contains(s, "3000 x 150 x 26.0") }) {
				given++
			}
		}
	}
	if given == 0 {
		t.Errorf("no board at hand stands in the plan of %s", d.Title)
	}
}

// TestBoards: a board is read with its units, or refused with what is accepted.
func TestBoards(t *testing.T) {
	got, err := parseBoard("3 of white ash, 8ft x 6in x 1in")
	if err != nil || got.Count != 3 || got.Species != "white ash" || float64(got.Width) != 152.4 {
		t.Errorf("%+v, %v", got, err)
	}
	again, err := parseBoard(showBoard(got))
	if err != nil || again != got {
		t.Errorf("%q is read as %+v, %v", showBoard(got), again, err)
	}
	for _, bad := range []string{"", "ash", "3 of ash", "0 of ash, 1m x 1m x 1m", "3 of ash, 2400 x 150 x 26", "3 of ash, 1m x 1m", "x of ash, 1m x 1m x 1m"} {
		if _, err := parseBoard(bad); err == nil || !strings.Contains(err.Error(), "accepted: ") {
			t.Errorf("%q: %v", bad, err)
		}
	}
}

// TestWorkshopBoards: boards at hand stand instead of the design's of that wood, and those
// of other woods stay.
func TestWorkshopBoards(t *testing.T) {
	d, err := design.Shipped("brook")
	if err != nil {
		t.Fatal(err)
	}
	board := func(wood string, long measure.Length) design.Board {
		return design.Board{Species: wood, Length: long, Width: 150, Thickness: 26, Count: 3}
	}
	d.Stock.Boards = []design.Board{board("white ash", 4000), board("western redcedar", 4000), board("western redcedar", 3000)}
	s := NewWorkshop()
	s.Boards = []design.Board{board("western redcedar", 2500)}
	got, err := s.supplied(d)
	if err != nil {
		t.Fatal(err)
	}
	if want := []design.Board{board("white ash", 4000), board("western redcedar", 2500)}; !slices.EqualFunc(got.Stock.Boards, want, func(a, b design.Board) bool { return a.Species == b.Species && a.Length == b.Length }) {
		t.Errorf("%+v", got.Stock.Boards)
	}
	if len(d.Stock.Boards) != 3 {
		t.Error("the design itself was changed")
	}
}
