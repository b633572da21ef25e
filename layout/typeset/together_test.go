package typeset

import (
	"fmt"
	"strings"
	"testing"

	"ribwright/layout/report"
)

// TestTogether: wherever on a sheet they come to stand, a heading is on the sheet of what it
// heads, through headings and cautions under it, and a short table, a caution and a short
// item of a list are never parted.
func TestTogether(t *testing.T) {
	table := report.Table{Title: "ttitle", Note: "tnote " + strings.Repeat("words ", 30), Columns: []report.Column{{Head: "thead"}}}
	for i := range 12 {
		table.Rows = append(table.Rows, []string{fmt.Sprintf("trow%d", i)})
	}
	caution := report.Caution{Words: "cfirst " + strings.Repeat("words ", 60) + "clast"}
	list := report.List{First: 1, Items: []string{"ifirst " + strings.Repeat("words ", 50) + "ilast"}}
	figure := report.Figure{Drawing: box(80, 90), Caption: "fcaption"}
	for _, c := range []struct {
		blocks []report.Block
		words  []string
	}{
		{[]report.Block{report.Section("head"), table}, []string{"head", "ttitle", "trow0", "trow11", "tnote"}},
		{[]report.Block{report.Section("head"), report.Heading{Level: 3, Words: "under"}, figure}, []string{"head", "under", "fcaption"}},
		{[]report.Block{report.Section("head"), caution, list}, []string{"head", "cfirst", "clast"}},
		{[]report.Block{report.Section("head"), figure, table}, []string{"head", "fcaption", "ttitle", "trow11"}},
		{[]report.Block{list}, []string{"ifirst", "ilast"}},
	} {
		for lines := range 60 {
			blocks := append([]report.Block{report.List{Items: strings.Split(strings.Repeat("x,", lines)+"x", ",")}}, c.blocks...)
			doc, err := Lay(report.Report{Blocks: blocks}, letter(t))
			if err != nil {
				t.Fatal(err)
			}
			on := map[string]int{}
			for _, s := range doc.Sheets {
				for _, x := range s.Texts {
					for _, w := range strings.Fields(x.Words) {
						on[w] = s.Number
					}
				}
			}
			for _, w := range c.words {
				if on[w] == 0 || on[w] != on[c.words[0]] {
					t.Errorf("%d lines before: %q on sheet %d, %q on %d", lines, c.words[0], on[c.words[0]], w, on[w])
				}
			}
		}
	}
}
