package typeset

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"ribwright/geometry"
	"ribwright/geometry/finding"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
	"ribwright/layout/report"
)

func letter(t *testing.T) paper.Sheet {
	t.Helper()
	s, err := paper.Setup{Size: paper.Letter(), Margins: paper.HomeMargins()}.Sheet(false)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func box(w, h float64) layout.Drawing {
	d := layout.Drawing{Title: "box"}
	d.Straight(layout.Cut, 0, 0, w, h)
	d.Write(w/2, h/2, 3, layout.Middle, "middle")
	return d
}

// TestFindings: findings are set as the blocks that they are for every writer.
func TestFindings(t *testing.T) {
	var l finding.List
	l.Say("trim", finding.Memory, "floats level")
	l.Warn("lift", finding.Arithmetic, "the windward hull leaves the water")
	for _, f := range []report.Findings{{List: l}, {List: l, Judged: true, Note: "more is easier"}} {
		a, err := Lay(report.Report{Blocks: []report.Block{f}}, letter(t))
		if err != nil {
			t.Fatal(err)
		}
		b, err := Lay(report.Report{Blocks: f.Blocks()}, letter(t))
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(a, b) || len(a.Sheets[0].Texts) < 8 {
			t.Errorf("%+v\nwant\n%+v", a, b)
		}
	}
}

// TestFindingsUnderHeading: what heads findings goes with them to the next sheet, wherever on
// one it would begin.
func TestFindingsUnderHeading(t *testing.T) {
	var l finding.List
	for i := range 6 {
		l.Say(fmt.Sprint("part ", i), finding.Memory, "holds")
	}
	for lines := range 45 {
		doc, err := Lay(report.Report{Blocks: append(slices.Repeat([]report.Block{report.Paragraph{Words: "words"}}, lines), report.Section("Head"), report.Findings{List: l, Judged: true})}, letter(t))
		if err != nil {
			t.Fatal(err)
		}
		for n, sheet := range doc.Sheets {
			says := func(words string) bool {
				return slices.ContainsFunc(sheet.Texts, func(w layout.Text) bool { return w.Words == words })
			}
			if says("Head") && !says("part 0") {
				t.Errorf("after %d lines the heading stands alone on sheet %d", lines, n+1)
			}
		}
	}
}

// TestEveryWord sets random blocks and finds every word again, once for each time
// it was said, inside the margins and on no other text.
func TestEveryWord(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	for run := range 20 {
		var b report.Report
		b.Title, b.Fingerprint = "Title", "abcd"
		said := 0
		word := func(n int) string {
			var out []string
			for range 1 + random.IntN(n) {
				out = append(out, fmt.Sprintf("w%05d", said))
				said++
			}
			return strings.Join(out, " ")
		}
		for range 40 {
			switch random.IntN(7) {
			case 0:
				b.Blocks = append(b.Blocks, report.Heading{Level: 1 + random.IntN(3), Words: word(3)})
			case 1:
				b.Blocks = append(b.Blocks, report.Paragraph{Words: word(120)})
			case 2:
				b.Blocks = append(b.Blocks, report.List{First: random.IntN(2) * 7, Items: []string{word(40), word(3)}})
			case 3:
				b.Blocks = append(b.Blocks, report.Caution{Words: word(60), Says: word(4)})
			case 4:
				b.Blocks = append(b.Blocks, report.Figure{Drawing: box(10+150*random.Float64(), 10+120*random.Float64()), Caption: word(30)})
			default:
				tab := report.Table{Title: "", Note: word(12), Columns: []report.Column{{Head: word(2)}, {Head: word(5), Text: true}, {Head: word(4), Align: layout.Right}}}
				for range random.IntN(90) {
					tab.Rows = append(tab.Rows, []string{word(1), word(30), word(2)})
				}
				b.Blocks = append(b.Blocks, tab)
			}
		}
		doc, err := Lay(b, letter(t))
		if err != nil {
			t.Fatal(err)
		}
		found := map[string]int{}
		for i, s := range doc.Sheets {
			clean(t, fmt.Sprintf("run %d, sheet %d", run, i+1), s, letter(t).Area)
			for _, x := range s.Texts {
				for _, w := range strings.Fields(x.Words) {
					found[strings.Trim(w, "()")]++
				}
			}
		}
		for i := range said {
			if w := fmt.Sprintf("w%05d", i); found[w] == 0 {
				t.Fatalf("run %d: %q is not on the sheets", run, w)
			}
		}
	}
}

func clean(t *testing.T, where string, s layout.Sheet, area geometry.Box) {
	t.Helper()
	for i, x := range s.Texts {
		b := x.Bounds()
		if in := area.Grow(0.01); !in.Holds(b.Min) || !in.Holds(b.Max) {
			t.Errorf("%s: %q leaves the margins", where, x.Words)
		}
		for _, o := range s.Texts[:i] {
			if b.Grow(-0.05).Overlaps(o.Bounds().Grow(-0.05)) {
				t.Errorf("%s: %q lies on %q", where, x.Words, o.Words)
			}
		}
	}
}

// TestRefused names what does not fit.
func TestRefused(t *testing.T) {
	wide := report.Table{Title: "Far too wide", Columns: []report.Column{{Head: "number"}}, Rows: [][]string{{strings.Repeat("1234567890", 20)}}}
	for _, c := range []struct {
		block report.Block
		want  string
	}{
		{wide, `the table "Far too wide" is wider than the paper's`},
		{report.Figure{Drawing: box(400, 10), Caption: ""}, `the figure "box" takes 400 x`},
		{report.Figure{Drawing: box(100, 400), Caption: ""}, `the figure "box" takes 100 x`},
		{report.Figure{Drawing: layout.Drawing{Title: "none"}, Caption: ""}, `the figure "none"`},
	} {
		if _, err := Lay(report.Report{Blocks: []report.Block{c.block}}, letter(t)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
	s, err := paper.Setup{Size: paper.Letter(), Margins: paper.Margins{Left: 25, Right: 25, Top: 10, Bottom: 10}}.Sheet(false)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Lay(report.Report{}, s); err == nil || !strings.Contains(err.Error(), "accepted: 170 mm") {
		t.Errorf("narrow margins: %v", err)
	}
}

// TestManyColumns sets a table of forty columns in parts, each with the first
// column, and every cell once.
func TestManyColumns(t *testing.T) {
	var tab report.Table
	var row []string
	for i := range 40 {
		tab.Columns = append(tab.Columns, report.Column{Head: fmt.Sprintf("h%d", i), Align: layout.Right})
		row = append(row, fmt.Sprintf("cell%02d", i))
	}
	tab.Rows = [][]string{row}
	doc, err := Lay(report.Report{Blocks: []report.Block{tab}}, letter(t))
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]int{}
	for _, x := range doc.Sheets[0].Texts {
		found[x.Words]++
	}
	for i, cell := range row {
		if n := found[cell]; n != 1 && i > 0 || n < 2 && i == 0 {
			t.Errorf("%s stands %d times", cell, n)
		}
	}
	clean(t, "sheet 1", doc.Sheets[0], letter(t).Area)
}

// TestHostileTitle sets a title of two thousand letters without a space and one of
// control characters; both stay one heading and one foot.
func TestHostileTitle(t *testing.T) {
	for _, title := range []string{strings.Repeat("W", 2000), "\x1b[31m\u202eevil\n\n", strings.Repeat("word ", 400), ""} {
		doc, err := Lay(report.Report{Title: title, Blocks: []report.Block{report.Heading{Level: 1, Words: title}, report.Paragraph{Words: title}, report.Contents{}}}, letter(t))
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range doc.Sheets {
			clean(t, fmt.Sprintf("sheet %d", i+1), s, letter(t).Area)
			for _, x := range s.Texts {
				if x.Words != lettering.Safe(x.Words) {
					t.Errorf("%q is not safe", x.Words)
				}
			}
		}
	}
}

// TestContents: the list of contents names the sheet on which each chapter stands.
func TestContents(t *testing.T) {
	var b report.Report
	b.Blocks = append(b.Blocks, report.Heading{Level: 1, Words: "First"}, report.Contents{})
	for _, c := range []string{"Second", "Third", "Fourth"} {
		b.Blocks = append(b.Blocks, report.Heading{Level: 1, Words: c}, report.Paragraph{Words: strings.Repeat("words ", 1500)})
	}
	doc, err := Lay(b, letter(t))
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range doc.Sheets {
		for _, o := range s.Outline {
			line := ""
			for k, x := range doc.Sheets[0].Texts {
				if x.Words == o.Title && x.Height == small && k+1 < len(doc.Sheets[0].Texts) {
					line = doc.Sheets[0].Texts[k+1].Words
				}
			}
			if line != fmt.Sprint(i+1) {
				t.Errorf("%s stands on sheet %d, the list says %q", o.Title, i+1, line)
			}
		}
	}
	if len(doc.Sheets) < 4 {
		t.Errorf("%d sheets", len(doc.Sheets))
	}
}
