package tile

import (
	"fmt"
	"math"
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
	h := s.set(wide)
	y := h.high() + whatHigh - whatTop
	for i, n := 0, -1; i < len(h.texts); i++ {
		if h.lines[i] != n {
			n = h.lines[i]
			y -= h.highs[n]
		}
		h.texts[i].At.Y = y
	}
	return h.texts, h.high()
}

// size is how long and how high such a heading is, mm.
func (s says) size(wide float64) (long, high float64) {
	h := s.set(wide)
	return h.long, h.high()
}

// whole is how long a heading is in one line, and somewhat more: with more room it stays so, mm.
func (s says) whole() float64 {
	return lettering.Width(s[0], what) + between + lettering.Width(s[1], small) + between + lettering.Width(s[2], small) + closeEnough
}

func (s says) set(wide float64) headLines {
	h := headLines{texts: make([]layout.Text, 0, len(s)), lines: make([]int, 0, len(s)), highs: make([]float64, 0, len(s))}
	for i, words := range s {
		tall := small
		if i == 0 {
			tall = what
		}
		h.flow(words, tall, wide, i < 2)
	}
	return h
}

// headLines is the lines of a heading, from the first on.
type headLines struct {
	texts     []layout.Text
	lines     []int     // that each of them stands on
	highs     []float64 // of the lines
	end, long float64   // of the last line; of the longest one
}

func (h *headLines) high() float64 {
	high := overPiece - (whatHigh - whatTop)
	for _, l := range h.highs {
		high += l
	}
	return high
}

// put sets words on the last line.
func (h *headLines) put(words string, tall, at float64) {
	n := len(h.highs) - 1
	long := lettering.Width(words, tall)
	h.texts, h.lines = append(h.texts, layout.Text{At: geometry.Point{X: at}, Height: tall, Words: words}), append(h.lines, n)
	h.long = math.Max(h.long, at+long)
	if tall > small {
		h.highs[n] = whatHigh
	}
	if at == 0 {
		h.end = long
	} else {
		h.end += between + long
	}
}

// flow sets words behind the last line's, and on lines of their own where those are full.
// The name of a piece and its number stay whole on a line where that can be.
func (h *headLines) flow(words string, tall, wide float64, whole bool) {
	if words == "" {
		return
	}
	if len(h.highs) > 0 {
		first, rest := begun(words, tall, wide-h.end-between, whole)
		if first != "" {
			h.put(first, tall, h.end+between)
		}
		words = rest
	}
	for _, part := range lettering.Wrap(words, tall, wide) {
		h.highs = append(h.highs, leading)
		h.put(part, tall, 0)
	}
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
	b, x := k.box, pieces[0].grid.x
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
