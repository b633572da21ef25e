package report

import (
	"math"
	"slices"
	"strings"

	"ribwright/layout"
)

// Titled begins a table, empty words for one without a title. Its columns follow from
// left to right, then its rows.
func Titled(title string) Table { return Table{Title: title} }

// Names adds columns of names, which are never broken.
func (t Table) Names(heads ...string) Table { return t.columns(Column{}, heads) }

// Words adds columns of words that may be broken into lines.
func (t Table) Words(heads ...string) Table { return t.columns(Column{Text: true}, heads) }

// Numbers adds columns of figures, which end under each other.
func (t Table) Numbers(heads ...string) Table { return t.columns(Column{Align: layout.Right}, heads) }

func (t Table) columns(like Column, heads []string) Table {
	t.Columns = slices.Clip(t.Columns)
	for _, like.Head = range heads {
		t.Columns = append(t.Columns, like)
	}
	return t
}

// Noted puts a note under the table.
func (t Table) Noted(note string) Table {
	t.Note = note
	return t
}

// Row adds a row with a cell for each column.
func (t *Table) Row(cells ...string) { t.Rows = append(t.Rows, cells) }

// Filled adds rows, cell after cell: as many to a row as there are columns.
func (t Table) Filled(cells ...string) Table {
	t.Rows = slices.AppendSeq(slices.Clip(t.Rows), slices.Chunk(cells, len(t.Columns)))
	return t
}

// IfAny is the table when it has rows, and no block when it has none.
func (t Table) IfAny() []Block {
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t}
}

// Facts is a table of what and how much, one after the other.
func Facts(title string, pairs ...string) Table {
	return Titled(title).Words("Figure").Numbers("").Filled(pairs...)
}

// Room is what a writer has for a table and knows of its lettering, in a unit of
// its own: mm on paper, letters on a terminal.
type Room struct {
	Wide   float64                              // for the whole table
	Gutter float64                              // between two columns
	Least  float64                              // how narrow a column of words may become
	Step   float64                              // the most that a column gives way at a time, so that equals share; 0 is no bound
	Of     func(words string) float64           // how wide words are in one line
	Lines  func(words string, wide float64) int // how many lines they take
}

// mostHead is how many lines a head may take where there is room to widen its column.
const mostHead = 3

// Widths finds how wide the columns are: as wide as their cells, columns of words
// sharing what is left when all together are too wide. It reports whether the table
// fits.
func (t Table) Widths(r Room) ([]float64, bool) {
	out := t.natural(r)
	over := -r.Gutter - r.Wide
	for _, w := range out {
		over += w + r.Gutter
	}
	asks := t.asks(r)
	for over > 1e-9 {
		give, from := t.give(out, asks, r, over)
		if from < 0 {
			return out, false
		}
		out[from] -= give
		over -= give
	}
	if over < 0 {
		t.easeHeads(out, -over, r)
	}
	return out, true
}

// natural is how wide each column wants to be: no cell broken, no word of a head.
func (t Table) natural(r Room) []float64 {
	out := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		for _, w := range strings.Fields(c.Head) {
			out[i] = math.Max(out[i], r.Of(w))
		}
		for _, row := range t.Rows {
			out[i] = math.Max(out[i], r.Of(row[i]))
		}
	}
	return out
}

// give finds the column of words that gives way first, the one that is widest for the words
// in it, and how much it gives: until another is as wide for its own, or a step. Without
// a column of words that is wider than the least from is -1.
func (t Table) give(wide, asks []float64, r Room, over float64) (give float64, from int) {
	from = -1
	for i, c := range t.Columns {
		if c.Text && wide[i] > r.Least && (from < 0 || wide[i]*asks[from] > wide[from]*asks[i]) {
			from = i
		}
	}
	if from < 0 {
		return 0, from
	}
	next := r.Least
	for i, c := range t.Columns {
		if share := wide[i] * asks[from] / asks[i]; c.Text && share < wide[from] {
			next = math.Max(next, share)
		}
	}
	give = math.Min(math.Min(over, math.Max(1, wide[from]-next)), wide[from]-r.Least)
	if r.Step > 0 {
		give = math.Min(give, r.Step)
	}
	return give, from
}

// asks is how much room each column asks for beside the others: the root of how much is
// written in it, so that one with few words keeps them and one with many is not a sliver.
// Our own choice.
func (t Table) asks(r Room) []float64 {
	out := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		sum := r.Of(c.Head)
		for _, row := range t.Rows {
			sum += r.Of(row[i])
		}
		out[i] = math.Sqrt(math.Max(1, sum))
	}
	return out
}

// easeHeads widens columns whose heads would stand taller than mostHead lines, as
// far as there is room.
func (t Table) easeHeads(wide []float64, room float64, r Room) {
	for i, c := range t.Columns {
		for r.Lines(c.Head, wide[i]) > mostHead && room >= 1 {
			wide[i]++
			room--
		}
	}
}
