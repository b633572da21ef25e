package pdf_test

import (
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/render/rendertest"
)

// TestBookmarksAndLabels checks that every pattern has a bookmark on the page of its first
// piece, families above their members and these above their pieces, wherever they lie, and
// every page the label of its sheet, whatever stands in the names.
func TestBookmarksAndLabels(t *testing.T) {
	drawing := func(title, family string) *layout.Drawing {
		return &layout.Drawing{Name: title, Title: title, Family: family, Strokes: alone(curve.Circle(pt(50, 50), 30))}
	}
	view := func(d *layout.Drawing) layout.View {
		return layout.View{Drawing: d, Frame: geometry.Box{Max: pt(90, 90)}, ToSheet: geometry.Shift(20, 30)}
	}
	piece := func(d *layout.Drawing, tile string) layout.View {
		v := view(d)
		v.Tile = tile
		return v
	}
	strip, first, second, stem := drawing("Gunwale (port) \\", ""), drawing("Rib M", "Ribs"), drawing("Caf\u00e9 \u0416", "Ribs"), drawing("Stem", "")
	doc := layout.Document{Title: "Brook", Paper: a4(), Sheets: []layout.Sheet{
		{Label: "1: read first"},
		{Label: "2: gunwale 1)(", Views: []layout.View{view(strip)}},
		{Label: `3: gunwale 2\, rib-M`, Views: []layout.View{view(strip), piece(first, "10"), piece(stem, "B1")}},
		{Label: "4: caf\u00e9 \u0416", Views: []layout.View{view(second), piece(first, "2"), piece(stem, "A1")}},
	}}
	f := readFile(t, doc)
	got, err := f.Bookmarks()
	if err != nil {
		t.Fatal(err)
	}
	want := []rendertest.Bookmark{{Title: "Read first", Page: 1}, {Title: "Gunwale (port) \\", Page: 2}, {Title: "Ribs", Page: 3},
		{Title: "Rib M", Page: 4, Level: 1}, {Title: "piece 2", Page: 4, Level: 2}, {Title: "piece 10", Page: 3, Level: 2},
		{Title: "Caf\u00e9 \u0416", Page: 4, Level: 1},
		{Title: "Stem", Page: 4}, {Title: "piece A1", Page: 4, Level: 1}, {Title: "piece B1", Page: 3, Level: 1}}
	if len(got) != len(want) {
		t.Fatalf("bookmarks %+v, want %+v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("bookmark %+v, want %+v", got[i], want[i])
		}
	}
	labels, err := f.PageLabels()
	if err != nil {
		t.Fatal(err)
	}
	for page, w := range map[int]string{1: "1: read first", 2: "2: gunwale 1)(", 3: `3: gunwale 2\, rib-M`, 4: "4: caf\u00e9 \u0416"} {
		if labels[page] != w {
			t.Errorf("page %d is labelled %q, want %q", page, labels[page], w)
		}
	}
}
