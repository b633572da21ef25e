package sharing

import (
	"slices"
	"strings"
	"testing"

	"ribwright/geometry/measure"
	"ribwright/geometry/shop/fan"
	"ribwright/layout/report"
)

var (
	length  = fan.Mark{Kind: fan.Length}
	mortise = fan.Mark{Kind: fan.Mortise, Rib: 1}
)

// board holds a midship rib whose half is half of what is read, and a mortise that lies 6 mm farther
// out for the widest boats, which are 10 mm wider than usual, than for the narrowest, 10 mm narrower.
func board(on ...fan.Boat) Board {
	beams := fan.Beams{Usual: [2]float64{700, 720}, Off: fan.Scale{From: -10, To: 10}}
	return Board{Of: "pack, sheltered water", File: "course-fan-board-1.pdf", Board: &fan.Board{
		Rib: fan.Scale{From: 1000, To: 1100}, Half: fan.Scale{From: 1700, To: 1800}, ByRib: beams, ByHalf: beams, On: on,
		Rays: []fan.Ray{{Mark: length, Ends: [2][2]float64{{500, 550}, {500, 550}}}, {Mark: mortise, Net: true, Ends: [2][2]float64{{135, 140}, {141, 146}}}}}}
}

func boat(name string, rib, half, beam, ownHalfRib, ownMortise float64) fan.Boat {
	return fan.Boat{Builder: name, Reading: fan.Reading{Rib: rib, Half: half, Beam: beam}, Marks: map[fan.Mark]float64{length: ownHalfRib, mortise: ownMortise}}
}

// table returns the table of a title, and fails without it.
func table(t *testing.T, blocks []report.Block, title string) report.Table {
	t.Helper()
	for _, b := range blocks {
		if got, is := b.(report.Table); is && strings.HasPrefix(got.Title, title) {
			return got
		}
	}
	t.Fatalf("no table %q", title)
	return report.Table{}
}

// TestWhereToRead: a builder reads a share only where rays are two: 715 mm of beam where 710 are
// usual, of 20 mm between the rays, is 75 of 100.
func TestWhereToRead(t *testing.T) {
	got := table(t, Blocks([]Board{board(boat("Ann", 1060, 1750, 715, 530, 142))}, nil, measure.Metric), "Where to read")
	if want := []string{"Ann", "1060.0", "-", "1750.0", "75"}; !slices.Equal(got.Rows[0], want) {
		t.Errorf("%q, want %q", got.Rows[0], want)
	}
	if !strings.Contains(got.Note, "course-fan-board-1.pdf") {
		t.Errorf("the note is %q", got.Note)
	}
}

// TestBesideLoft: what is read stands beside the own loft, ribs in their whole length: at 1060 mm a
// whole rib of 1060, and 137.5 + 0.75 x 6 mm for the mortise. The worst of all builders is told, not of three.
func TestBesideLoft(t *testing.T) {
	on := []fan.Boat{
		boat("Ann", 1060, 1750, 715, 530, 142), boat("Bob", 1000, 1750, 710, 500.4, 140.5), boat("Cid", 1100, 1750, 710, 550, 140.5),
		boat("Dan", 1020, 1750, 710, 510, 139.8), boat("Eve", 1080, 1750, 710, 540, 140.5),
	}
	got := table(t, Blocks([]Board{board(on...)}, nil, measure.Metric), "Read on the board")
	var heads []string
	for _, c := range got.Columns {
		heads = append(heads, c.Head)
	}
	if want := []string{"Mark", "Bob, read", "loft", "Ann, read", "loft", "Cid, read", "loft"}; !slices.Equal(heads, want) { // the least, the middle and the greatest rib
		t.Errorf("columns %q, want %q", heads, want)
	}
	want := [][]string{{"Length of rib M", "1000.0", "1000.8", "1060.0", "1060.0", "1100.0", "1100.0"}, {"Mortise of rib F1 and A1", "140.5", "140.5", "142.0", "142.0", "140.5", "140.5"}}
	if !slices.EqualFunc(got.Rows, want, slices.Equal) {
		t.Errorf("%q, want %q", got.Rows, want)
	}
	for _, says := range []string{"rib lengths 0.8 mm, bends 0.0 mm, stringers 0.0 mm, mortises 0.7 mm", "Accepted: 2.0 mm, 5.0 mm, 2.0 mm and 1.0 mm"} {
		if !strings.Contains(got.Note, says) {
			t.Errorf("%q is not in %q", says, got.Note)
		}
	}
}

// TestOff: who is on no board is told why and what it would cost, and that nothing was found where it
// was not; where all are on one there is no such table, and without a board nobody is told how to read one.
func TestOff(t *testing.T) {
	off := []Off{{"Fay", "its beam is off the board", "3 mm more beam"}, {"Gus", "it has no stringer 3", ""}}
	blocks := Blocks(nil, off, measure.Metric)
	got := table(t, blocks, "On no board")
	if got.Rows[0][2] != "3 mm more beam" || !strings.Contains(got.Rows[1][2], "nothing small was found") {
		t.Errorf("%q", got.Rows)
	}
	for _, b := range blocks {
		if _, list := b.(report.List); list {
			t.Error("without a board it is told how to read one")
		}
	}
	if p, is := blocks[1].(report.Paragraph); !is || !strings.Contains(p.Words, "No two builders share a board") {
		t.Errorf("%v", blocks[1])
	}
	for _, b := range Blocks([]Board{board(boat("Ann", 1060, 1750, 715, 530, 142))}, nil, measure.Metric) {
		if got, is := b.(report.Table); is && got.Title == "On no board" {
			t.Errorf("nobody is left out, and it tells %q", got.Rows)
		}
	}
}

// TestThree: of up to three all are shown, by their midship rib.
func TestThree(t *testing.T) {
	for _, c := range []struct {
		ribs []float64
		want []float64
	}{{[]float64{3}, []float64{3}}, {[]float64{3, 1, 2}, []float64{1, 2, 3}}, {[]float64{5, 1, 4, 2, 3}, []float64{1, 3, 5}}} {
		var on []fan.Boat
		for _, r := range c.ribs {
			on = append(on, fan.Boat{Reading: fan.Reading{Rib: r}})
		}
		var got []float64
		for _, b := range three(on) {
			got = append(got, b.Rib)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v of %v, want %v", got, c.ribs, c.want)
		}
	}
}
