package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// Heights of lettering in figures, mm.
const (
	small = 2.5
	head  = 3.0
)

// scaleFor is the largest scale, one to so many, at which so much fits into the room, mm.
func scaleFor(long, wide, room, high float64) float64 {
	for _, s := range []float64{1, 2, 2.5, 4, 5, 6, 8, 10, 12, 15, 16, 20, 24, 25, 30, 35, 40, 50, 60, 80} {
		if long/s <= room && wide/s <= high {
			return s
		}
	}
	return 100
}

func ratio(s float64) string { return fmt.Sprintf("1:%g", s) }

// sketch draws the boat at a scale: its places are mm of the boat, its lettering mm of paper.
type sketch struct {
	layout.Drawing
	per float64 // mm of the boat for one of paper
}

func newSketch(name, title string, per float64) *sketch {
	return &sketch{layout.Drawing{Name: name, Title: title}, per}
}

func (s *sketch) at(x, y float64) geometry.Point { return geometry.Point{X: x / s.per, Y: y / s.per} }

func (s *sketch) path(p layout.Pen, path curve.Path) {
	s.Line(p, path.Map(geometry.Stretch(1/s.per, 1/s.per)))
}

func (s *sketch) line(p layout.Pen, ax, ay, bx, by float64) {
	a, b := s.at(ax, ay), s.at(bx, by)
	if a != b {
		s.Straight(p, a.X, a.Y, b.X, b.Y)
	}
}

// note letters words at a place of the boat, moved by mm of paper.
func (s *sketch) note(x, y, dx, dy float64, a layout.Align, words string) {
	q := s.at(x, y)
	s.Write(q.X+dx, q.Y+dy, small, a, words)
}

// across dimensions a level distance: a line with ticks under its ends, y mm of
// paper, lettered above its middle.
func (s *sketch) across(fromX, toX, y float64, words string) {
	a, b := fromX/s.per, toX/s.per
	s.Straight(layout.Tick, a, y, b, y)
	s.Straight(layout.Tick, a, y-1.2, a, y+1.2)
	s.Straight(layout.Tick, b, y-1.2, b, y+1.2)
	if room := math.Abs(b - a); lettering.Width(lettering.Safe(words), small) > room-1 && room < narrow {
		s.Write(math.Max(a, b)+1.2, y-small/2, small, layout.Left, words)
		return
	}
	s.Write((a+b)/2, y+0.8, small, layout.Middle, words)
}

// narrow is the distance under which a dimension that its words do not fit is lettered
// beside its line, mm of paper.
const narrow = 20.0

// up dimensions an upright distance at x mm of paper, lettered along it; a short one away
// from what is drawn so far.
func (s *sketch) up(fromY, toY, x float64, words string) {
	a, b := fromY/s.per, toY/s.per
	s.Straight(layout.Tick, x, a, x, b)
	s.Straight(layout.Tick, x-1.2, a, x+1.2, a)
	s.Straight(layout.Tick, x-1.2, b, x+1.2, b)
	if room := math.Abs(b - a); lettering.Width(lettering.Safe(words), small) > room-1 && room < narrow {
		if x < s.Bounds().Center().X {
			s.Write(x-1.8, (a+b)/2-small/2, small, layout.Right, words)
			return
		}
		s.Write(x+1.8, (a+b)/2-small/2, small, layout.Left, words)
		return
	}
	s.WriteAt(geometry.Point{X: x - 0.8, Y: (a + b) / 2}, small, math.Pi/2, layout.Middle, words)
}
