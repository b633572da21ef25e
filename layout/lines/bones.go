package lines

import (
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// bone is one line in space.
type bone struct {
	kind kind
	side float64 // 1 port, -1 starboard, 0 both
	pen  layout.Pen
	pts  []geometry.Point3
}

// kind is what a line is of.
type kind int

const (
	wood kind = iota
	seat
	person
	water
	rig
)

// bones are the lines that a boat is drawn with where nothing is hidden.
func (b Boat) bones(e Eye) []bone {
	out := slices.Grow(b.gunwales(), 3*len(b.Frame.Ribs)+4*len(b.Frame.Stringers))
	out = append(out, b.cloth()...)
	out = append(out, b.ribs()...)
	out = append(out, b.ends()...)
	out = append(out, b.across()...)
	out = append(out, b.people(e)...)
	out = append(out, b.rig()...)
	return append(out, b.waterline()...)
}

// even are n+1 places from a to b.
func even(a, b float64, n int, at func(x float64) geometry.Point3) []geometry.Point3 {
	out := make([]geometry.Point3, n+1)
	for i := range out {
		out[i] = at(a + (b-a)*float64(i)/float64(n))
	}
	return out
}

func across(p geometry.Point3, side float64) geometry.Point3 {
	p.Y *= side
	return p
}

func (b Boat) gunwales() (out []bone) {
	g := &b.Frame.Gunwale
	aft, fore := g.Line.Ends()
	for _, side := range []float64{1, -1} {
		for _, off := range []float64{0.5, -0.5} {
			out = append(out, bone{wood, side, layout.Cut, even(aft, fore, 48, func(x float64) geometry.Point3 { return across(g.At(x, off*g.Width, g.Height), side) })})
		}
	}
	return out
}

// cloth follows the stringers and the keel along the cloth.
func (b Boat) cloth() (out []bone) {
	stations := b.Cloth.Stations()
	rows := make([][]geometry.Point, len(stations))
	for i, x := range stations {
		rows[i] = b.Cloth.At(x)
	}
	for k := range rows[0] {
		sides := []float64{1, -1}
		pen := layout.Tick
		if k == 0 {
			sides, pen = []float64{1}, layout.Mark
		}
		for _, side := range sides {
			l := bone{wood, side, pen, make([]geometry.Point3, 0, len(stations))}
			for i, x := range stations {
				l.pts = append(l.pts, geometry.Point3{X: x, Y: rows[i][k].X * side, Z: rows[i][k].Y})
			}
			out = append(out, l)
		}
	}
	return out
}

func (b Boat) ribs() (out []bone) {
	const chord = 1.0 // mm: finer than a screen shows
	for _, r := range b.Frame.Ribs {
		half := r.Inner.Flatten(chord)
		for _, side := range []float64{1, -1} {
			l := bone{wood, side, layout.Tick, make([]geometry.Point3, 0, len(half))}
			for _, p := range half {
				l.pts = append(l.pts, geometry.Point3{X: r.Station, Y: p.X * side, Z: p.Y})
			}
			out = append(out, l)
		}
	}
	return out
}

// ends are the stems' outer edges.
func (b Boat) ends() (out []bone) {
	h := b.Frame.Hull
	for _, side := range []float64{1, -1} {
		end := h.Bow
		if side < 0 {
			end = h.Stern
		}
		out = append(out, bone{wood, 0, layout.Cut, even(0, end.Outer.Length(), 24, func(s float64) geometry.Point3 {
			p, _ := end.Point(s)
			return geometry.Point3{X: p.X * side, Z: p.Y}
		})})
	}
	return out
}

// across are cross pieces and seats.
func (b Boat) across() (out []bone) {
	for _, t := range b.Frame.Thwarts {
		z := b.Frame.Gunwale.Line.Point(t.At).Z
		l := bone{wood, 0, layout.Mark, nil}
		for _, p := range t.Outline.Flatten(1) { // the pattern lies across: its x is the boat's y
			l.pts = append(l.pts, geometry.Point3{X: t.At + p.Y, Y: p.X, Z: z})
		}
		out = append(out, l)
	}
	for _, s := range b.Seats {
		z, x, y := s.TopZ(), s.Long/2, s.Wide/2
		out = append(out, bone{seat, 0, layout.Mark, []geometry.Point3{{X: s.At - x, Y: -y, Z: z}, {X: s.At + x, Y: -y, Z: z},
			{X: s.At + x, Y: y, Z: z}, {X: s.At - x, Y: y, Z: z}, {X: s.At - x, Y: -y, Z: z}}})
	}
	return out
}

// waterline is where the water meets the cloth, drawn a hair outside it.
func (b Boat) waterline() (out []bone) {
	if b.Water == nil {
		return nil
	}
	const hair, reach, n = 2.0, 1.04, 80
	aft, fore := b.Hull.Ends()
	for _, side := range []float64{1, -1} {
		l := bone{water, side, layout.Center, make([]geometry.Point3, 0, n+1)}
		for _, p := range even(aft, fore, n, func(x float64) geometry.Point3 { return geometry.Point3{X: x, Z: b.Water.Water(x)} }) {
			if p.Y = b.Hull.HalfBreadth(p.X, p.Z); p.Y > 0 {
				l.pts = append(l.pts, across(p.Add(geometry.Point3{Y: hair}), side))
			}
		}
		if len(l.pts) > 1 {
			out = append(out, l)
		}
	}
	for _, end := range []float64{aft, fore} { // beyond the ends, where nothing but water is
		far := end * reach
		out = append(out, bone{water, 0, layout.Center, []geometry.Point3{{X: end, Z: b.Water.Water(end)}, {X: far, Z: b.Water.Water(far)}}})
	}
	return out
}
