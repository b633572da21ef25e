package tile

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	what      = 3.6 // the height of what a piece is called, mm of capitals
	whatHigh  = 4.7 // a line that it stands in, under another, mm
	whatTop   = 4.0 // the same for the first line: tall letters and no air, mm
	overPiece = 0.5 // air under the heading, mm
	between   = 3.0 // the three things that a heading says, along a line, mm
)

// which says which of its pattern's pieces a piece is; "" for a whole pattern.
func (p piece) which(u measure.System) string {
	switch g := p.grid; {
	case g.rows() > 1:
		unit := map[measure.System]string{measure.Metric: "mm", measure.Imperial: "inches"}[u]
		return fmt.Sprintf("tile %s of %s%d, edges in %s", p.name(), rowName(g.rows()-1), g.cols(), unit)
	case g.cols() > 1:
		from, to := u.Tape(p.cell.Min.X), u.Tape(p.cell.Max.X)
		unit := to[strings.LastIndex(to, " ")+1:]
		return fmt.Sprintf("piece %s of %d, %s to %s", p.name(), g.cols(), strings.TrimSuffix(from, " "+unit), to)
	}
	return ""
}

// says is what stands over a piece: what it is, which, and what to do with it.
type says [3]string

func (p piece) says(u measure.System) says {
	return says{lettering.Safe(p.drawing.Title), lettering.Safe(p.which(u)), lettering.Safe(p.drawing.Make)}
}

// heading letters what stands over a piece in lines of at most the given length. Nothing is
// cut off: what does not fit wraps. The last line ends at y = 0; high is how far up the first
// one reaches, mm.
func (s says) heading(wide float64) (texts []layout.Text, high float64) {
	var lines []headLine
	for i, words := range s {
		tall := small
		if i == 0 {
			tall = what
		}
		lines = flowed(lines, words, tall, wide, i < 2)
	}
	high = overPiece - (whatHigh - whatTop)
	for _, l := range lines {
		high += l.high()
	}
	y := high + whatHigh - whatTop
	for _, l := range lines {
		y -= l.high()
		for _, t := range l.texts {
			t.At.Y = y
			texts = append(texts, t)
		}
	}
	return texts, high
}

type headLine struct {
	texts []layout.Text
	end   float64
}

func (l headLine) high() float64 {
	for _, t := range l.texts {
		if t.Height > small {
			return whatHigh
		}
	}
	return leading
}

// flowed sets words behind the last line's, and on lines of their own where those are full.
// The name of a piece and its number stay whole on a line where that can be.
func flowed(lines []headLine, words string, tall, wide float64, whole bool) []headLine {
	if words == "" {
		return lines
	}
	if n := len(lines); n > 0 {
		l := &lines[n-1]
		first, rest := begun(words, tall, wide-l.end-between, whole)
		if first != "" {
			l.texts = append(l.texts, layout.Text{At: geometry.Point{X: l.end + between}, Height: tall, Words: first})
			l.end += between + lettering.Width(first, tall)
		}
		words = rest
	}
	for _, part := range lettering.Wrap(words, tall, wide) {
		lines = append(lines, headLine{[]layout.Text{{Height: tall, Words: part}}, lettering.Width(part, tall)})
	}
	return lines
}

// leastBegun is the least room that words are begun in behind others, mm.
const leastBegun = 40.0

// begun parts words into what stands in a room and the rest.
func begun(words string, tall, room float64, whole bool) (first, rest string) {
	switch {
	case lettering.Width(words, tall) <= room:
		return words, ""
	case whole || room < leastBegun:
		return "", words
	}
	first = lettering.Wrap(words, tall, room)[0]
	return first, strings.TrimSpace(strings.TrimPrefix(words, first))
}

// fitted cuts a drawing into pieces that go into the room with their headings. It begins
// with pieces of it that fill the room without, and leaves more and more.
func (p plan) fitted(pieces []piece) []piece {
	d, k, how := pieces[0].drawing, pieces[0].grid.ink, pieces[0].cutting
	w, h := p.roomOf(how)
	b, x := d.Bounds(), pieces[0].grid.x
	for head := whatTop + overPiece; ; head += leading {
		if p.allGoIn(pieces, w, h) {
			return pieces
		}
		if head-leading > h/3 {
			return p.sized(pieces)
		}
		pieces = cutAt(d, k, how, x, upward(d, b, h-head, how.up))
	}
}

// roomOf is how wide and high the room is for pieces that lie as they are read, or turned.
func (p plan) roomOf(how cutting) (w, h float64) {
	if how.turned {
		return p.room.H(), p.room.W()
	}
	return p.room.W(), p.room.H()
}
