package typeset

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/report"
)

// gutter is the air between two columns, mm.
const gutter = 3.2

// leastText is how narrow a column of words may become, mm.
const leastText = 24.0

// underRule is the air under the rule below the heads, mm: with what a row has over its
// letters it keeps the first row off that line.
const underRule = 0.8

// table sets rows under heads that are said again on every sheet. One that is too
// wide is set in parts that each begin with its first column.
func (s *setter) table(t report.Table) {
	wide, ok := t.Widths(tableRoom(s.room.W()))
	if a, b, parts := t.Halves(); !ok && parts {
		s.table(a)
		s.table(b)
		return
	}
	if !ok && s.err == nil {
		s.err = fmt.Errorf("the table %q is wider than the paper's %.0f mm", t.Title, s.room.W())
	}
	if s.err != nil {
		return
	}
	s.need(s.begins(t, wide))
	s.tableHead(t, wide, t.Title)
	for i, row := range t.Rows {
		if s.y-s.withLast(t, wide, i) < s.room.Min.Y && i > 0 {
			s.turn()
			title := t.Title
			if title != "" {
				title += ", continued"
			}
			s.tableHead(t, wide, title)
		}
		s.row(t, wide, row)
	}
	s.rule(wide)
	if t.Note != "" {
		s.space(0.8)
		s.text(s.room.Min.X, min(measure, s.room.W()), t.Note)
	}
	s.space(2 * air)
}

// wholeTable is the share of a sheet up to which a table is not parted.
const wholeTable = mostBlank

// begins is how much room a table wants where it begins, mm: a short one stands whole with
// its note, of a long one the heads and two rows.
func (s *setter) begins(t report.Table, wide []float64) float64 {
	head, rows := s.headsHigh(t, wide), 0.0
	for _, row := range t.Rows {
		if rows += rowHigh(t, wide, row); rows > s.room.H() {
			break
		}
	}
	if whole := head + rows + s.noteHigh(t); whole <= wholeTable*s.room.H() {
		return whole
	}
	first := 0.0
	if len(t.Rows) > 0 {
		first = rowHigh(t, wide, t.Rows[0])
	}
	return head + 2*first + leading
}

// noteHigh is the height of a table's note, mm.
func (s *setter) noteHigh(t report.Table) float64 {
	if t.Note == "" {
		return 0
	}
	return 1 + float64(len(lettering.Wrap(t.Note, small, min(measure, s.room.W()))))*leading
}

// tableRoom is what small lettering makes of a width in mm.
func tableRoom(wide float64) report.Room {
	return report.Room{
		Wide: wide, Gutter: gutter, Least: leastText, Step: 1,
		Of:    func(words string) float64 { return lettering.Width(lettering.Safe(words), small) },
		Lines: func(words string, wide float64) int { return len(lettering.Wrap(words, small, wide+1e-6)) },
	}
}

// withLast is the height of a row and of what must not be parted from it: the last
// row stays with the one before it, and the note with the last.
func (s *setter) withLast(t report.Table, wide []float64, i int) float64 {
	high := rowHigh(t, wide, t.Rows[i])
	if i == len(t.Rows)-2 {
		high += rowHigh(t, wide, t.Rows[i+1])
	}
	if i >= len(t.Rows)-2 {
		high += s.noteHigh(t)
	}
	return high
}

// cells breaks a row into lines.
func cells(t report.Table, wide []float64, row []string) [][]string {
	out := make([][]string, len(row))
	for i, words := range row {
		out[i] = lettering.Wrap(words, small, wide[i]+1e-6)
	}
	return out
}

func tallest(lines [][]string) int {
	most := 1
	for _, l := range lines {
		most = max(most, len(l))
	}
	return most
}

func rowHigh(t report.Table, wide []float64, row []string) float64 {
	return float64(tallest(cells(t, wide, row)))*leading + 0.4
}

func (s *setter) headsHigh(t report.Table, wide []float64) float64 {
	high := 0.0
	if t.Headed() {
		high = rowHigh(t, wide, t.Heads()) + underRule
	}
	if t.Title != "" {
		high += leading*float64(len(lettering.Wrap(t.Title, small, s.room.W()))) + 1
	}
	return high
}

func (s *setter) tableHead(t report.Table, wide []float64, title string) {
	if title != "" {
		for _, l := range lettering.Wrap(title, small, s.room.W()) {
			s.line(s.room.Min.X, small, leading, layout.Left, l)
		}
		s.y -= 1
	}
	s.rule(wide)
	if t.Headed() {
		s.row(t, wide, t.Heads())
		s.rule(wide)
		s.y -= underRule
	}
}

// rule draws a thin line over the width of the table.
func (s *setter) rule(wide []float64) {
	right := -gutter
	for _, w := range wide {
		right += w + gutter
	}
	s.sheet().Line(layout.Tick, geometry.Point{X: s.room.Min.X, Y: s.y}, geometry.Point{X: s.room.Min.X + right, Y: s.y})
}

func (s *setter) row(t report.Table, wide []float64, row []string) {
	lines := cells(t, wide, row)
	x := s.room.Min.X
	for i, cell := range lines {
		at := x
		if t.Columns[i].Align == layout.Right {
			at += wide[i]
		}
		for k, words := range cell {
			y := s.y - float64(k+1)*leading + (leading-small)*0.4
			s.sheet().Write(geometry.Point{X: at, Y: y}, small, t.Columns[i].Align, words)
		}
		x += wide[i] + gutter
	}
	s.y -= float64(tallest(lines))*leading + 0.4
	s.fresh = false
}
