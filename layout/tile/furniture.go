package tile

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
)

const (
	small      = lettering.MinHeight           // the height of everything read at the bench, mm
	barBy      = layout.RuleHalf + 0.3*small   // how far the line of a scale bar lies in from the margin, tails of letters within
	footHigh   = barBy + layout.RuleHalf + 0.4 // the title block and the level scale bar
	columnWide = footHigh                      // the upright scale bar and the key map
	gap        = 1.0                           // between title block, column and the patterns
)

// roomFor returns the part of the sheet that the patterns of a set may fill, in true mm.
func roomFor(set Set, p paper.Sheet) geometry.Box {
	room := roomOf(p)
	room.Min.Y += footOf(set, p, most, most).high() - footHigh
	return room
}

// roomOf returns the same for a set whose name is short.
func roomOf(p paper.Sheet) geometry.Box {
	return geometry.Box{
		Min: geometry.Point{X: p.Area.Min.X, Y: p.Area.Min.Y + footHigh + gap},
		Max: geometry.Point{X: p.Area.Max.X - columnWide - gap, Y: p.Area.Max.Y},
	}
}

// barLong is the length of both scale bars: 4 inches, with 100 mm marked on it.
const barLong = 101.6

const (
	barFrom   = 2.0                   // where the level one begins, mm from the margin
	barBeside = barFrom + barLong + 3 // where words beside it do
	footFirst = 5.0                   // the height of their first line over the margin, mm
)

// nameLines is how many lines of a foot a name may take, about 300 letters. What is longer
// ends with a whole word there, and says where all of it is. Our own choice.
const nameLines = 3

// foot is what the title block says: in its two lines what fits there, and over them,
// along the sheet, what does not.
type foot struct{ lines, over []string }

func footOf(set Set, p paper.Sheet, number, of int) foot {
	room, paper := p.Area.W()-barBeside, fmt.Sprintf("%s %s, %s", p.Size.Name, p.Way(), set.version())
	f := foot{lines: []string{lettering.Safe(set.Title + ", " + paper), lettering.Safe("one side, " + bidding(p))}}
	left := []float64{room, room - lettering.Width(sheetOf(number, of), small) - 4}
	more := []string{"", ""}
	if lettering.Width(f.lines[0], small) > room {
		f.lines[0], more[0] = lettering.Safe(paper), lettering.Safe(set.Title)
	}
	for i, words := range f.lines {
		if lettering.Width(words, small) > left[i] {
			f.lines[i], more[i] = "", strings.TrimPrefix(more[i]+", "+words, ", ")
		}
	}
	for _, words := range more {
		if words == "" {
			continue
		}
		const rest = "(whole on the first sheet)"
		along := p.Area.W() - columnWide - gap
		lines := lettering.Wrap(words, small, along)
		if len(lines) > nameLines {
			lines = lettering.Wrap(words, small, along-lettering.Width(" "+rest, small))[:nameLines]
			lines[nameLines-1] += " " + rest
		}
		f.over = append(f.over, lines...)
	}
	return f
}

func sheetOf(number, of int) string { return fmt.Sprintf("sheet %d of %d", number, of) }

// high is how high the title block is, mm.
func (f foot) high() float64 { return footHigh + leading*float64(len(f.over)) }

// most is the number of a sheet that no set reaches: its foot is as high as any.
const most = 9999

// furnish draws what every sheet carries: a title block, scale bars both ways
// with millimeters on one side and inches on the other, and the sheet's number.
func furnish(s *layout.Sheet, set Set, p paper.Sheet, number, of int) {
	f, low := footOf(set, p, most, most), p.Area.Min
	right := geometry.Point{X: p.Area.Max.X, Y: low.Y}
	s.Line(layout.Tick, low.Add(geometry.Point{Y: f.high()}), right.Add(geometry.Point{Y: f.high()}))
	s.Rule(low.Add(geometry.Point{X: barFrom, Y: barBy}), geometry.Point{X: 1}, barLong)
	s.Rule(right.Add(geometry.Point{X: -barBy, Y: f.high() + gap + 4}), geometry.Point{Y: 1}, barLong)
	left := low.Add(geometry.Point{X: barBeside})
	s.Write(right.Add(geometry.Point{Y: footFirst - leading}), small, layout.Right, sheetOf(number, of))
	for i, words := range f.lines {
		s.Write(left.Add(geometry.Point{Y: footFirst - leading*float64(i)}), small, layout.Left, words)
	}
	for i, words := range f.over {
		s.Write(low.Add(geometry.Point{Y: f.high() - 3.1 - leading*float64(i)}), small, layout.Left, words)
	}
}

// version tells the sheets of two versions of a design apart.
func (s Set) version() string {
	if s.Edition == "" {
		return "design " + s.Fingerprint
	}
	return "edition " + s.Edition + ", design " + s.Fingerprint
}

// bidding says how to print a sheet and what was done about the printer.
func bidding(p paper.Sheet) string {
	if c := p.Correction(); c != "" {
		return "100 %; " + c
	}
	return "100 %; both bars true"
}

// leastKey is the least side of a tile in a key map that is drawn tile by tile, mm: with
// smaller ones the map would be all line.
const leastKey = 1.8

// keyMap draws the grid of a pattern's tiles in small, this one filled and
// named, the ones without ink struck out; of a grid of many tiles the rim alone. Under it
// stands whose tiles they are, for a sheet may have some of two patterns, unless the name
// would come down to the height above which the column is free; the piece's heading has it.
func keyMap(s *layout.Sheet, p paper.Sheet, pc piece, above float64) {
	g := pc.grid
	const wide = columnWide - 1
	step := min(wide/float64(g.cols()), 4.5)
	in := layout.Tick.Width() / 2 // so that no line stands half on the margin
	origin := geometry.Point{X: p.Area.Max.X - wide - in, Y: p.Area.Max.Y - in}
	box := func(col, row int) geometry.Box {
		a := origin.Add(geometry.Point{X: float64(col) * step, Y: -float64(row+1) * step})
		return geometry.Box{Min: a, Max: a.Add(geometry.Point{X: step, Y: step})}
	}
	for row := range g.rows() {
		for col := range g.cols() {
			b := box(col, row)
			switch {
			case step < leastKey:
				rim(s, g, col, row, b)
			case g.has(col, row):
				s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Rectangle(b)})
			default:
				s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Rectangle(b)})
				s.Line(layout.Tick, b.Min, b.Max)
			}
		}
	}
	own := box(pc.col, pc.row)
	s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Cut, Path: curve.Rectangle(own.Grow(-min(step*0.22, 0.25)))})
	under := origin.Add(geometry.Point{X: wide / 2, Y: -float64(g.rows())*step - 4})
	s.Write(under, small, layout.Middle, pc.name())
	whose := under.Add(geometry.Point{X: small / 2, Y: -small})
	if lettering.Width(pc.drawing.Title, small) < whose.Y-above {
		s.Texts = append(s.Texts, layout.Text{At: whose, Height: small, Angle: math.Pi / 2, Align: layout.Right, Words: pc.drawing.Title})
	}
}

// rim draws the sides of a tile in a key map beyond which none is printed.
func rim(s *layout.Sheet, g *grid, col, row int, b geometry.Box) {
	if !g.has(col, row) {
		return
	}
	upper, lower := geometry.Point{X: b.Min.X, Y: b.Max.Y}, geometry.Point{X: b.Max.X, Y: b.Min.Y}
	for _, side := range []struct {
		col, row int
		from, to geometry.Point
	}{{col - 1, row, b.Min, upper}, {col + 1, row, lower, b.Max}, {col, row - 1, upper, b.Max}, {col, row + 1, b.Min, lower}} {
		if !g.has(side.col, side.row) {
			s.Line(layout.Tick, side.from, side.to)
		}
	}
}
