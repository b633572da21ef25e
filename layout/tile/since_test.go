package tile

import (
	"fmt"
	"slices"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/paper"
)

// strips are a long strip with a mark every 50 mm and some short ones.
func strips(short int, change func(all []layout.Drawing)) Set {
	long := layout.Drawing{Name: "long", Title: "Long"}
	long.Line(layout.Mark, curve.Rectangle(geometry.Rect(0, -15, 1600, 15)))
	for x := 50.0; x < 1600; x += 50 {
		long.Straight(layout.Cut, x, -15, x, 15)
	}
	all := []layout.Drawing{long}
	for i := range short {
		d := layout.Drawing{Name: fmt.Sprintf("short-%d", i+1), Title: fmt.Sprintf("Short %d", i+1)}
		d.Line(layout.Cut, curve.Rectangle(geometry.Rect(0, 0, 150, 60)))
		all = append(all, d)
	}
	if change != nil {
		change(all)
	}
	return Set{Title: "Boat", Fingerprint: "0", Drawings: all, First: &layout.First{}}
}

func since(t *testing.T, was, now Set) *Since {
	t.Helper()
	s, err := LaySince(was, now, Options{Paper: paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func changed(s *Since) []string {
	var out []string
	for _, f := range s.Pieces {
		if !f.Same {
			out = append(out, f.Pattern+f.Tile)
		}
	}
	return out
}

// TestLaySince: equal sets keep all; a mark that moves by half a millimeter costs its one
// piece, which keeps its place; a piece that grew lies elsewhere, and the others stay.
func TestLaySince(t *testing.T) {
	was := strips(9, nil)
	s := since(t, was, strips(9, nil))
	if got := changed(s); got != nil || len(s.Gone) > 0 || len(s.Reprint) != 1 {
		t.Errorf("equal sets: %v changed, %v gone, print %v", got, s.Gone, s.Reprint)
	}
	mark := func(all []layout.Drawing) {
		all[0].Strokes[1].Path = curve.Polyline(geometry.Pt(50.5, -15), geometry.Pt(50.5, 15))
	}
	s = since(t, was, strips(9, mark))
	if got := changed(s); !slices.Equal(got, []string{"long1"}) {
		t.Errorf("one mark moved: %v changed", got)
	}
	if a, b := placeOf(s.Was(), "long", "1"), placeOf(s.Now(), "long", "1"); a != b {
		t.Errorf("the changed piece moved from %v to %v", a, b)
	}
	grown := func(all []layout.Drawing) {
		all[3].Strokes[0].Path = curve.Rectangle(geometry.Rect(0, 0, 170, 120))
	}
	s = since(t, was, strips(9, grown))
	if got := changed(s); !slices.Equal(got, []string{"short-3"}) {
		t.Errorf("one piece grew: %v changed", got)
	}
	for _, f := range s.Pieces {
		if a, b := placeOf(s.Was(), f.Pattern, f.Tile), placeOf(s.Now(), f.Pattern, f.Tile); f.Same && a != b {
			t.Errorf("%s%s moved from %v to %v", f.Pattern, f.Tile, a, b)
		}
	}
	offEachOther(t, s.Now())
	for i := 1; i <= 9; i++ { // whatever lies beside it
		offEachOther(t, since(t, was, strips(9, func(all []layout.Drawing) {
			all[i].Strokes[0].Path = curve.Rectangle(geometry.Rect(0, 0, 170, 120))
		})).Now())
	}
	s = since(t, was, strips(8, nil))
	if len(s.Gone) != 1 || s.Gone[0].Pattern != "short-9" || changed(s) != nil {
		t.Errorf("one fewer: %v gone, %v changed", s.Gone, changed(s))
	}
}

// offEachOther keeps the pieces of a sheet off one another.
func offEachOther(t *testing.T, l Laid) {
	t.Helper()
	for _, sheet := range l.Sheets {
		for i, v := range sheet.Views {
			for _, w := range sheet.Views[:i] {
				if v.OnSheet().Overlaps(w.OnSheet()) {
					t.Errorf("sheet %d: %s lies on %s", sheet.Number, v.Drawing.Name, w.Drawing.Name)
				}
			}
		}
	}
}

// placeOf is the sheet and the place of a piece.
func placeOf(l Laid, pattern, tile string) string {
	for _, sheet := range l.Sheets {
		for _, v := range sheet.Views {
			if v.Drawing.Name == pattern && v.Tile == tile {
				return fmt.Sprintf("%d %.3f %.3f", sheet.Number, v.ToSheet.Apply(v.Frame.Min).X, v.ToSheet.Apply(v.Frame.Min).Y)
			}
		}
	}
	return "nowhere"
}
