package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
	"ribwright/layout"
)

// section draws every boat at its rib nearest to where there is least room at
// the sides, or where a boat that does not nest is held up.
func section(s *stow.Stack, units measure.System) layout.Drawing {
	var d layout.Drawing
	k := scaleFor(s.Width, 230)
	at := tight(s)
	names := ""
	for i, b := range s.Boats {
		p := s.Places[i]
		x := at - p.X
		if p.Turned {
			x = -x
		}
		r, ok := nearest(b.Frame, x)
		if !ok {
			continue
		}
		for _, mirror := range []float64{1, -1} {
			m := geometry.Stretch(mirror, 1).Then(geometry.Shift(0, p.Z)).Then(geometry.Stretch(1/k, 1/k))
			for _, line := range lines(b, r) {
				d.Line(penOf(i), line.Map(m))
			}
		}
		if names != "" {
			names += ", "
		}
		names += fmt.Sprintf("%d %s rib %s", i+1, b.Title, r.Name)
	}
	rooms(&d, s, k)
	b := d.Bounds()
	dimension(&d, geometry.Pt(-s.Width/2/k, b.Min.Y-5), geometry.Pt(s.Width/2/k, b.Min.Y-5), units.Length(math.Round(s.Width)))
	d.Write(-s.Width/2/k, b.Min.Y-17, fleetSmall, layout.Left, fmt.Sprintf("Section near %s mm from midship of boat 1, 1:%g: %s", measure.MM(at, 0), k, names))
	return d
}

// rooms marks the least room at the sides of each pair, from the top down, their
// words clear of one another.
func rooms(d *layout.Drawing, s *stow.Stack, k float64) {
	type mark struct {
		at    geometry.Point
		words string
	}
	var marks []mark
	for i, p := range s.Pairs {
		if c := p.Rooms[stow.Sides]; c.Meets() {
			at := geometry.Pt(c.At.Y, c.At.Z+s.Places[i].Z).Scale(1 / k)
			marks = append(marks, mark{at, fmt.Sprintf("%d in %d: %.1f mm free", i+2, i+1, c.Room)})
		}
	}
	slices.SortFunc(marks, func(a, b mark) int { return cmp.Compare(b.at.Y, a.at.Y) })
	low := math.Inf(1)
	for _, m := range marks {
		low = math.Min(low-2*fleetSmall, m.at.Y)
		x := s.Width/2/k + 10
		d.Line(layout.Mark, curve.Circle(m.at, 2))
		d.Straight(layout.Guide, m.at.X+2, m.at.Y, x-1, low)
		d.Write(x, low-fleetSmall/2, fleetSmall, layout.Left, m.words)
	}
}

// tight is the station, in the axes of the first boat, where there is least room
// at the sides.
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

// nearest returns the rib nearest to a station, false beyond the boat.
func nearest(f *frame.Frame, x float64) (frame.Rib, bool) {
	best := f.Ribs[0]
	for _, r := range f.Ribs {
		if math.Abs(r.Station-x) < math.Abs(best.Station-x) {
			best = r
		}
	}
	return best, math.Abs(x) < f.Hull.Length/2
}

// lines are the cloth, the rib, the stringers, the keel and the gunwale of the
// port side at a rib.
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
