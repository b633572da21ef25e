package layout

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout/lettering"
)

// Line draws a straight line on the sheet.
func (s *Sheet) Line(p Pen, a, b geometry.Point) {
	s.Strokes = append(s.Strokes, Stroke{Pen: p, Path: curve.Polyline(a, b)})
}

// Write letters level words on the sheet; any text is made safe first.
func (s *Sheet) Write(at geometry.Point, height float64, a Align, words string) {
	if words = lettering.Safe(words); words != "" {
		s.Texts = append(s.Texts, Text{At: at, Height: height, Align: a, Words: words})
	}
}

// RuleHalf is how far a scale bar's lettering reaches to either side of its line, mm.
const RuleHalf = 3.8

// Rule draws a scale bar from a point along a direction of length 1: centimetres
// on its left, whole inches on its right, both lettered. It is long mm long.
func (s *Sheet) Rule(from, along geometry.Point, long float64) {
	const short = 0.9 // a tick under the unit of the last figure
	s.Line(Mark, from, from.Add(along.Scale(long)))
	r := ruleSide{s, from, along, along.Left(), long}
	r.ticks(10, 5, short, tickTall)
	r.letter("mm", 10, 5, RuleHalf-lettering.MinHeight)
	r.left = r.left.Scale(-1)
	r.ticks(25.4, 1, 2, tickTall)
	r.letter("in", 25.4, 2, RuleHalf)
}

// How far a slim scale bar reaches to either side of its line, and over its end, mm.
const (
	BarLeft  = 0.85 + lettering.MinHeight
	BarRight = tickTall
	BarOver  = 8.5
)

const tickTall = 2.0 // of the ticks that figures stand at, mm

// Bar draws a slim scale bar of whole inches: centimeters on its left, lettered as on a
// rule; whole inches on its right, of which the last is lettered, over the end.
func (s *Sheet) Bar(from, along geometry.Point, inches int) {
	const shortest = 0.6 // a tick under the unit of the last figure
	long := 25.4 * float64(inches)
	s.Line(Mark, from, from.Add(along.Scale(long)))
	r := ruleSide{s, from, along, along.Left(), long}
	r.ticks(10, 5, shortest, tickTall)
	r.letter("mm", 10, 5, BarLeft-lettering.MinHeight)
	r.left = r.left.Scale(-1)
	r.ticks(25.4, 1, tickTall, tickTall)
	end := from.Add(along.Scale(long + 1)).Add(r.left.Scale(lettering.MinHeight / 2))
	s.Texts = append(s.Texts, Text{At: end, Height: lettering.MinHeight, Angle: math.Atan2(along.Y, along.X), Align: Left, Words: fmt.Sprintf("%d in", inches)})
}

// ruleSide is one side of a scale bar.
type ruleSide struct {
	sheet             *Sheet
	from, along, left geometry.Point
	long              float64
}

// ticks draws one for every step, longer ones for every so many.
func (r ruleSide) ticks(step float64, every int, short, tall float64) {
	for i := 0; float64(i)*step <= r.long+1e-9; i++ {
		at, high := r.from.Add(r.along.Scale(float64(i)*step)), short
		if i%every == 0 {
			high = tall
		}
		r.sheet.Line(Tick, at, at.Add(r.left.Scale(high)))
	}
}

// letter writes figures beside every so many ticks, the last one with its unit.
func (r ruleSide) letter(unit string, step float64, every int, off float64) {
	last := int(math.Floor((r.long + 1e-9) / step))
	angle := math.Atan2(r.along.Y, r.along.X)
	write := func(i int, shift float64, a Align, words string) {
		at := r.from.Add(r.along.Scale(float64(i)*step + shift)).Add(r.left.Scale(off))
		r.sheet.Texts = append(r.sheet.Texts, Text{At: at, Height: lettering.MinHeight, Angle: angle, Align: a, Words: words})
	}
	per := 1.0 // of the unit to a step
	if unit == "mm" {
		per = step
	}
	figure := func(i int) string { return fmt.Sprint(float64(i) * per) }
	for i := 0; float64(last-i)*step > 25 || i == 0; i += every {
		write(i, 2, Left, figure(i))
	}
	write(last, -1.8, Right, figure(last)+" "+unit)
}
