package typeset

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/layout/report"
)

// TestNothingIsShortened: names, headings and titles of many words stand whole, wrapped, in
// the contents too; a foot may end early, with a whole word, and says where the rest stands.
func TestNothingIsShortened(t *testing.T) {
	long := func(what string, n int) string {
		var out []string
		for i := range n {
			out = append(out, fmt.Sprintf("%s%d", what, i))
		}
		return strings.Join(out, " ")
	}
	table := report.Titled(long("title", 60)).Names("Key").Words("Words")
	table.Row("a", "b")
	b := report.Report{Title: long("boat", 300), Fingerprint: "1234", Blocks: []report.Block{
		report.Contents{}, report.Heading{Level: 1, Words: long("chapter", 200)}, table, report.Heading{Level: 2, Words: long("section", 90)}}}
	doc, err := Lay(b, letter(t))
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]int{}
	area := letter(t).Area.Grow(0.01)
	for _, s := range doc.Sheets {
		for _, x := range s.Texts {
			if strings.Contains(x.Words, "...") {
				t.Errorf("sheet %d: %q is shortened", s.Number, x.Words)
			}
			if box := x.Bounds(); box.Min.X < area.Min.X || box.Max.X > area.Max.X || x.At.Y < area.Min.Y {
				t.Errorf("sheet %d: %q leaves the sheet", s.Number, x.Words)
			}
			for _, w := range strings.Fields(x.Words) {
				said[w]++
			}
		}
	}
	for what, c := range map[string]struct{ n, times int }{"chapter": {200, 2}, "section": {90, 1}, "title": {60, 1}} {
		for i := range c.n {
			if got := said[fmt.Sprintf("%s%d", what, i)]; got != c.times {
				t.Errorf("%s%d stands %d times, want %d", what, i, got, c.times)
			}
		}
	}
	if said["(whole"] != len(doc.Sheets) {
		t.Errorf("%d feet of %d say where the name is whole", said["(whole"], len(doc.Sheets))
	}
}
