package bins

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/paper"
)

// grid is how the labels lie on a sheet that is sold: mm, from its upper left corner.
type grid struct {
	across, down  int
	wide, high    float64 // of a label
	left, top     float64 // to the first
	aside, onward float64 // from one to the next
}

// grids are the usual sheets: 30 labels of 2 5/8 x 1 in on letter, and 21 of 63.5 x 38.1 mm on
// A4. Common practice, no source: both are sold by many.
func grids() map[string]grid {
	return map[string]grid{
		"letter": {3, 10, 66.675, 25.4, 4.7625, 12.7, 69.85, 25.4},
		"a4":     {3, 7, 63.5, 38.1, 7.25, 15.15, 66, 38.1},
	}
}

// Fits reports whether labels are sold in sheets of this size.
func Fits(s paper.Size) bool {
	_, is := grids()[s.Name]
	return is
}

// Sizes of setting, mm.
const (
	large   = 4.0                 // of whose label it is
	small   = lettering.MinHeight // of what it is on
	leading = 3.8                 // between lines
	inset   = 3.0                 // from the label's edge, for a printer draws the sheet in a little askew
)

// Lay sets the labels on sheets of the paper, which stands upright. What has no room on a
// label goes on on the next one, under the same head.
//
// Errors: a paper of which no sheets of labels are sold.
func Lay(title string, all []Label, p paper.Sheet) (layout.Document, error) {
	g, is := grids()[p.Size.Name]
	if !is {
		return layout.Document{}, fmt.Errorf("no labels are sold on sheets of %s; accepted: letter or a4", p.Size.Name)
	}
	doc := layout.Document{Title: title, Paper: layout.Paper{Name: p.Size.Name, W: p.W, H: p.H}}
	n := 0
	for _, l := range all {
		for _, part := range g.parts(l) {
			if n%(g.across*g.down) == 0 {
				number := len(doc.Sheets) + 1
				doc.Sheets = append(doc.Sheets, layout.Sheet{Number: number, Label: fmt.Sprint(number)})
			}
			g.write(&doc.Sheets[len(doc.Sheets)-1], n%(g.across*g.down), part, p)
			n++
		}
	}
	for i := range doc.Sheets {
		doc.Sheets[i].Onto(p.ToFile)
	}
	if p.Corrected() {
		doc.Stretch = geometry.Point{X: p.ToFile.A, Y: p.ToFile.D}
	}
	return doc, nil
}

// parts are the labels that one takes, each with lines that fit its width and its height.
func (g grid) parts(l Label) []Label {
	var lines []string
	for _, words := range l.Lines {
		lines = append(lines, lettering.Wrap(words, small, g.wide-2*inset)...)
	}
	room := int((g.high - 2*inset - large) / leading)
	var out []Label
	for len(lines) > room {
		out, lines = append(out, Label{l.Head, lines[:room]}), lines[room:]
	}
	return append(out, Label{l.Head, lines})
}

// write sets one label on its place, and ticks at its corners to cut plain paper by.
func (g grid) write(s *layout.Sheet, n int, l Label, p paper.Sheet) {
	x, y := g.left+g.aside*float64(n%g.across), p.Size.Down-g.top-g.onward*float64(n/g.across)
	for _, corner := range []geometry.Point{{X: x, Y: y}, {X: x + g.wide, Y: y}, {X: x, Y: y - g.high}, {X: x + g.wide, Y: y - g.high}} {
		tick(s, corner, p.Area)
	}
	high, words := head(l.Head, g.wide-2*inset)
	y -= inset + large
	s.Write(geometry.Point{X: x + inset, Y: y}, high, layout.Left, words)
	for i, line := range l.Lines {
		s.Write(geometry.Point{X: x + inset, Y: y - leading*float64(i+1)}, small, layout.Left, line)
	}
}

// tick marks a corner where the printer reaches it.
func tick(s *layout.Sheet, at geometry.Point, room geometry.Box) {
	const half = 0.75
	for _, way := range []geometry.Point{{X: half}, {Y: half}} {
		if a, b := at.Sub(way), at.Add(way); room.Holds(a) && room.Holds(b) {
			s.Line(layout.Tick, a, b)
		}
	}
}

// head is a heading in one line, smaller where it is long; of one that is too long even so
// the beginning stands, and its number says whose it is.
func head(words string, wide float64) (high float64, line string) {
	for high = large; high > small && lettering.Width(lettering.Safe(words), high) > wide; high -= 0.25 {
	}
	return high, lettering.Wrap(words, high, wide)[0]
}
