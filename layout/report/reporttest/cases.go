// Package reporttest holds the reports that every writer is tried with: each kind of
// block, with awkward values. The package itself is for tests alone.
package reporttest

import (
	"embed"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"ribwright/geometry/finding"
	"ribwright/layout"
	"ribwright/layout/report"
)

// Case is a report with what every writer makes of it, in testdata/NAME.txt.
type Case struct {
	Name   string
	Report report.Report
	Parted bool // its table is too wide for 80 letters: the first column is said again
}

//go:embed testdata/*.txt
var files embed.FS

// Check compares what a writer made with the section of the case's file that bears
// the writer's name. What differs is shown whole, to be read and put into the file.
func (c Case) Check(t testing.TB, writer, got string) {
	t.Helper()
	want, found := "", false
	src, err := files.ReadFile("testdata/" + c.Name + ".txt")
	if err != nil {
		t.Error(err)
	}
	for _, f := range txtar.Parse(src).Files {
		if f.Name == writer {
			want, found = string(f.Data), true
		}
	}
	if got != "" && !strings.HasSuffix(got, "\n") {
		got += "\n"
	}
	if !found || got != want {
		t.Errorf("%s.txt has another section:\n-- %s --\n%s", c.Name, writer, got)
	}
}

// Cases are all kinds of blocks, each with values that are hard to set.
func Cases() []Case {
	of := func(b ...report.Block) report.Report { return report.Report{Blocks: b} }
	return []Case{
		{Name: "title", Report: report.Report{Title: "Brook", Kind: "build book", Fingerprint: "c71a0644", Blocks: []report.Block{report.Heading{Level: 1, Words: "Ribs"}}}},
		{Name: "headings", Report: of(
			report.Heading{Level: 1, Words: "Lashings and skin"}, report.Paragraph{Words: "Under a chapter."},
			report.Heading{Level: 2, Words: "Cloth"}, report.Heading{Level: 3, Words: "Seam"}, report.Paragraph{Words: "Under a part of a section."},
			report.Heading{Level: 2, Words: strings.Repeat("A section of many words ", 5)})},
		{Name: "paragraphs", Report: of(report.Paragraph{Words: "A short one."}, report.Paragraph{Words: strings.Repeat("Pull a tape over it. ", 9)}, report.Paragraph{})},
		{Name: "lists", Report: of(
			report.List{Items: []string{"Print the patterns.", strings.Repeat("Sort the boards. ", 8)}},
			report.List{First: 9, Items: []string{"Saw the stems.", strings.Repeat("Shape the breasthooks. ", 5), "Measure both diagonals."}})},
		{Name: "cautions", Report: of(
			report.Caution{Words: "Steam scalds worse than boiling water.", Says: "common practice, no source"},
			report.Caution{Words: strings.Repeat("Brush, never spray. ", 6)})},
		{Name: "table", Report: of(table())},
		{Name: "table-bare", Report: of(report.Titled("").Words("", "").Filled("Tools", "saw, plane, square", "Check", strings.Repeat("gauge the stock at three places ", 4)))},
		{Name: "table-empty", Report: of(report.Titled("Scarfs").Names("Stick").Numbers("Length, mm"), report.Paragraph{Words: "After it."})},
		{Name: "table-words", Report: of(words())},
		{Name: "table-wide", Report: of(wide()), Parted: true},
		{Name: "table-forced", Report: of(report.Titled("").Names("File").Numbers("Figure").Filled(strings.Repeat("name", 12), strings.Repeat("12345", 11)))},
		{Name: "findings", Report: of(report.Findings{List: found()}, report.Findings{List: found(), Judged: true, Note: "More is easier."})},
		{Name: "figure", Report: of(report.Figure{Drawing: drawing("Plan view"), Caption: "Plan view, 1:24, bow to the right.", About: "View from above: both gunwales and the middle line."})},
		{Name: "contents", Report: of(report.Heading{Level: 2, Words: "Contents"}, report.Contents{}, report.Heading{Level: 1, Words: "Ribs"}, report.Heading{Level: 1, Words: "Keel & stringers"})},
		{Name: "long-words", Report: Everything(strings.Repeat("long", 30))},
		{Name: "hostile", Report: Everything(Hostile()[0])},
		{Name: "codes", Report: Everything("<b>\x00\x1b[31m\u202ered\x9b\u2066</b>\t\r\n+1 & 2")},
		{Name: "empty", Report: Everything("")},
	}
}

// Everything is a report of every kind of block, each saying the same.
func Everything(words string) report.Report {
	return report.Report{Title: words, For: words, Fingerprint: words, Blocks: []report.Block{
		report.Heading{Level: 1, Words: words}, report.Heading{Level: 3, Words: words}, report.Contents{}, report.Paragraph{Words: words},
		report.List{Items: []string{words}}, report.List{First: 4, Items: []string{words}}, report.Caution{Words: words, Says: words},
		report.Table{Title: words, Columns: []report.Column{{Head: words, Text: true}, {Head: words, Align: layout.Right}}, Rows: [][]string{{words, words}}, Note: words},
		report.Figure{Drawing: drawing(words), Caption: words, About: words},
		report.Findings{List: finding.List{{About: words, Text: words, Standing: finding.Standing(words), Verdict: finding.Caution}}},
	}}
}

// Hostile are words that would be markup, or act on what stands round them.
func Hostile() []string {
	return []string{
		`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `'--></style><svg onload=alert(1)>`, "]]> &lt; &#60;script&#62; &#43;",
		"\u202eevil\u202c \u2066x\u2069", "מפרש שלי", "<b>\x00\x1b[31m</b>", strings.Repeat("long", 500), "{{.}} %s %d ${x}", "\xff\xfe<i>",
		"\x1b]0;title\x07\u009b2J\r\n\v\f\u0085\u2028 tab\there",
	}
}

func drawing(words string) layout.Drawing {
	d := layout.Drawing{Title: words}
	d.Straight(layout.Mark, 0, 0, 10, 10)
	d.Write(0, 0, 3, layout.Left, words)
	return d
}

// found is a danger, a fact and a verdict with its cure.
func found() finding.List {
	var l finding.List
	l.Say("trim", finding.Memory, "floats level; a little by the stern steers well")
	l.Warn("lift", finding.Arithmetic, "the windward hull leaves the water")
	return append(l, finding.Finding{About: "stringer 2, ends", Text: "bends further than it can", Verdict: finding.Weak, Cure: "4.9 mm thinner there to bend it dry", Measure: finding.Measure{Value: 13.2, Limit: 38, Unit: "radius/thickness"}})
}

// table has a column of each kind, heads of several lines and a note.
func table() report.Table {
	return report.Titled("Mortises, mm").Names("Rib").Words("Part of the boat").Numbers("From midship along the stock", "Lean").Noted(strings.Repeat("Lean: the bottom of the slot goes outboard or inboard. ", 2)).Filled("A11", "stern", "-1401.8", "-5.0", "M", "", "0.0", "+2.0", "F11", "bow", "1401.8", "-")
}

// words is a table whose columns of words must give way.
func words() report.Table {
	return report.Titled("").Words("Part", "Finding", "Standing of the rule").Filled("gunwale at rest, station -900 mm", strings.Repeat("a little by the stern steers well, ", 3), "borrowed yardstick, not a rule for canoes", "keel", "holds", "from memory")
}

// wide is a table of more columns of figures than a line has room for.
func wide() report.Table {
	t := report.Titled("Offsets, mm").Names("Station").Noted("Under the last part.").Filled("sheer", "keel")
	for _, s := range strings.Split("0 1/2 1 2 3 4 5 6 7 8 9", " ") {
		t = t.Numbers(s)
		t.Rows[0], t.Rows[1] = append(t.Rows[0], "1234.5"), append(t.Rows[1], "0.0")
	}
	return t
}
