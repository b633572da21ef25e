package figure

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
	"ribwright/layout"
)

// fleetSmall is the height of a nest's lettering, mm.
const fleetSmall = 2.8

// Fleet draws a nest of boats: the profile of all of them above, and below a section
// where there is least room.
func Fleet(s *stow.Stack, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "stack", Title: "Nest of " + boatNames(s)}
	sec := section(s, units)
	box := sec.Bounds()
	prof := profile(s, units)
	pb := prof.Bounds()
	put(&d, sec, geometry.Shift(-box.Center().X, -box.Min.Y))
	put(&d, prof, geometry.Shift(-pb.Center().X, box.H()+12-pb.Min.Y))
	return d
}

// FleetAbout says in words what the figure shows.
func FleetAbout(s *stow.Stack) string {
	return fmt.Sprintf("Profile and section of %s, one in the other, %.0f mm high, %.0f mm wide and %.0f mm long.", boatNames(s), s.Height, s.Width, s.Length)
}

// boatNames lists the boats from the outermost in.
func boatNames(s *stow.Stack) string {
	out := ""
	for i, b := range s.Boats {
		switch {
		case i == 0:
		case i == len(s.Boats)-1:
			out += " and "
		default:
			out += ", "
		}
		out += b.Title
	}
	return out
}

// put adds one drawing to another, moved.
func put(d *layout.Drawing, e layout.Drawing, m geometry.Affine) {
	for _, s := range e.Strokes {
		d.Line(s.Pen, s.Path.Map(m))
	}
	for _, t := range e.Texts {
		t.At = m.Apply(t.At)
		d.Texts = append(d.Texts, t)
	}
}

// penOf tells neighbors in a stack apart.
func penOf(i int) layout.Pen { return [...]layout.Pen{layout.Cut, layout.Tick}[i%2] }

// scaleFor returns the first usual scale at which mm fit on paper.
func scaleFor(mm, paper float64) float64 {
	for _, k := range []float64{2, 3, 4, 5, 8, 10, 15, 20, 25, 30} {
		if mm/k <= paper {
			return k
		}
	}
	return 40
}

// profile draws every boat from its side, bows of unturned boats to the right.
func profile(s *stow.Stack, units measure.System) layout.Drawing {
	var d layout.Drawing
	k := scaleFor(s.Length, 260)
	onPaper := geometry.Stretch(1/k, 1/k)
	top := s.Height / k
	left, right := math.Inf(1), math.Inf(-1)
	for i, b := range s.Boats {
		m := side(s.Places[i]).Then(onPaper)
		f := b.Frame
		lines := []curve.Path{keel(f), sheer(f, 0), sheer(f, f.Gunwale.Height*math.Cos(f.Gunwale.Tilt)), post(f.Hull.Bow, 1), post(f.Hull.Stern, -1)}
		box := geometry.EmptyBox()
		for _, l := range lines {
			moved := l.Map(m)
			d.Line(penOf(i), moved)
			box = box.Union(moved.Bounds())
		}
		left, right = math.Min(left, box.Min.X), math.Max(right, box.Max.X)
		head := m.Apply(geometry.Pt(f.Hull.Bow.GunwaleX, f.Hull.Bow.TopZ))
		over := top + 5 + 6*float64(len(s.Boats)-1-i)
		d.Straight(layout.Guide, head.X, head.Y+1, head.X, over-1)
		d.Write(head.X, over, 3.2, layout.Right, fmt.Sprintf("%d %s", i+1, b.Title))
	}
	dimension(&d, geometry.Pt(left, -8), geometry.Pt(right, -8), units.Length(math.Round(s.Length)))
	dimension(&d, geometry.Pt(left-8, 0), geometry.Pt(left-8, top), units.Length(math.Round(s.Height)))
	d.Write(left, -20, fleetSmall, layout.Left, fmt.Sprintf("Profile, 1:%g", k))
	return d
}

// side takes a boat's profile into the axes of the stack.
func side(p stow.Place) geometry.Affine {
	turn := 1.0
	if p.Turned {
		turn = -1
	}
	return geometry.Stretch(turn, 1).Then(geometry.Shift(p.X, p.Z))
}

// dimension draws a line with its length: level lines have it below, upright
// ones to the left.
func dimension(d *layout.Drawing, a, b geometry.Point, words string) {
	across := b.Sub(a).Unit().Left().Scale(1.5)
	for _, e := range []geometry.Point{a, b} {
		p, q := e.Sub(across), e.Add(across)
		d.Straight(layout.Tick, p.X, p.Y, q.X, q.Y)
	}
	d.Straight(layout.Tick, a.X, a.Y, b.X, b.Y)
	mid := a.Lerp(b, 0.5)
	if a.Y == b.Y {
		d.Write(mid.X, mid.Y-4.5, fleetSmall, layout.Middle, words)
		return
	}
	d.WriteAt(geometry.Pt(mid.X-1.7, mid.Y), fleetSmall, math.Pi/2, layout.Middle, words)
}

func keel(f *frame.Frame) curve.Path {
	var pts []geometry.Point
	a, b := -f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X
	for i := range 61 {
		x := a + (b-a)*float64(i)/60
		z, _ := f.Hull.KeelZ(x)
		pts = append(pts, geometry.Pt(x, z))
	}
	return curve.Polyline(pts...)
}

// sheer is an edge of the gunwale from the side, up mm over the gunwale line.
func sheer(f *frame.Frame, up float64) curve.Path {
	var pts []geometry.Point
	a, b := f.Gunwale.Line.Ends()
	for i := range 61 {
		p := f.Gunwale.Line.Point(a + (b-a)*float64(i)/60)
		pts = append(pts, geometry.Pt(p.X, p.Z+up))
	}
	return curve.Polyline(pts...)
}

func post(e hull.End, side float64) curve.Path {
	return e.Outer.Path(e.Toe, e.Heading).Map(geometry.Stretch(side, 1))
}
