package typeset

import (
	"ribwright/layout/lettering"
	"ribwright/layout/report"
)

// A figure that has no room on a sheet of which too much would stay blank is held: the words
// after it go on before it, and it stands at the head of the next sheet. It is set before
// anything but words and other figures, so that it never leaves its section.

// flows reports whether a block may stand before a figure that comes before it.
func flows(b report.Block) bool {
	switch b.(type) {
	case report.Paragraph, report.List:
		return true
	}
	return false
}

// holds reports whether a figure waits for the next sheet.
func (s *setter) holds(f report.Figure, high float64) bool {
	if len(s.held) > 0 {
		return true
	}
	return !s.fresh && s.heldBack(append([]report.Block{f}, s.rest...), high)
}

// heldBack reports whether blocks that begin with a figure, so high, let words go before it.
func (s *setter) heldBack(blocks []report.Block, high float64) bool {
	return s.y-high < s.room.Min.Y && s.blank(someBlank) && s.before(blocks) > 0
}

// before is how much of the sheet the words take that may stand before the figures that the
// blocks begin with, mm; 0 where they take less than a third of what is left of it, and are
// not worth being parted from their figures.
func (s *setter) before(blocks []report.Block) float64 {
	high := 0.0
	for len(blocks) > 0 {
		if _, ok := blocks[0].(report.Figure); !ok {
			break
		}
		blocks = blocks[1:]
	}
	for len(blocks) > 0 && flows(blocks[0]) {
		high += s.wordsHigh(blocks[0])
		blocks = blocks[1:]
	}
	if high < (s.y-s.room.Min.Y)/3 {
		return 0
	}
	return high
}

// wordsHigh is the height of words, mm.
func (s *setter) wordsHigh(b report.Block) float64 {
	wide := min(measure, s.room.W())
	lines := func(words string, wide float64) float64 {
		return float64(len(lettering.Wrap(words, small, wide))) * leading
	}
	switch b := b.(type) {
	case report.Paragraph:
		return lines(b.Words, wide) + air
	case report.List:
		high := air
		for _, item := range b.Items {
			high += lines(item, wide-indent) + 0.8
		}
		return high
	}
	return 0
}

// release sets the figures that are held, on sheets that have room for them.
func (s *setter) release() {
	held := s.held
	s.held = nil
	for _, f := range held {
		caption, high := s.captioned(f)
		s.need(high)
		s.draw(f, caption)
	}
}
