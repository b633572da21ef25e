package tile

import (
	"math"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

const (
	leading    = 4.1 // between lines of small lettering, mm
	columnGap  = 8.0 // between the columns of the first sheets, mm
	headHigh   = 3.0 // of headings, mm of capitals
	headLeads  = 2.2 // air over a heading, mm
	headTrails = 0.8 // air under it, mm
)

// columnLeast is the least width of a column, mm: some forty letters.
const columnLeast = 84.0

// flow runs text down the columns of a sheet, and on to further sheets.
type flow struct {
	room   geometry.Box
	wide   float64 // of a column
	left   float64 // of the current column
	top    float64 // of the columns of the current sheet
	y      float64 // of the last baseline
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
	if f.y-high >= f.room.Min.Y {
		return
	}
	if f.left += f.wide + columnGap; f.left+f.wide > f.room.Max.X+closeEnough {
		f.sheets = append(f.sheets, layout.Sheet{})
		f.left, f.top = f.room.Min.X, f.room.Max.Y-4
	}
	f.y = f.top
}

// heading sets a heading that keeps at least the given height under it.
func (f *flow) heading(words string, keep float64) {
	f.need(headLeads + leading + headTrails + keep)
	if f.y < f.top {
		f.y -= headLeads
	}
	f.y -= leading
	f.sheet().Write(geometry.Point{X: f.left, Y: f.y}, headHigh, layout.Left, words)
	f.y -= headTrails
}

// section sets a heading with its paragraphs.
func (f *flow) section(heading string, paragraphs []string) {
	f.heading(heading, 2*leading)
	for _, p := range paragraphs {
		lines := lettering.Wrap(lettering.Safe(p), small, f.wide)
		f.need(float64(min(len(lines), 2)) * leading)
		for _, l := range lines {
			f.need(leading)
			f.y -= leading
			f.sheet().Write(geometry.Point{X: f.left, Y: f.y}, small, layout.Left, l)
		}
	}
}

func (f *flow) legend() {
	pens := layout.Pens()
	f.heading("Lines", float64(len(pens))*leading)
	for _, p := range pens {
		f.y -= leading
		f.sheet().Line(p, geometry.Pt(f.left, f.y+1.2), geometry.Pt(f.left+14, f.y+1.2))
		f.sheet().Write(geometry.Point{X: f.left + 16.5, Y: f.y}, small, layout.Left, meaning(p))
	}
}

func meaning(p layout.Pen) string {
	return [...]string{
		layout.Cut:    "cut to the middle of this line",
		layout.Mark:   "mark this on the wood",
		layout.Long:   "the same, broken to be told from its neighbors",
		layout.Center: "a middle line",
		layout.Guide:  "helps to place or read; at a joint: cut the paper",
		layout.Tick:   "tape ticks, leaders, crosses and scale bars",
	}[p]
}

// free returns what every sheet has left for patterns: nothing but the columns of
// the last one that are not begun, and what lies under its last column.
func (f *flow) free() [][]geometry.Box {
	out := make([][]geometry.Box, len(f.sheets))
	under := geometry.Box{Min: geometry.Point{X: f.left, Y: f.room.Min.Y}, Max: geometry.Point{X: f.room.Max.X, Y: f.y - leading}}
	beside := geometry.Box{Min: geometry.Point{X: f.left + f.wide + columnGap, Y: f.room.Min.Y}, Max: geometry.Point{X: f.room.Max.X, Y: f.top}}
	for _, b := range []geometry.Box{under, beside} {
		if b.W() > speck && b.H() > speck {
			out[len(out)-1] = append(out[len(out)-1], b)
		}
	}
	return out
}
