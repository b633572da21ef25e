package outfits

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
)

// panelHigh is how high a panel is drawn in its sketch at most, mm.
const panelHigh = 62.0

// TapedPanels draws the panels small, each with the distances that set it out on a
// floor, and the corners of the sail at full size.
func TapedPanels(f *sail.Fit, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	for i := range f.Cloth.Panels {
		out = append(out, tapedPanel(f, i, units))
	}
	out = append(out, wholeSail(f))
	for i := range f.Cloth.Panels {
		out = append(out, cornersOf(f, i, units)...)
	}
	return out
}

// wholeSail draws small how the panels lie together, leech down as on each of them.
func wholeSail(f *sail.Fit) layout.Drawing {
	box := geometry.Around(f.Cloth.Finished...)
	n := scaleFor(box.W(), box.H())
	d := layout.Drawing{Name: "sail-whole", Title: "Whole sail", Family: "Sail panels", Make: "SKETCH " + ratio(n)}
	s := &sketcher{d: &d, k: 1 / n, mid: box.Center()}
	s.write(small, "SKETCH "+ratio(n)+": how the panels lie together, leech down as on each of them.")
	top := s.y - 5
	m := geometry.Shift(-s.mid.X, -s.mid.Y).Then(geometry.Stretch(s.k, s.k)).Then(geometry.Shift(sketchWide/2, top-box.H()*s.k/2))
	d.Line(layout.Mark, curve.Polygon(f.Cloth.Finished...).Map(m))
	for i, p := range f.Cloth.Panels {
		if len(p.Edge) < 3 {
			continue
		}
		at := m.Apply(sail.Centroid(p.Edge))
		d.Write(at.X, at.Y, small, layout.Middle, fmt.Sprint(i+1))
		if a, b, ok := sail.Chord(f.Cloth.Finished, geometry.Pt(0, p.Seam), geometry.Pt(1, 0)); ok && !math.IsNaN(p.Seam) {
			d.Line(layout.Guide, curve.Polyline(a, b).Map(m))
		}
	}
	for _, r := range reefsOn(f, f.Cloth.Finished) {
		d.Line(layout.Center, curve.Polyline(r.a, r.b).Map(m))
	}
	middle := m.Apply(sail.Centroid(f.Cloth.Finished))
	for i, q := range f.Plan.Corners {
		at := m.Apply(f.Cloth.Turn.Apply(q))
		at = at.Add(middle.Sub(at).Unit().Scale(9))
		d.Write(at.X, at.Y-small/2, small, layout.Middle, f.Plan.Names[i])
	}
	s.y = top - box.H()*s.k - 3
	eyelets, _ := f.Eyelets()
	s.write(small, "Dashed: the next panel's edge; long and short: a reef. Eyelets: "+eyelets+". Patches: three layers, 120, 90 and 60 along each edge from the corner, turned under and sewn all round.")
	keepWords(&d)
	return d
}

// point letters a corner of a panel: A and B are the ends of its base line.
func point(i int) string { return string(rune('A' + i)) }

// reefEnd letters an end of a reef's line.
func reefEnd(reef, end int) string { return string(rune('r' + 2*reef + end)) }

func tapedPanel(f *sail.Fit, i int, units measure.System) layout.Drawing {
	p, count := f.Cloth.Panels[i], len(f.Cloth.Panels)
	t, box := p.Tape(), geometry.Around(p.Outline...)
	n := scaleFor(box.W(), box.H()*sketchHigh/panelHigh)
	d := layout.Drawing{Name: fmt.Sprintf("panel-%d", i+1), Title: fmt.Sprintf("Panel %d of %d", i+1, count), Family: "Sail panels",
		Make: "cut 1 of cloth, SKETCH " + ratio(n)}
	s := &sketcher{d: &d, units: units, k: 1 / n, mid: box.Center()}
	s.write(small, fmt.Sprintf("SKETCH %s, not full size: tape it out on a floor, hems and seams are in it.", ratio(n)))
	s.panel(f, p, t, box)
	s.points(t, reefsOn(f, p.Edge))
	for k, r := range reefsOn(f, p.Edge) {
		s.write(small, fmt.Sprintf("%s to %s is the %s, its ends on the finished edge or the seam.", reefEnd(k, 0), reefEnd(k, 1), r.name))
	}
	for _, r := range t.Rounds {
		s.write(small, roundWords(r, len(t.Corners), units))
	}
	s.write(small, "1. Stretch a string from A to B. 2. Strike arcs from A and from B with two tapes: where they cross is the point. 3. Check along and off with a square. 4. Measure the sides.")
	s.write(small, "Sides: "+strings.Join(sides(t, units), ", ")+".")
	s.write(small, fmt.Sprintf("Hem %s all round the sail; the finished edge lies that far in. %s", units.Whole(float64(f.Sail.Hem)), seamWords(f, i, units)))
	keepWords(&d)
	return d
}

// seamWords say how a panel joins the ones beside it.
func seamWords(f *sail.Fit, i int, units measure.System) string {
	var out []string
	if i == 0 {
		out = append(out, "A to B is the leech, clew to peak.")
	} else {
		out = append(out, fmt.Sprintf("A to B is the seam on panel %d, A toward the foot.", i))
	}
	if i < len(f.Cloth.Panels)-1 {
		out = append(out, fmt.Sprintf("Panel %d lies %s over the far edge.", i+2, units.Whole(float64(f.Sail.Seam))))
	}
	return strings.Join(out, " ")
}

func sides(t sail.Taped, units measure.System) []string {
	var out []string
	for i, q := range t.Corners {
		j := (i + 1) % len(t.Corners)
		out = append(out, fmt.Sprintf("%s-%s %s", point(i), point(j), units.Whole(t.Corners[j].Sub(q).Norm())))
	}
	return out
}

// roundWords tell how a round edge is struck.
func roundWords(r sail.Round, corners int, units measure.System) string {
	var off []string
	for _, v := range r.Off {
		off = append(off, units.Whole(v))
	}
	return fmt.Sprintf("%s to %s is round: %s straight across. At each eighth of that, %s apart, it stands outside the line by %s. Bend a batten through them.", point(r.From), point((r.From+1)%corners),
		units.Whole(r.Chord), units.Whole(r.Chord/float64(len(r.Off)+1)), strings.Join(off, ", "))
}

// panel draws a panel small, its corners lettered.
func (s *sketcher) panel(f *sail.Fit, p sail.Panel, t sail.Taped, box geometry.Box) {
	s.y -= 8
	top := s.y
	m := geometry.Shift(-s.mid.X, -s.mid.Y).Then(geometry.Stretch(s.k, s.k)).Then(geometry.Shift(sketchWide/2, top-box.H()*s.k/2))
	s.d.Line(layout.Mark, curve.Polygon(p.Outline...).Map(m))
	if len(p.Edge) > 2 {
		s.d.Line(layout.Tick, curve.Polygon(p.Edge...).Map(m))
	}
	if !math.IsNaN(p.Seam) {
		a, b := across(p.Outline, p.Seam)
		s.d.Line(layout.Guide, curve.Polyline(geometry.Pt(a, p.Seam), geometry.Pt(b, p.Seam)).Map(m))
	}
	middle := m.Apply(sail.Centroid(p.Outline))
	for i, q := range t.Corners {
		at := m.Apply(q)
		at = at.Add(at.Sub(middle).Unit().Scale(3.5))
		s.d.Write(at.X, at.Y-small/2, head, layout.Middle, point(i))
	}
	for k, r := range reefsOn(f, p.Edge) {
		s.d.Line(layout.Center, curve.Polyline(r.a, r.b).Map(m))
		for i, q := range []geometry.Point{r.a, r.b} {
			at := m.Apply(q)
			at = at.Add(at.Sub(middle).Unit().Scale(-5))
			s.d.Write(at.X, at.Y-small/2, small, layout.Middle, reefEnd(k, i))
		}
	}
	for i, q := range f.Plan.Corners {
		at := f.Cloth.Turn.Apply(q)
		if box.Holds(at) {
			at = m.Apply(at)
			at = at.Add(middle.Sub(at).Unit().Scale(9))
			s.d.Write(at.X, at.Y-small/2, small, layout.Middle, f.Plan.Names[i])
		}
	}
	s.y = top - box.H()*s.k - 5
}

// points is the table of the corners, and of the ends of reefs.
func (s *sketcher) points(t sail.Taped, reefs []reefed) {
	a, b := t.Corners[0], t.Corners[1%len(t.Corners)]
	along := b.Sub(a).Unit()
	ends := []float64{6, 38, 66, 94, sketchWide}
	line := func(cells ...string) { s.cells(ends, cells...) }
	line("", "along A-B", "off it", "from A", "from B")
	all, names := slices.Clone(t.Corners), []string{}
	for i := range all {
		names = append(names, point(i))
	}
	for k, r := range reefs {
		all, names = append(all, r.a, r.b), append(names, reefEnd(k, 0), reefEnd(k, 1))
	}
	for i, q := range all {
		line(names[i], s.units.Whole(q.Sub(a).Dot(along)), s.units.Whole(along.Cross(q.Sub(a))), s.units.Whole(q.Sub(a).Norm()), s.units.Whole(q.Sub(b).Norm()))
	}
}

// cornerReach is how much more than its hem a corner at full size shows all round, mm.
const cornerReach = 30.0

// cornersOf draws the corners of the sail that lie in a panel at full size, in the
// panel's axes.
func cornersOf(f *sail.Fit, i int, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	p := f.Cloth.Panels[i]
	t := p.Tape()
	for k, q := range f.Plan.Corners {
		at := f.Cloth.Turn.Apply(q)
		near := nearest(t.Corners, at)
		if !curve.Holds(p.Outline, at) { // it lies in another panel
			continue
		}
		d := layout.Drawing{Name: fmt.Sprintf("corner-%s-%d", strings.ReplaceAll(f.Plan.Names[k], " ", "-"), i+1),
			Title: "Corner: " + f.Plan.Names[k], Family: "Corners of the sail", Make: fmt.Sprintf("panel %d, point %s, full size", i+1, point(near))}
		frame := geometry.Around(at).Grow(cornerReach + float64(f.Sail.Hem))
		part(&d, layout.Cut, layout.Guide, p.Outline, frame)
		part(&d, layout.Mark, layout.Guide, p.Edge, frame)
		low := d.Bounds().Min
		for n, l := range []string{fmt.Sprintf("%s, panel %d, point %s", d.Title, i+1, point(near)), "thin: finished edge; patch it in three layers"} {
			d.Write(low.X, low.Y-row*float64(n+1), small, layout.Left, l)
		}
		keepWords(&d)
		out = append(out, d)
	}
	return out
}

func nearest(all []geometry.Point, to geometry.Point) int {
	best := 0
	for i, q := range all {
		if q.Sub(to).Norm() < all[best].Sub(to).Norm() {
			best = i
		}
	}
	return best
}

// part draws what of a polygon lies in a frame: its own sides with one pen, those that
// the frame makes with another.
func part(d *layout.Drawing, own, ends layout.Pen, pts []geometry.Point, frame geometry.Box) {
	in := clipped(pts, frame)
	for i, a := range in {
		b := in[(i+1)%len(in)]
		pen := own
		if onFrame(a, b, frame) {
			pen = ends
		}
		d.Straight(pen, a.X, a.Y, b.X, b.Y)
	}
}

// clipped keeps what of a polygon that is nowhere hollow lies in a frame.
func clipped(pts []geometry.Point, f geometry.Box) []geometry.Point {
	for _, side := range []func(geometry.Point) float64{
		func(q geometry.Point) float64 { return q.X - f.Min.X }, func(q geometry.Point) float64 { return f.Max.X - q.X },
		func(q geometry.Point) float64 { return q.Y - f.Min.Y }, func(q geometry.Point) float64 { return f.Max.Y - q.Y },
	} {
		pts = geometry.Beside(pts, side)
	}
	return pts
}

// onFrame reports whether a line lies along the edge of a frame.
func onFrame(a, b geometry.Point, f geometry.Box) bool {
	const close = 1e-6
	along := func(p, q, edge float64) bool { return math.Abs(p-edge) < close && math.Abs(q-edge) < close }
	return along(a.X, b.X, f.Min.X) || along(a.X, b.X, f.Max.X) || along(a.Y, b.Y, f.Min.Y) || along(a.Y, b.Y, f.Max.Y)
}
