package figure

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/curve"
	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// fleetSmall is the height of a nest's lettering, mm.
const fleetSmall = 2.8

// Fleet draws a nest of boats: the profile of all of them above, and below a section
// where there is least room. Where a boat does not nest, both show the place that holds
// it up, and the section where it should lie; what failed is written below with its cure.
func Fleet(s *stow.Stack, failed finding.List, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "stack", Title: "Nest of " + boatNames(s)}
	sec := section(s, units)
	box := sec.Bounds()
	prof := profile(s, units)
	pb := prof.Bounds()
	put(&d, sec, geometry.Shift(-box.Center().X, -box.Min.Y))
	put(&d, prof, geometry.Shift(-pb.Center().X, box.H()+12-pb.Min.Y))
	fails(&d, failed)
	return d
}

// fails writes under a drawing which boats do not nest, where, by how much and what
// would cure it.
func fails(d *layout.Drawing, failed finding.List) {
	const wide, line = 215.0, 4.4
	left, y := d.Bounds().Min.X, d.Bounds().Min.Y-2*line
	for _, f := range failed {
		for _, words := range lettering.Wrap(f.About+" does not nest: "+f.Words(), fleetSmall, wide) {
			d.Write(left, y, fleetSmall, layout.Left, words)
			y -= line
		}
	}
}

// holdsUp reports whether a pair does not nest for what lies directly under it.
func holdsUp(p *stow.Pair) bool { return !p.Nests && p.Bound.Meets() && p.Far == nil }

// FleetAbout says in words what the figure shows.
func FleetAbout(s *stow.Stack) string {
	return fmt.Sprintf("Profile and section of %s, one in the other, %.0f mm high, %.0f mm wide and %.0f mm long.", boatNames(s), s.Height, s.Width, s.Length)
}

func boatNames(s *stow.Stack) string {
	var titles []string
	for _, b := range s.Boats {
		titles = append(titles, b.Title)
	}
	return wording.And(titles)
}

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
	top := s.Height / k
	left, right := math.Inf(1), math.Inf(-1)
	for i, b := range s.Boats {
		m := geometry.Shift(s.Places[i].X, s.Places[i].Z).Then(geometry.Stretch(1/k, 1/k)) // from the boat's own axes
		if s.Places[i].Turned {
			m = geometry.Stretch(-1, 1).Then(m)
		}
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
	for i, p := range s.Pairs {
		if holdsUp(p) {
			q := s.Places[i].Outer(p.Bound.At)
			d.Line(layout.Mark, curve.Circle(geometry.Pt(q.X/k, q.Z/k), 3))
		}
	}
	dimension(&d, geometry.Pt(left, -8), geometry.Pt(right, -8), units.Length(math.Round(s.Length)))
	dimension(&d, geometry.Pt(left-8, 0), geometry.Pt(left-8, top), units.Length(math.Round(s.Height)))
	d.Write(left, -20, fleetSmall, layout.Left, fmt.Sprintf("Profile, 1:%g", k))
	return d
}

// dimension draws a line with its length: level lines have it below, upright ones to the left.
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
	return through(-f.Hull.Stern.Toe.X, f.Hull.Bow.Toe.X, 60, func(x float64) geometry.Point {
		z, _ := f.Hull.KeelZ(x)
		return geometry.Pt(x, z)
	})
}

// sheer is an edge of the gunwale from the side, up mm over the gunwale line.
func sheer(f *frame.Frame, up float64) curve.Path {
	a, b := f.Gunwale.Line.Ends()
	return through(a, b, 60, func(x float64) geometry.Point {
		p := f.Gunwale.Line.Point(x)
		return geometry.Pt(p.X, p.Z+up)
	})
}

func post(e hull.End, side float64) curve.Path {
	return e.Outer.Path(e.Toe, e.Heading).Map(geometry.Stretch(side, 1))
}

// section draws every boat at its rib nearest to where there is least room at
// the sides, or where a boat that does not nest is held up.
func section(s *stow.Stack, units measure.System) layout.Drawing {
	var d layout.Drawing
	k := scaleFor(s.Width, 230)
	at := tight(s)
	var names []string
	for i, b := range s.Boats {
		p := s.Places[i]
		x := at - p.X
		if p.Turned {
			x = -x
		}
		if math.Abs(x) >= b.Frame.Hull.Length/2 { // beyond the boat
			continue
		}
		r := b.Frame.Nearest(x)
		for _, mirror := range []float64{1, -1} {
			m := geometry.Stretch(mirror, 1).Then(geometry.Shift(0, p.Z)).Then(geometry.Stretch(1/k, 1/k))
			for _, line := range lines(b, r) {
				d.Line(penOf(i), line.Map(m))
			}
		}
		if i > 0 && holdsUp(s.Pairs[i-1]) { // where it should lie
			for _, mirror := range []float64{1, -1} {
				m := geometry.Stretch(mirror, 1).Then(geometry.Shift(0, p.Z-s.Pairs[i-1].Lift())).Then(geometry.Stretch(1/k, 1/k))
				d.Line(layout.Guide, r.Outer.Map(m))
			}
		}
		names = append(names, fmt.Sprintf("%d %s rib %s", i+1, b.Title, r.Name))
	}
	rooms(&d, s, k)
	b := d.Bounds()
	dimension(&d, geometry.Pt(-s.Width/2/k, b.Min.Y-5), geometry.Pt(s.Width/2/k, b.Min.Y-5), units.Length(math.Round(s.Width)))
	d.Write(-s.Width/2/k, b.Min.Y-17, fleetSmall, layout.Left, fmt.Sprintf("Section near %s mm from midship of boat 1, 1:%g: %s", measure.MM(at, 0), k, strings.Join(names, ", ")))
	return d
}

// rooms marks the least room at the sides of each pair, from the top down, their
// words clear of one another.
func rooms(d *layout.Drawing, s *stow.Stack, k float64) {
	var marks []layout.Text
	for i, p := range s.Pairs {
		if holdsUp(p) {
			q := s.Places[i].Outer(p.Bound.At)
			marks = append(marks, layout.Text{At: geometry.Pt(q.Y, q.Z).Scale(1 / k), Words: fmt.Sprintf("%d in %d: %.0f mm too high", i+2, i+1, p.Lift())})
			continue
		}
		if !s.Nests { // the section is at what fails
			continue
		}
		if c := p.Rooms[stow.Sides]; c.Meets() {
			at := geometry.Pt(c.At.Y, c.At.Z+s.Places[i].Z).Scale(1 / k)
			marks = append(marks, layout.Text{At: at, Words: fmt.Sprintf("%d in %d: %.1f mm free", i+2, i+1, c.Room)})
		}
	}
	sort.SliceStable(marks, func(i, j int) bool { return marks[j].At.Y < marks[i].At.Y })
	low := math.Inf(1)
	for _, m := range marks {
		low = math.Min(low-2*fleetSmall, m.At.Y)
		x := s.Width/2/k + 10
		d.Line(layout.Mark, curve.Circle(m.At, 2))
		d.Straight(layout.Guide, m.At.X+2, m.At.Y, x-1, low)
		d.Write(x, low-fleetSmall/2, fleetSmall, layout.Left, m.Words)
	}
}

// tight is the station, in the axes of the first boat, where there is least room at the sides.
func tight(s *stow.Stack) float64 {
	least, at := math.Inf(1), 0.0
	for i, p := range s.Pairs {
		c := p.Rooms[stow.Sides]
		if p.Bound.Meets() && p.Far == nil {
			c = p.Bound
		}
		if c.Room < least {
			least, at = c.Room, s.Places[i].Outer(c.At).X
		}
	}
	return at
}

// lines are the cloth, the rib, the stringers, the keel and the gunwale of the port side at a rib.
func lines(b *stow.Boat, r frame.Rib) []curve.Path {
	f := b.Frame
	flat := func(across, up float64) geometry.Point {
		p := f.Gunwale.EdgeAt(r.Station, across, up)
		return geometry.Pt(p.Y, p.Z)
	}
	w, h := f.Gunwale.Width/2, f.Gunwale.Height
	skin := f.Corners(r)
	z, wide, deep := skin[0].Y, float64(f.Design.Keel.Width)/2, float64(f.Design.Keel.Depth)
	out := []curve.Path{
		curve.Polyline(b.Cloth.At(r.Station)...), r.Inner, r.Outer,
		curve.Polyline(geometry.Pt(wide, z), geometry.Pt(wide, z+deep), geometry.Point{Y: z + deep}),
		curve.Polygon(flat(-w, 0), flat(w, 0), flat(w, h), flat(-w, h)),
	}
	depth := float64(f.Design.Stringers.Depth)
	for i := range f.Stringers {
		a, b := skin[2+2*i], skin[3+2*i]
		in := b.Sub(a).Left().Unit().Scale(depth)
		out = append(out, curve.Polygon(a, b, b.Add(in), a.Add(in)))
	}
	return out
}
