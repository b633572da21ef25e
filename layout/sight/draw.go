package sight

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// Picture is a boat as an eye sees it, within a window of the picture.
type Picture struct {
	View   View
	Window geometry.Box                        // of the picture, mm; an empty box for all
	Pen    func(solid.Line) (layout.Pen, bool) // how a line is drawn, and whether
	Fold   layout.Pen                          // of the outlines of folded surfaces
}

// Draw adds what shows to a drawing, the window's origin at a place, mm.
//
// Accuracy: lines are drawn to 0.01 mm on paper; stretches that show over less than 0.05
// mm are left out.
func (p Picture) Draw(d *layout.Drawing, b *solid.Boat, at geometry.Point) {
	s := NewScreen(p.View, b, p.Window)
	add := func(pen layout.Pen, pts []geometry.Point3) {
		for _, run := range s.Runs(pts) {
			for i := range run {
				run[i] = run[i].Add(at)
			}
			d.Line(pen, curve.Polyline(run...))
		}
	}
	for _, l := range b.Lines {
		if pen, drawn := p.Pen(l); drawn {
			add(pen, l.Points)
		}
	}
	for _, f := range b.Folds {
		if p.View.outline(f) {
			add(p.Fold, []geometry.Point3{f.A, f.B})
		}
	}
}

// outline tells whether both faces of a fold lie to one side of its edge.
func (v *View) outline(f solid.Fold) bool {
	for _, p := range [4]geometry.Point3{f.A, f.B, f.P, f.Q} {
		if !v.seen(p) {
			return false
		}
	}
	a := v.place(f.A).Point
	way := v.place(f.B).Sub(a)
	p, q := way.Cross(v.place(f.P).Sub(a)), way.Cross(v.place(f.Q).Sub(a))
	const nothing = 1e-9 // mm2 of paper: a face that is no more than its edge
	return p > nothing && q > nothing || p < -nothing && q < -nothing
}

// crumb is the least that is drawn of a line, mm of paper; close is how far a line that
// is drawn with fewer places may leave it.
const (
	crumb = 0.05
	close = 0.01
)

// Runs returns what shows of a line in space within the window, outside it too where that
// was empty: each run as its places in the picture.
func (s *Screen) Runs(pts []geometry.Point3) [][]geometry.Point {
	var out [][]geometry.Point
	var run []geometry.Point
	end := func() {
		if length(run) >= crumb {
			out = append(out, thinned([]geometry.Point{run[0]}, run))
		}
		run = run[:0]
	}
	for i := 1; i < len(pts); i++ {
		p, q, ok := s.view.line(pts[i-1], pts[i])
		if !ok {
			end()
			continue
		}
		a, b := s.view.place(p), s.view.place(q)
		if a.Point == b.Point {
			continue
		}
		if s.bounded && !geometry.Around(a.Point, b.Point).Overlaps(s.window) {
			end()
			continue
		}
		shows := s.showing(a, b)
		if s.bounded {
			shows = within(shows, a.Point, b.Point, s.window)
		}
		for _, sh := range shows {
			from, to := a.Lerp(b.Point, sh.from), b.Point
			if sh.to < 1 {
				to = a.Lerp(b.Point, sh.to)
			}
			if sh.from > 0 || len(run) == 0 || run[len(run)-1] != from {
				end()
				run = append(run, from)
			}
			run = append(run, to)
		}
		if n := len(shows); n == 0 || shows[n-1].to < 1 {
			end()
		}
	}
	end()
	return out
}

// within cuts stretches of the line from a to b to a window.
func within(shows []span, a, b geometry.Point, window geometry.Box) []span {
	lo, hi := 0.0, 1.0
	for _, c := range [4][2]float64{{a.X - window.Min.X, b.X - window.Min.X}, {window.Max.X - a.X, window.Max.X - b.X},
		{a.Y - window.Min.Y, b.Y - window.Min.Y}, {window.Max.Y - a.Y, window.Max.Y - b.Y}} {
		switch in := c[0] / (c[0] - c[1]); {
		case c[0] < 0 && c[1] < 0:
			return nil
		case c[0] < 0:
			lo = max(lo, in)
		case c[1] < 0:
			hi = min(hi, in)
		}
	}
	var out []span
	for _, s := range shows {
		if s.from, s.to = max(s.from, lo), min(s.to, hi); s.from < s.to {
			out = append(out, s)
		}
	}
	return out
}

func length(run []geometry.Point) (sum float64) {
	for i := 1; i < len(run); i++ {
		sum += run[i].Sub(run[i-1]).Norm()
	}
	return sum
}

// thinned adds the places of a line but its first, without those that lie nearly straight
// between others.
func thinned(to, pts []geometry.Point) []geometry.Point {
	last := len(pts) - 1
	far, at := close, 0
	for i := 1; i < last; i++ {
		if off := pts[i].Off(pts[0], pts[last]); off > far {
			far, at = off, i
		}
	}
	if at == 0 {
		return append(to, pts[last])
	}
	return thinned(thinned(to, pts[:at+1]), pts[at:])
}
