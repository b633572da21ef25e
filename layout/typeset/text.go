package typeset

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/report"
)

// longestHeading is how many lines of a heading are set in its own letters; a longer one is
// set in those of the text, for a title may have pages.
const longestHeading = 4

// The shares of a sheet that may stay blank at its foot. Our own choice.
const (
	someBlank  = 1.0 / 6 // for a chapter to begin on a new sheet, or a figure to stand before its words
	looseBlank = 1.0 / 4 // for a figure to stand with its heading and its table
	mostBlank  = 1.0 / 3 // for a table to stand whole
)

func (s *setter) heading(h report.Heading) {
	_, over, under := heads(h.Level)
	if h.Level == 1 && !s.blank(someBlank) {
		s.turn()
	}
	lines, high := s.headed(h)
	itself := s.headHigh(h)
	s.want(s.under(itself, s.start, s.rest), s.under(itself, s.least, s.rest)) // some of what it heads stays with it
	s.space(over)
	sheet := len(s.sheets)
	for _, l := range lines {
		s.line(s.room.Min.X, high, headLead*high, layout.Left, l)
	}
	s.y -= under
	if h.Level <= 2 && len(lines) > 0 {
		s.sheet().Outline = append(s.sheet().Outline, layout.Bookmark{Title: lettering.Safe(h.Words), Level: h.Level - 1})
	}
	if h.Level == 1 {
		s.chapters = append(s.chapters, chapter{h.Words, sheet})
	}
}

// under is the room that a heading wants with what a rule says of what comes under it, mm.
func (s *setter) under(heading float64, rule func([]report.Block) float64, rest []report.Block) float64 {
	s.y -= heading
	defer func() { s.y += heading }()
	return heading + rule(rest)
}

// headLead is the distance between lines of a heading, as a share of its letters.
const headLead = 1.7

// headed returns the lines of a heading and the height of their letters, mm.
func (s *setter) headed(h report.Heading) (lines []string, high float64) {
	high, _, _ = heads(h.Level)
	if lines = lettering.Wrap(h.Words, high, s.room.W()); len(lines) > longestHeading {
		high = small
		lines = lettering.Wrap(h.Words, high, s.room.W())
	}
	return lines, high
}

// headHigh is the height of a heading with its air, mm.
func (s *setter) headHigh(h report.Heading) float64 {
	_, over, under := heads(h.Level)
	lines, high := s.headed(h)
	return over + float64(len(lines))*headLead*high + under
}

// text sets words in lines from x on, as wide as given.
func (s *setter) text(x, wide float64, words string) {
	lines := lettering.Wrap(words, small, wide)
	s.need(float64(pair(lines)) * leading)
	for i, l := range lines {
		s.last(len(lines) - i)
		s.line(x, small, leading, layout.Left, l)
	}
}

// pair is how many lines stand together where words begin: two, or all of three.
func pair(lines []string) int {
	if len(lines) == 3 {
		return 3
	}
	return min(len(lines), 2)
}

// last keeps the last two lines of words on one sheet, where so many are left.
func (s *setter) last(left int) {
	if left == 2 {
		s.need(2 * leading)
	}
}

// indent is how far the items of a list stand in, barred a caution, mm.
const (
	indent = 8.0
	barred = 4.0
)

func (s *setter) paragraph(words string) {
	s.text(s.room.Min.X, min(measure, s.room.W()), words)
	s.space(air)
}

func (s *setter) list(l report.List) {
	for i, item := range l.Items {
		lines := lettering.Wrap(item, small, min(measure, s.room.W())-indent)
		s.need(itemHigh(lines))
		for k, words := range lines {
			s.last(len(lines) - k)
			s.line(s.room.Min.X+indent, small, leading, layout.Left, words)
			if k == 0 {
				s.sheet().Write(geometry.Point{X: s.room.Min.X + indent - 2, Y: s.y + (leading-small)*0.3}, small, layout.Right, l.Mark(i))
			}
		}
		s.space(0.8)
	}
	s.space(air - 0.8)
}

// itemHigh is how much of an item of a list stays on one sheet, mm: all of one that is short.
func itemHigh(lines []string) float64 {
	if len(lines) > 6 {
		return 2 * leading
	}
	return float64(len(lines)) * leading
}

// caution is set off by a heavy bar beside it.
func (s *setter) caution(c report.Caution) {
	lines := s.cautioned(c)
	s.need(float64(len(lines)) * leading)
	top := s.y
	on := len(s.sheets)
	for _, l := range lines {
		s.line(s.room.Min.X+barred, small, leading, layout.Left, l)
	}
	if on == len(s.sheets) {
		for _, x := range []float64{0.4, 0.9} {
			s.sheet().Line(layout.Cut, geometry.Point{X: s.room.Min.X + x, Y: top - 0.8}, geometry.Point{X: s.room.Min.X + x, Y: s.y + 0.2})
		}
	}
	s.space(air)
}

// cautioned returns the lines of a caution.
func (s *setter) cautioned(c report.Caution) []string {
	return lettering.Wrap(c.String(), small, min(measure, s.room.W())-barred)
}

// contents lists the chapters of the run before.
func (s *setter) contents() {
	wide := min(measure, s.room.W())
	for _, c := range s.known {
		number := fmt.Sprint(c.sheet)
		for i, l := range append(lettering.Wrap(c.words, small, wide-20), "") {
			if i == 0 || l != "" {
				s.line(s.room.Min.X, small, leading, layout.Left, l)
			}
		}
		s.sheet().Write(geometry.Point{X: s.room.Min.X + wide, Y: s.y + (leading-small)*0.3}, small, layout.Right, number)
	}
	s.space(air)
}

// start is how much of what comes next wants to stand with the heading over it, mm: a
// figure, a caution or a short table stands whole, of words and of long tables some lines;
// what a heading heads stands with that too, and so does what a caution warns of or a line or two
// of words lead to.
func (s *setter) start(rest []report.Block) float64 {
	if len(rest) == 0 {
		return 0
	}
	switch b := rest[0].(type) {
	case report.Figure:
		high := s.shown(b, rest[1:])
		if s.heldBack(rest, high) {
			return 3 * leading // words go first
		}
		return high
	case report.Table:
		if wide, ok := b.Widths(tableRoom(s.room.W())); ok {
			return s.begins(b, wide)
		}
	case report.Caution:
		return float64(len(s.cautioned(b)))*leading + air + min(s.start(rest[1:]), 3*leading)
	case report.Paragraph:
		if high := s.wordsHigh(b); high <= 2*leading+air {
			return high + min(s.start(rest[1:]), 6*leading)
		}
	case report.Heading:
		return s.under(s.headHigh(b), s.start, rest[1:])
	}
	return 3 * leading
}

// least is how much of what comes next must stand with the heading over it where start
// would leave too much of a sheet blank, mm: a table after a figure goes on the next one.
func (s *setter) least(rest []report.Block) float64 {
	if len(rest) > 0 {
		switch b := rest[0].(type) {
		case report.Figure:
			_, high := s.captioned(b)
			if s.heldBack(rest, high) {
				return 3 * leading
			}
			return high
		case report.Heading:
			return s.under(s.headHigh(b), s.least, rest[1:])
		}
	}
	return s.start(rest)
}

// shown is how much room a figure wants with its caption and with the table that comes
// after it, where both go on one sheet, mm.
func (s *setter) shown(f report.Figure, rest []report.Block) float64 {
	_, high := s.captioned(f)
	if len(rest) > 0 {
		if t, ok := rest[0].(report.Table); ok {
			if both := high + air + s.start([]report.Block{t}); both <= s.room.H() {
				return both
			}
		}
	}
	return high
}

// captioned returns the lines under a figure and the height of both, mm.
func (s *setter) captioned(f report.Figure) (caption []string, high float64) {
	caption = lettering.Wrap(f.Caption, small, min(measure, s.room.W()))
	return caption, f.Drawing.Bounds().H() + 2 + float64(len(caption))*leading
}

// figure sets a drawing at its size, with its caption under it.
func (s *setter) figure(f report.Figure) {
	b := f.Drawing.Bounds()
	caption, high := s.captioned(f)
	if s.err == nil && (b.Empty() || b.W() > s.room.W()+1e-6 || high > s.room.H()) {
		s.err = fmt.Errorf("the figure %q takes %.0f x %.0f mm, the paper has %.0f x %.0f mm", f.Drawing.Title, b.W(), high, s.room.W(), s.room.H())
	}
	if s.err != nil {
		return
	}
	if s.holds(f, high) {
		if len(s.held) == 0 {
			s.line(s.room.Min.X, small, leading, layout.Left, fmt.Sprintf("The drawing for this is on sheet %d.", len(s.sheets)+1))
			s.space(air)
		}
		s.held = append(s.held, f)
		return
	}
	s.want(s.shown(f, s.rest), high)
	s.draw(f, caption)
}

// draw sets a figure where the sheet is taken to.
func (s *setter) draw(f report.Figure, caption []string) {
	b := f.Drawing.Bounds()
	m := geometry.Shift(s.room.Min.X-b.Min.X, s.y-b.Max.Y)
	for _, k := range f.Drawing.Strokes {
		s.sheet().Strokes = append(s.sheet().Strokes, layout.Stroke{Pen: k.Pen, Path: k.Path.Map(m)})
	}
	for _, t := range f.Drawing.Texts {
		t.At = m.Apply(t.At)
		s.sheet().Texts = append(s.sheet().Texts, t)
	}
	s.y -= b.H() + 2
	s.fresh = false
	for _, l := range caption {
		s.line(s.room.Min.X, small, leading, layout.Left, l)
	}
	s.space(air)
}
