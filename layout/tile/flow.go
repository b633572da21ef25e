package tile

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	leading    = 3.8 // between lines of small lettering, mm
	columnGap  = 5.0 // between the columns of the first sheets, mm
	headHigh   = 3.0 // of headings, mm of capitals
	headLeads  = 2.0 // air over a heading, mm
	headTrails = 0.6 // air under it, mm
)

// columnLeast is the least width of a column, mm: a bank card with its line.
const columnLeast = cardLong + 1.2

// flow runs text and figures down the columns of a sheet, and on to further sheets.
type flow struct {
	room   geometry.Box
	wide   float64 // of a column
	left   float64 // of the current column
	top    float64 // of the columns of the current sheet
	y      float64 // where the next thing begins
	sheets []layout.Sheet
}

func newFlow(room geometry.Box, head float64) *flow {
	n := max(1, math.Floor((room.W()+columnGap)/(columnLeast+columnGap)))
	f := &flow{room: room, wide: (room.W()+columnGap)/n - columnGap, left: room.Min.X, top: room.Max.Y - head}
	f.y, f.sheets = f.top, []layout.Sheet{{}}
	return f
}

func (f *flow) sheet() *layout.Sheet { return &f.sheets[len(f.sheets)-1] }

// need goes on to the next column, or sheet, unless high mm are left.
func (f *flow) need(high float64) {
	if f.y-high >= f.room.Min.Y-closeEnough || f.y == f.top && f.top == f.room.Max.Y {
		return
	}
	if f.left += f.wide + columnGap; f.left+f.wide > f.room.Max.X+closeEnough {
		f.sheets = append(f.sheets, layout.Sheet{})
		f.left, f.top = f.room.Min.X, f.room.Max.Y
	}
	f.y = f.top
}

// write sets one line of small lettering.
func (f *flow) write(words string) {
	f.need(leading)
	f.y -= leading
	f.sheet().Write(geometry.Pt(f.left, f.y+leading-small), small, layout.Left, words)
}

// heading sets a heading that keeps at least the given height under it.
func (f *flow) heading(words string, keep float64) {
	f.need(headLeads + headHigh + headTrails + keep)
	if f.y < f.top {
		f.y -= headLeads
	}
	f.y -= headHigh
	f.sheet().Write(geometry.Pt(f.left, f.y), headHigh, layout.Left, words)
	f.y -= headTrails + 0.3*headHigh
}

// section sets a heading with its paragraphs.
func (f *flow) section(heading string, paragraphs []string) {
	f.heading(heading, 2*leading)
	for _, p := range paragraphs {
		for _, l := range lettering.Wrap(lettering.Safe(p), small, f.wide) {
			f.write(l)
		}
	}
}

// boxed sets a heading with its paragraphs in a frame that is whole: it goes to the next
// column rather than be cut.
func (f *flow) boxed(heading string, paragraphs []string) {
	const in, between = 2.0, 1.0
	var lines []string
	for _, p := range paragraphs {
		lines = append(append(lines, lettering.Wrap(lettering.Safe(p), small, f.wide-2*in)...), "")
	}
	high := in + headHigh + 0.3*headHigh + headTrails + float64(len(lines)-len(paragraphs))*leading + float64(len(paragraphs))*between
	f.need(headLeads + high)
	f.y -= headLeads
	s, x := f.sheet(), f.left+in
	s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Cut, Path: curve.Rectangle(geometry.Rect(f.left, f.y-high, f.left+f.wide, f.y))})
	y := f.y - in - headHigh
	s.Write(geometry.Pt(x, y), headHigh, layout.Left, heading)
	y -= 0.3*headHigh + headTrails
	for _, l := range lines {
		if l == "" {
			y -= between
			continue
		}
		y -= leading
		s.Write(geometry.Pt(x, y+leading-small), small, layout.Left, l)
	}
	f.y -= high
}

// panel leaves room for a figure and draws it, its upper left corner at the origin.
func (f *flow) panel(high float64, draw func(s *layout.Sheet, at geometry.Point)) {
	f.need(high)
	draw(f.sheet(), geometry.Pt(f.left, f.y))
	f.y -= high
}
