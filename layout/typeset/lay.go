// Package typeset sets a report on sheets of paper: its blocks flow down them with
// running feet.
package typeset

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
	"ribwright/layout/report"
)

// Sizes of setting, mm.
const (
	small    = lettering.MinHeight // all that is read at the bench
	leading  = 4.2                 // between lines of small lettering
	air      = 2.0                 // between blocks
	footHigh = 7.0                 // of the running foot
	measure  = 150.0               // the longest line of running text: some eighty letters
)

// heads are the heights of headings by level, and the room over and under them.
func heads(level int) (high, over, under float64) {
	switch level {
	case 1:
		return 5, 8, 3.2
	case 2:
		return 3.6, 4, 1.8
	}
	return 3, 3, 1.2
}

// Lay sets the book on sheets of the paper.
//
// Errors: margins that leave less than the width of a figure; a table that is too
// wide or a figure that is too large for the paper, by its title.
func Lay(b report.Report, p paper.Sheet) (layout.Document, error) {
	if p.Area.W() < report.Wide {
		return layout.Document{}, fmt.Errorf("the margins leave %.0f mm of %s; accepted: %.0f mm or more between them", p.Area.W(), p.Size.Name, report.Wide)
	}
	b.Blocks = laidOut(b.Blocks)
	var chapters []chapter
	s := newSetter(b, p, nil)
	for range 3 { // first to find the chapters, then their sheets, then to say them
		s = newSetter(b, p, chapters)
		for i, block := range b.Blocks {
			s.rest = b.Blocks[i+1:]
			s.set(block)
		}
		s.release()
		if s.err != nil {
			return layout.Document{}, s.err
		}
		chapters = s.chapters
	}
	doc := layout.Document{Title: b.Title, Paper: layout.Paper{Name: p.Size.Name, W: p.W, H: p.H}, Sheets: s.sheets}
	for i := range doc.Sheets {
		s.foot(&doc.Sheets[i], i+1, len(doc.Sheets))
	}
	return doc, nil
}

// chapter is where a heading of level 1 stands.
type chapter struct {
	words string
	sheet int // from 1
}

// setter flows blocks down sheets.
type setter struct {
	book     report.Report
	room     geometry.Box
	sheets   []layout.Sheet
	y        float64   // the lowest that is taken
	known    []chapter // from the run before
	chapters []chapter
	loose    bool            // too much of the sheet was left where the heading over this stands
	fresh    bool            // nothing stands on the current sheet yet
	rest     []report.Block  // what comes after the block that is set
	held     []report.Figure // that stand on the next sheet
	footing  []string        // what the foot of each sheet says
	err      error
}

// laidOut has findings as the blocks that they are made of, so that a heading over them knows
// what stays with it.
func laidOut(blocks []report.Block) (out []report.Block) {
	for _, b := range blocks {
		if f, ok := b.(report.Findings); ok {
			out = append(out, f.Blocks()...)
			continue
		}
		out = append(out, b)
	}
	return out
}

// footed are the lines of a foot. A name of many lines ends with a whole word, and says
// where all of it is.
func footed(words string, wide float64) []string {
	const most, rest, count = 3, " (whole on the first sheet)", 30.0 // lines; mm for the sheet's number
	lines := lettering.Wrap(words, small, wide-count)
	if len(lines) > most {
		lines = lettering.Wrap(words, small, wide-count-lettering.Width(rest, small))[:most]
		lines[most-1] += rest
	}
	if len(lines) == 0 {
		return []string{""}
	}
	return lines
}

func newSetter(b report.Report, p paper.Sheet, known []chapter) *setter {
	room := p.Area
	foot := footed(b.Foot(), room.W())
	room.Min.Y += footHigh + leading*float64(len(foot)-1)
	s := &setter{book: b, room: room, known: known, footing: foot}
	s.turn()
	return s
}

// turn begins a new sheet.
func (s *setter) turn() {
	s.sheets = append(s.sheets, layout.Sheet{})
	s.y, s.fresh = s.room.Max.Y, true
	s.release()
}

func (s *setter) sheet() *layout.Sheet { return &s.sheets[len(s.sheets)-1] }

// need turns the sheet unless high mm are left.
func (s *setter) need(high float64) {
	for s.y-high < s.room.Min.Y && !s.fresh { // a sheet that is begun may be full of figures
		s.turn()
	}
}

// want turns the sheet unless high mm are left. Where that would leave too much of it
// blank, least mm are enough.
func (s *setter) want(high, least float64) {
	if s.loose = s.loose || s.blank(looseBlank); s.loose {
		high = least
	}
	s.need(high)
}

// blank reports whether more of the sheet is left than a share of it.
func (s *setter) blank(share float64) bool { return s.y-s.room.Min.Y > share*s.room.H() }

// line sets one line of lettering whose capitals are high mm, and takes lead mm.
func (s *setter) line(x, high, lead float64, a layout.Align, words string) {
	s.need(lead)
	s.y -= lead
	s.fresh = false
	s.sheet().Write(geometry.Point{X: x, Y: s.y + (lead-high)*0.3}, high, a, words)
}

// space leaves some air, none at the head of a sheet.
func (s *setter) space(mm float64) {
	if !s.fresh {
		s.y -= mm
	}
}

func (s *setter) set(b report.Block) {
	if !flows(b) {
		if _, too := b.(report.Figure); !too {
			s.release()
		}
	}
	switch b := b.(type) {
	case report.Heading:
		s.heading(b)
	case report.Paragraph:
		s.paragraph(b.Words)
	case report.List:
		s.list(b)
	case report.Caution:
		s.caution(b)
	case report.Table:
		s.table(b)
	case report.Figure:
		s.figure(b)
	case report.Contents:
		s.contents()
	default:
		panic(fmt.Sprintf("a block of no known kind: %T", b))
	}
	if _, ok := b.(report.Heading); !ok {
		s.loose = false
	}
}

// foot is the running foot of a sheet.
func (s *setter) foot(sheet *layout.Sheet, number, of int) {
	y := s.room.Min.Y - footHigh + 1
	top := s.room.Min.Y - 2
	count := fmt.Sprintf("sheet %d of %d", number, of)
	sheet.Line(layout.Tick, geometry.Point{X: s.room.Min.X, Y: top}, geometry.Point{X: s.room.Max.X, Y: top})
	sheet.Write(geometry.Point{X: s.room.Max.X, Y: y}, small, layout.Right, count)
	for i, l := range s.footing {
		sheet.Write(geometry.Point{X: s.room.Min.X, Y: y - leading*float64(i)}, small, layout.Left, l)
	}
	sheet.Number = number
	sheet.Label = fmt.Sprint(number)
}
