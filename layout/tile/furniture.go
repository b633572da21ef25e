package tile

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// small is the height of everything read at the bench, mm.
const small = lettering.MinHeight

func line(s *layout.Sheet, p layout.Pen, a, b geometry.Point) {
	s.Strokes = append(s.Strokes, layout.Stroke{Pen: p, Path: curve.Polyline(a, b)})
}

func write(s *layout.Sheet, at geometry.Point, height float64, a layout.Align, words string) {
	if words = lettering.Safe(words); words != "" {
		s.Texts = append(s.Texts, layout.Text{At: at, Height: height, Align: a, Words: words})
	}
}

// barLong is the length of both scale bars: 4 inches, with 100 mm marked on it.
const barLong = 101.6

// furnish draws what every sheet carries: a title block, scale bars both ways
// with millimetres on one side and inches on the other, and the sheet's number.
func furnish(s *layout.Sheet, set Set, p layout.Paper, number, of int) {
	foot := geometry.Point{X: sideMargin, Y: bottomMargin}
	line(s, layout.Tick, foot.Add(geometry.Point{Y: footHigh}), geometry.Point{X: p.W - sideMargin, Y: foot.Y + footHigh})
	drawBar(s, foot.Add(geometry.Point{X: 2, Y: 6.2}), geometry.Point{X: 1})
	right := geometry.Point{X: p.W - sideMargin, Y: foot.Y}
	count := fmt.Sprintf("sheet %d of %d", number, of)
	write(s, right.Add(geometry.Point{Y: 7}), 3.2, layout.Right, count)
	room := p.W - 2*sideMargin - barLong - 14
	title := lettering.Clip(set.Title, 3.2, room-lettering.Width(count, 3.2)-6)
	left := geometry.Point{X: foot.X + barLong + 14, Y: foot.Y}
	write(s, left.Add(geometry.Point{Y: 7}), 3.2, layout.Left, title)
	write(s, left.Add(geometry.Point{Y: 1.6}), small, layout.Left,
		lettering.Clip("full size on "+p.Name+": print at 100 %, one side; both bars must measure true", small, room-30))
	write(s, right.Add(geometry.Point{Y: 1.6}), small, layout.Right, "design "+set.Fingerprint)
	drawBar(s, geometry.Point{X: p.W - sideMargin - 5.5, Y: bottomMargin + footHigh + gap + 4}, geometry.Point{Y: 1})
}

// drawBar draws one scale bar from a point along a direction: centimetres on
// its left, inches on its right.
func drawBar(s *layout.Sheet, from, along geometry.Point) {
	line(s, layout.Mark, from, from.Add(along.Scale(barLong)))
	left := along.Left()
	angle := 0.0
	if along.Y > 0 {
		angle = 1.5707963267948966
	}
	for i := 0; i <= 10; i++ {
		at := from.Add(along.Scale(float64(i) * 10))
		long := 1.5
		if i%5 == 0 {
			long = 2.6
		}
		line(s, layout.Tick, at, at.Add(left.Scale(long)))
	}
	for i := 0; i <= 4; i++ {
		at := from.Add(along.Scale(float64(i) * 25.4))
		line(s, layout.Tick, at, at.Add(left.Scale(-2.6)))
	}
	letter := func(s *layout.Sheet, d, off float64, a layout.Align, words string) {
		s.Texts = append(s.Texts, layout.Text{At: from.Add(along.Scale(d)).Add(left.Scale(off)), Height: small, Angle: angle, Align: a, Words: words})
	}
	letter(s, 2, 2.1, layout.Left, "0")
	letter(s, 52, 2.1, layout.Left, "50")
	letter(s, 98.5, 2.1, layout.Right, "100 mm")
	letter(s, 2, -2.1-small, layout.Left, "0")
	letter(s, 52.8, -2.1-small, layout.Left, "2")
	letter(s, 99.8, -2.1-small, layout.Right, "4 in")
}

// keyMap draws the grid of a pattern's tiles in small, this one crossed twice
// and filled with its name, the ones without ink struck out.
func keyMap(s *layout.Sheet, p layout.Paper, pc piece) {
	g := pc.grid
	const wide = 11.0
	step := min(wide/float64(g.cols()), 4.5)
	origin := geometry.Point{X: p.W - sideMargin - wide, Y: p.H - sideMargin}
	for row := range g.rows() {
		for col := range g.cols() {
			a := origin.Add(geometry.Point{X: float64(col) * step, Y: -float64(row+1) * step})
			b := geometry.Box{Min: a, Max: a.Add(geometry.Point{X: step, Y: step})}
			s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Rectangle(b)})
			switch {
			case col == pc.col && row == pc.row:
				s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Cut, Path: curve.Rectangle(b.Grow(-step * 0.22))})
			case !g.used[row][col]:
				line(s, layout.Tick, b.Min, b.Max)
			}
		}
	}
	write(s, origin.Add(geometry.Point{X: wide / 2, Y: -float64(g.rows())*step - 4}), small, layout.Middle, pc.name())
}
