package tile

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// step is one drawn step of putting patterns together.
type step struct {
	words string
	draw  func(s *layout.Sheet, at geometry.Point) // in a field stepWide by stepHigh, from its lower left corner
}

const (
	stepWide = 38.0
	stepHigh = 15.0
)

func allSteps() []step {
	return []step{
		{"1 Print at 100 % (actual size), on one side, not fit to page.", drawPrint},
		{"2 Lay a steel rule on both bars: 100 mm within 0.3 mm. Else see the build book.", drawRule},
		{"3 Cut along the broken line; lay it on its neighbor of the same title, piece 4 on 3, tile A2 on A1, cross on cross; tape.", drawTape},
		{"4 A half strip marks both halves: its heading says how.", drawTurn},
	}
}

// steps draws the four steps, two in a row.
func (f *flow) steps() {
	const inRow, between = 2, 3.0
	cell := (f.wide - between) / inRow
	all := allSteps()
	f.heading("Four steps", stepHigh+4*leading)
	for i := 0; i < len(all); i += inRow {
		lines, most := [inRow][]string{}, 0
		for j := range lines {
			lines[j] = lettering.Wrap(lettering.Safe(all[i+j].words), small, cell)
			most = max(most, len(lines[j]))
		}
		f.panel(stepHigh+2+float64(most)*leading, func(s *layout.Sheet, at geometry.Point) {
			for j, words := range lines {
				left := at.Add(geometry.Pt(float64(j)*(cell+between), 0))
				all[i+j].draw(s, left.Add(geometry.Pt(0, -stepHigh)))
				for k, l := range words {
					s.Write(left.Add(geometry.Pt(0, -stepHigh-1.5-small-leading*float64(k))), small, layout.Left, l)
				}
			}
		})
	}
}

// pencil draws in a field whose lower left corner is its origin.
type pencil struct {
	s  *layout.Sheet
	at geometry.Point
}

func (p pencil) line(pen layout.Pen, xy ...float64) {
	var pts []geometry.Point
	for i := 0; i+1 < len(xy); i += 2 {
		pts = append(pts, p.at.Add(geometry.Pt(xy[i], xy[i+1])))
	}
	p.s.Strokes = append(p.s.Strokes, layout.Stroke{Pen: pen, Path: curve.Polyline(pts...)})
}

func (p pencil) box(pen layout.Pen, x0, y0, x1, y1 float64) {
	p.s.Strokes = append(p.s.Strokes, layout.Stroke{Pen: pen, Path: curve.Rectangle(geometry.Rect(p.at.X+x0, p.at.Y+y0, p.at.X+x1, p.at.Y+y1))})
}

func (p pencil) cross(x, y float64) {
	p.line(layout.Tick, x-2, y, x+2, y)
	p.line(layout.Tick, x, y-2, x, y+2)
	p.s.Strokes = append(p.s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Circle(p.at.Add(geometry.Pt(x, y)), 1)})
}

// drawPrint shows a sheet that leaves the printer as large as it went in, and a smaller
// one struck out.
func drawPrint(s *layout.Sheet, at geometry.Point) {
	p := pencil{s, at}
	p.box(layout.Mark, 0, 1, 12, 14)
	p.line(layout.Tick, 13, 7.5, 17, 7.5)
	p.line(layout.Tick, 15.5, 8.5, 17, 7.5, 15.5, 6.5)
	p.box(layout.Mark, 18, 1, 30, 14) // with air round the words
	s.Write(at.Add(geometry.Pt(24, 6.5)), small, layout.Middle, "100 %")
	p.box(layout.Guide, 32, 3, 38, 11)
	p.line(layout.Cut, 31, 2, 39, 12)
	p.line(layout.Cut, 31, 12, 39, 2)
}

// drawRule shows a rule on a scale bar.
func drawRule(s *layout.Sheet, at geometry.Point) {
	p := pencil{s, at}
	p.line(layout.Mark, 1, 5, 37, 5)
	for i := 0.0; i <= 10; i++ {
		x, high := 1+3.6*i, 1.2
		if math.Mod(i, 5) == 0 {
			high = 2
		}
		p.line(layout.Tick, x, 5, x, 5-high)
		p.line(layout.Tick, x, 5, x, 5+high)
	}
	p.box(layout.Mark, -1, 5, 39, 12)
	s.Write(at.Add(geometry.Pt(1, 8)), small, layout.Left, "0")
	s.Write(at.Add(geometry.Pt(37, 8)), small, layout.Right, "100 mm")
}

// drawTape shows a piece with its edge cut at the broken line, laid on the next one.
func drawTape(s *layout.Sheet, at geometry.Point) {
	p := pencil{s, at}
	p.line(layout.Mark, 22, 2, 0, 2, 0, 13, 22, 13)
	p.line(layout.Mark, 18, 2, 38, 2, 38, 13, 18, 13)
	p.line(layout.Guide, 18, 1, 18, 14)
	p.cross(18, 4)
	p.cross(18, 11)
	s.Write(at.Add(geometry.Pt(16.8, 6.3)), small, layout.Right, "3")
	s.Write(at.Add(geometry.Pt(19.2, 6.3)), small, layout.Left, "4")
	p.box(layout.Tick, 8, 6, 13.4, 9)
}

// drawTurn shows a half strip and where it lies when it is turned end for end.
func drawTurn(s *layout.Sheet, at geometry.Point) {
	p := pencil{s, at}
	p.line(layout.Center, 19, 0, 19, 11)
	p.box(layout.Mark, 19, 2, 38, 7)
	p.line(layout.Guide, 19, 2, 0, 2, 0, 7, 19, 7)
	var pts []geometry.Point
	for i := 0.0; i <= 12; i++ {
		pts = append(pts, at.Add(geometry.Pt(19, 8)).Add(geometry.Point{X: 11 * math.Cos(i*math.Pi/12), Y: 6 * math.Sin(i*math.Pi/12)}))
	}
	s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Polyline(pts...)})
	p.line(layout.Tick, 7, 9.8, 8, 8, 9.6, 9.6)
	s.Write(at.Add(geometry.Pt(20.3, 3.4)), small, layout.Left, "0")
}
