package tile

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	what      = 3.6 // the height of what a piece is called, mm of capitals
	whatHigh  = 5.2 // a line that it stands in, mm
	overPiece = 1.2 // air under the heading, mm
	between   = 3.0 // the three things that a heading says, along a line, mm
)

// which says which of its pattern's pieces a piece is; "" for a whole pattern.
func (p piece) which(u measure.System) string {
	switch g := p.grid; {
	case g.rows() > 1:
		unit := map[measure.System]string{measure.Metric: "mm", measure.Imperial: "inches"}[u]
		return fmt.Sprintf("tile %s of %s%d, figures at the edges in %s", p.name(), rowName(g.rows()-1), g.cols(), unit)
	case g.cols() > 1:
		return fmt.Sprintf("piece %s of %d, from %s to %s", p.name(), g.cols(), u.Tape(p.cell.Min.X), u.Tape(p.cell.Max.X))
	}
	return ""
}

// heading letters over a piece what it is, which, and what to do with it, in lines of at
// most the given length. Nothing is cut off: what does not fit wraps. The last line ends
// at y = 0; high is how far up the first one reaches, mm.
func (p piece) heading(u measure.System, wide float64) (texts []layout.Text, high float64) {
	var lines []headLine
	for i, words := range []string{p.drawing.Title, p.which(u), p.drawing.Make} {
		tall := small
		if i == 0 {
			tall = what
		}
		lines = flowed(lines, lettering.Safe(words), tall, wide)
	}
	high = overPiece
	for _, l := range lines {
		high += l.high()
	}
	y := high
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

// flowed sets words behind the last line's where they fit whole, else on lines of their own.
func flowed(lines []headLine, words string, tall, wide float64) []headLine {
	if words == "" {
		return lines
	}
	long := lettering.Width(words, tall)
	if n := len(lines); n > 0 && lines[n-1].end+between+long <= wide {
		l := &lines[n-1]
		l.texts = append(l.texts, layout.Text{At: geometry.Point{X: l.end + between}, Height: tall, Words: words})
		l.end += between + long
		return lines
	}
	for _, part := range lettering.Wrap(words, tall, wide) {
		lines = append(lines, headLine{[]layout.Text{{Height: tall, Words: part}}, lettering.Width(part, tall)})
	}
	return lines
}

// size is the room that a piece takes on a sheet, its heading included: as wide as makes
// it the smallest, at most the whole room.
func (p piece) size(u measure.System, room float64) (wide, high float64) {
	title := lettering.Width(lettering.Safe(p.drawing.Title), what)
	which := lettering.Width(lettering.Safe(p.which(u)), small)
	least := math.Inf(1)
	area := func(w, head float64) float64 { return (w + pieceGap) * (p.frame.H() + head + pieceGap) }
	for _, w := range []float64{p.frame.W(), title, which, title + between + which, 60, 80, 110} {
		w = math.Min(math.Max(w, p.frame.W()), math.Max(room, p.frame.W()))
		if area(w, overPiece) >= least {
			continue // no heading is low enough
		}
		if _, head := p.heading(u, w); area(w, head) < least-closeEnough {
			least, wide, high = area(w, head), w, p.frame.H()+head
		}
	}
	return wide, high
}

// sized gives pieces the room that they take with their headings.
func (p plan) sized(pieces []piece) []piece {
	for i := range pieces {
		pieces[i].wide, pieces[i].high = pieces[i].size(p.units, p.room.W())
	}
	return pieces
}

// fitted cuts a drawing into pieces that go into a room with their headings.
func (p plan) fitted(d *layout.Drawing, w, h float64) []piece {
	for head := whatHigh + overPiece; ; head += leading {
		out := p.sized(cut(d, w, h-head, p.how.long))
		tallest := 0.0
		for _, k := range out {
			tallest = math.Max(tallest, k.high)
		}
		if tallest <= h+closeEnough || head > h/3 {
			return out
		}
	}
}
