package typeset

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/report"
)

// longestHeading is how many lines of a heading are set; a title may have pages.
const longestHeading = 4

// chapterRoom is the share of a sheet that a chapter wants to begin on; with less
// left it turns over.
const chapterRoom = 0.55

func (s *setter) heading(h report.Heading) {
	high, over, under := heads(h.Level)
	if h.Level == 1 && s.y-s.room.Min.Y < chapterRoom*s.room.H() {
		s.turn()
	}
	lines := lettering.Wrap(h.Words, high, s.room.W())
	if len(lines) > longestHeading {
		lines = lines[:longestHeading]
		last := &lines[longestHeading-1]
		*last = lettering.Clip(*last+" ...", high, s.room.W()-high*2) + " ..."
	}
	lead := high * 1.7
	s.need(over + float64(len(lines))*lead + under + s.follows()) // some of what it heads stays with it
	s.space(over)
	sheet := len(s.sheets)
	for _, l := range lines {
		s.line(s.room.Min.X, high, lead, layout.Left, l)
	}
	s.y -= under
	if h.Level <= 2 && len(lines) > 0 {
		s.sheet().Outline = append(s.sheet().Outline, layout.Bookmark{Title: lettering.Safe(h.Words), Level: h.Level - 1})
	}
	if h.Level == 1 {
		s.chapters = append(s.chapters, chapter{h.Words, sheet})
	}
}

// text sets words in lines from x on, as wide as given.
func (s *setter) text(x, wide float64, words string) {
	lines := lettering.Wrap(words, small, wide)
	s.need(float64(min(len(lines), 2)) * leading)
	for _, l := range lines {
		s.line(x, small, leading, layout.Left, l)
	}
}

func (s *setter) paragraph(words string) {
	s.text(s.room.Min.X, min(measure, s.room.W()), words)
	s.space(air)
}

func (s *setter) list(l report.List) {
	const indent = 8.0
	for i, item := range l.Items {
		lines := lettering.Wrap(item, small, min(measure, s.room.W())-indent)
		s.need(float64(min(len(lines), 2)) * leading)
		for k, words := range lines {
			s.line(s.room.Min.X+indent, small, leading, layout.Left, words)
			if k == 0 {
				s.sheet().Write(geometry.Point{X: s.room.Min.X + indent - 2, Y: s.y + (leading-small)*0.3}, small, layout.Right, l.Mark(i))
			}
		}
		s.space(0.8)
	}
	s.space(air - 0.8)
}

// caution is set off by a heavy bar beside it.
func (s *setter) caution(c report.Caution) {
	const indent = 4.0
	lines := lettering.Wrap(c.String(), small, min(measure, s.room.W())-indent)
	s.need(float64(len(lines)) * leading)
	top := s.y
	on := len(s.sheets)
	for _, l := range lines {
		s.line(s.room.Min.X+indent, small, leading, layout.Left, l)
	}
	if on == len(s.sheets) {
		for _, x := range []float64{0.4, 0.9} {
			s.sheet().Line(layout.Cut, geometry.Point{X: s.room.Min.X + x, Y: top - 0.8}, geometry.Point{X: s.room.Min.X + x, Y: s.y + 0.2})
		}
	}
	s.space(air)
}

// contents lists the chapters of the run before.
func (s *setter) contents() {
	wide := min(measure, s.room.W())
	for _, c := range s.known {
		number := fmt.Sprint(c.sheet)
		s.line(s.room.Min.X, small, leading, layout.Left, lettering.Clip(c.words, small, wide-20))
		s.sheet().Write(geometry.Point{X: s.room.Min.X + wide, Y: s.y + (leading-small)*0.3}, small, layout.Right, number)
	}
	s.space(air)
}

// follows is how much room what comes after a heading wants on its sheet, mm: a figure
// stands whole, of words some lines.
func (s *setter) follows() float64 {
	if f, ok := s.next.(report.Figure); ok {
		_, high := s.captioned(f)
		return high + air
	}
	return 3 * leading
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
	s.need(high + air)
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
