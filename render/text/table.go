package text

import (
	"fmt"
	"slices"
	"strings"

	"ribwright/layout"
	"ribwright/layout/report"
)

const (
	gutter    = 2  // letters between two columns
	leastText = 12 // letters that a column of words keeps where there is a choice
)

// table sets rows under heads. One that is too wide is set in parts that each begin
// with its first column; a part of two columns that is still too wide has its cells
// broken.
func (p *page) table(t report.Table) {
	wide, ok := t.Widths(room(leastText))
	if a, b, parts := t.Halves(); !ok && parts {
		p.table(a)
		p.table(b)
		return
	}
	if !ok {
		t = broken(t)
		wide, _ = t.Widths(room(1))
	}
	p.said(1, hang, t.Title)
	if plain(t.Title) == "" {
		p.air(1)
	}
	if t.Headed() {
		p.row(t, wide, t.Heads(), true)
		p.line(strings.Repeat("-", whole(wide)))
	}
	for _, r := range t.Rows {
		p.row(t, wide, r, false)
	}
	p.said(1, "", t.Note)
}

// broken is the table with cells that may be broken in every column.
func broken(t report.Table) report.Table {
	t.Columns = slices.Clone(t.Columns)
	for i := range t.Columns {
		t.Columns[i].Text = true
	}
	return t
}

// room is the width of a page with columns of words of least letters.
func room(least float64) report.Room {
	return report.Room{
		Wide: Wide, Gutter: gutter, Least: least, Step: 1,
		Of:    func(words string) float64 { return float64(letters(plain(words))) },
		Lines: func(words string, wide float64) int { return len(wrap(words, int(wide))) },
	}
}

// whole is the width of a table in letters.
func whole(wide []float64) int {
	sum := -gutter
	for _, w := range wide {
		sum += int(w) + gutter
	}
	return max(sum, 0)
}

// row sets one row in as many lines as its tallest cell takes; heads sink to the
// last of them.
func (p *page) row(t report.Table, wide []float64, words []string, heads bool) {
	cells, tallest := make([][]string, len(words)), 0
	for i, w := range words {
		cells[i] = wrap(w, int(wide[i]))
		if i == 0 && !heads {
			cells[i] = hung(w, int(wide[i]))
		}
		tallest = max(tallest, len(cells[i]))
	}
	for k := range tallest {
		line := ""
		for i, cell := range cells {
			words, width, at := "", int(wide[i]), k
			if heads {
				at -= tallest - len(cell)
			}
			if at >= 0 && at < len(cell) {
				words = cell[at]
			}
			if t.Columns[i].Align != layout.Right {
				width = -width
			}
			line += fmt.Sprintf("%*s%*s", width, words, gutter, "")
		}
		p.line(line)
	}
}

// hung breaks words into lines, all but the first set in where there is room for it:
// in the first column that shows where a row begins.
func hung(words string, wide int) []string {
	lines := wrap(words, wide)
	if len(lines) < 2 || wide < leastText {
		return lines
	}
	lines = wrap(words, wide-len(hang))
	for i := range lines[1:] {
		lines[i+1] = hang + lines[i+1]
	}
	return lines
}
