package typeset

import (
	"fmt"
	"math/rand/v2"
	"slices"
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
		{[]report.Block{report.Section("head"), figure, table}, []string{"head", "fcaption"}},
		{[]report.Block{report.Section("head"), figure, table}, []string{"ttitle", "trow11"}},
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

// TestHeld: a figure that would leave too much of a sheet blank lets the words after it go
// first, and stands at the head of the next sheet; its heading, the words and all figures in a
// row keep their order among themselves, and no word is set twice or left out.
func TestHeld(t *testing.T) {
	tall := report.Figure{Drawing: box(80, 130), Caption: "fcaption"}
	second := report.Figure{Drawing: box(80, 20), Caption: "gcaption"}
	items := strings.Split("i1 i2 i3 i4 i5 i6 i7 i8", " ")
	blocks := []report.Block{report.List{Items: strings.Split(strings.Repeat("x,", 29)+"x", ",")},
		report.Section("head"), tall, second, report.Paragraph{Words: strings.Repeat("words ", 60)}, report.List{First: 1, Items: items}, report.Section("after")}
	doc, err := Lay(report.Report{Blocks: blocks}, letter(t))
	if err != nil {
		t.Fatal(err)
	}
	on, count, high := map[string]int{}, map[string]int{}, map[string]float64{}
	for _, s := range doc.Sheets {
		for _, x := range s.Texts {
			on[x.Words], high[x.Words] = s.Number, x.At.Y
			count[x.Words]++
		}
	}
	for word, sheet := range map[string]int{"head": 1, "i1": 1, "i8": 1, "fcaption": 2, "gcaption": 2, "after": 2} {
		if on[word] != sheet || count[word] != 1 {
			t.Errorf("%q stands %d times, last on sheet %d, want once on %d", word, count[word], on[word], sheet)
		}
	}
	if !(high["head"] > high["i1"] && high["i1"] > high["i8"] && high["fcaption"] > high["gcaption"] && high["gcaption"] > high["after"]) {
		t.Errorf("the order is lost: %v", high)
	}
	blocks[4], blocks[5] = report.Paragraph{Words: "few"}, report.Paragraph{Words: "words"}
	if doc, err = Lay(report.Report{Blocks: blocks}, letter(t)); err != nil {
		t.Fatal(err)
	}
	for _, x := range doc.Sheets[0].Texts {
		if x.Words == "few" || x.Words == "head" {
			t.Errorf("%q is parted from its figure", x.Words)
		}
	}
}

// TestChapterFollows: a chapter begins on the sheet of the one before where a quarter of it is
// left, and words go before a figure that has no room there, under their heading. However much is
// left, a heading stands over its figure or over the first of the words.
func TestChapterFollows(t *testing.T) {
	steps := report.List{First: 1, Items: strings.Split("i1 i2 i3 i4 i5", " ")}
	first := 0
	for n := range 48 {
		for _, head := range []report.Heading{report.Chapter("head"), report.Section("head")} {
			lines := report.List{Items: strings.Split(strings.Repeat("x,", n)+"x", ",")}
			doc, err := Lay(report.Report{Blocks: []report.Block{lines, head, report.Figure{Drawing: box(80, 90), Caption: "fcaption"}, steps}}, letter(t))
			if err != nil {
				t.Fatal(err)
			}
			on, last := map[string]int{}, 0.0
			for _, s := range doc.Sheets {
				for _, x := range s.Texts {
					if on[x.Words] = s.Number; x.Words == "x" {
						last = x.At.Y
					}
				}
			}
			if on["head"] != on["fcaption"] && on["head"] != on["i1"] {
				t.Errorf("%d lines: the heading stands on sheet %d, its figure on %d, its words on %d", n, on["head"], on["fcaption"], on["i1"])
			}
			area := letter(t).Area
			if left := (last - area.Min.Y - footHigh) / area.H(); on["head"] == 1 && on["fcaption"] == 2 && left < looseBlank {
				first++
			} else if left > 0.26 && left < 0.34 && on["head"] != 1 { // more is left than five short lines fill
				t.Errorf("%d lines: %.0f %% of the sheet is left, and %v begins a new one", n, 100*left, head)
			}
		}
	}
	if first == 0 {
		t.Error("no words go before their figure where less than a quarter of the sheet is left")
	}
}

// TestFull: where no block takes more than a third of a sheet, no more than that stays blank
// at the foot of any but the last, chapters and figures with their tables too.
func TestFull(t *testing.T) {
	random := rand.New(rand.NewPCG(14, 15))
	table := report.Table{Title: "table", Columns: []report.Column{{Head: "head"}}, Rows: slices.Repeat([][]string{{"row"}}, 9)}
	for range 30 {
		var b report.Report
		for range 40 {
			b.Blocks = append(b.Blocks, report.Heading{Level: 1 + random.IntN(3), Words: "heading"})
			switch random.IntN(3) {
			case 0:
				b.Blocks = append(b.Blocks, report.Paragraph{Words: strings.Repeat("words ", random.IntN(300))})
			case 1:
				b.Blocks = append(b.Blocks, report.Figure{Drawing: box(80, 20+40*random.Float64()), Caption: "caption"}, table)
			default:
				b.Blocks = append(b.Blocks, table)
			}
		}
		doc, err := Lay(b, letter(t))
		if err != nil {
			t.Fatal(err)
		}
		room := letter(t).Area
		for _, s := range doc.Sheets[:len(doc.Sheets)-1] {
			low := room.Max.Y
			for _, x := range s.Texts {
				if y := x.At.Y; y > room.Min.Y+footHigh {
					low = min(low, y)
				}
			}
			if blank := (low - room.Min.Y - footHigh) / room.H(); blank > mostBlank+0.02 {
				t.Errorf("sheet %d: %.0f %% of it stays blank", s.Number, 100*blank)
			}
		}
	}
}
