package built

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// wide is how wide a section is drawn, mm of paper.
const wide = 110.0

// sketch is a section drawn small: mm of the boat to mm of paper, heeled by an angle about
// the keel.
type sketch struct {
	layout.Drawing
	per, heel float64
}

func (s *sketch) at(x, y float64) geometry.Point {
	c, d := math.Cos(s.heel), math.Sin(s.heel)
	return geometry.Pt((x*c-y*d)/s.per, (x*d+y*c)/s.per)
}

func (s *sketch) line(p layout.Pen, ax, ay, bx, by float64) {
	a, b := s.at(ax, ay), s.at(bx, by)
	s.Straight(p, a.X, a.Y, b.X, b.Y)
}

// arrow is a dimension with ticks square to it, lettered from a share of it on, over it or beside
// an upright one.
func (s *sketch) arrow(ax, ay, bx, by, along float64, words string) {
	s.line(layout.Tick, ax, ay, bx, by)
	const tick = 1.2
	dx, dy := bx-ax, by-ay
	p := s.at(ax+along*dx, ay+along*dy)
	l := math.Hypot(dx, dy)
	dx, dy = -dy/l*tick*s.per, dx/l*tick*s.per
	s.line(layout.Tick, ax-dx, ay-dy, ax+dx, ay+dy)
	s.line(layout.Tick, bx-dx, by-dy, bx+dx, by+dy)
	over := 1 + lettering.Width(words, lettering.MinHeight)*math.Sin(math.Abs(s.heel))
	s.Write(p.X+1, p.Y+over, lettering.MinHeight, layout.Left, words)
}

// ribAndRails draws both faces of the rib nearest midship and the gunwales on its heads.
func (p card) ribAndRails(name string, heel float64) *sketch {
	r, d := p.f.Frame.Ribs[p.f.TestRib()], p.f.Frame.Design
	s := &sketch{layout.Drawing{Name: name, Title: "How the boat is measured"}, 2 * r.Section.HalfBreadth / wide, heel}
	for _, side := range []float64{-1, 1} {
		for _, face := range []curve.Path{r.Outer, r.Inner} {
			var line []geometry.Point
			for _, q := range face.Flatten(0.5) {
				line = append(line, s.at(side*q.X, q.Y-r.Section.KeelZ))
			}
			s.Line(layout.Cut, curve.Polyline(line...))
		}
		w, h := float64(d.Gunwale.Width)/2, float64(d.Gunwale.Height)
		b, z := side*r.Section.HalfBreadth, r.Section.Depth
		s.line(layout.Cut, b-w, z, b+w, z)
		s.line(layout.Cut, b+w, z, b+w, z+h)
		s.line(layout.Cut, b+w, z+h, b-w, z+h)
		s.line(layout.Cut, b-w, z+h, b-w, z)
	}
	return s
}

// section shows where the tape goes.
func (p card) section() layout.Drawing {
	r, d := p.f.Frame.Ribs[p.f.TestRib()], p.f.Frame.Design
	s := p.ribAndRails("where-the-tape-goes", 0)
	b, z, w, h := r.Section.HalfBreadth, r.Section.Depth, float64(d.Gunwale.Width)/2, float64(d.Gunwale.Height)
	s.line(layout.Guide, -b-w-20, z+h, b+w+20, z+h)
	s.Write(s.at(b+w+20, z+h).X, s.at(0, z+h).Y+1, lettering.MinHeight, layout.Right, "straightedge")
	s.arrow(-b-w, z-4*s.per, b-w, z-4*s.per, 0.1, "beam, outer to inner face")
	s.arrow(0, r.Thickness/2, 0, z+h, 1.0/3, "depth")
	if k := p.f.Bilge(); k >= 0 {
		q := r.Section.Face(r.Stringers[k], r.Thickness/2)
		y := q.Y - r.Section.KeelZ
		s.arrow(-q.X, y, 0, y, 0.1, "bilge, port")
		s.arrow(0, y, q.X, y, 0.3, "starboard") // past "depth", however high the stringer is
	}
	return s.Drawing
}

// heeled shows the inclining.
func (p card) heeled() layout.Drawing {
	const heel = 8 * math.Pi / 180
	r := p.f.Frame.Ribs[p.f.TestRib()]
	s := p.ribAndRails("inclining", heel)
	draft, half := 0.25*r.Section.Depth, 0.7*r.Section.HalfBreadth
	// Port is drawn to the left, as seen from astern.
	const can = 110.0
	y := r.Section.Depth * 0.12
	x := -half * 0.7
	for _, e := range [][4]float64{{x - can/2, y, x + can/2, y}, {x + can/2, y, x + can/2, y + 2*can}, {x + can/2, y + 2*can, x - can/2, y + 2*can}, {x - can/2, y + 2*can, x - can/2, y}} {
		s.line(layout.Mark, e[0], e[1], e[2], e[3])
	}
	s.line(layout.Center, 0, -0.1*r.Section.Depth, 0, 1.35*r.Section.Depth)
	s.arrow(x, y+2*can+8*s.per/2, 0, y+2*can+8*s.per/2, 0.1, "distance")
	level := draft / s.per
	s.Straight(layout.Guide, -wide*0.62, level, wide*0.62, level)
	s.Write(wide*0.62, level+1, lettering.MinHeight, layout.Right, "water")
	top := s.at(0, 1.35*r.Section.Depth)
	s.Straight(layout.Guide, 0, 0, 0, top.Y)
	s.Write(top.X-1, top.Y+1, lettering.MinHeight, layout.Right, "middle of the boat")
	s.Write(1, top.Y+1, lettering.MinHeight, layout.Left, "plumb: the angle is between them")
	return s.Drawing
}
