package flaw

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
)

// eye is where the builder's eye goes for a fault.
func (r *Report) eye(fault Fault) solid.Eye {
	f := r.Frame
	tip, depth := f.Hull.Bow.Tip(), f.Hull.Depth
	z, _ := f.Hull.KeelZ(0)
	middle := geometry.Point3{Z: z + depth/2}
	switch fault.Kind {
	case Proud:
		return r.along(fault, 1)
	case OneSide:
		return solid.Eye{At: geometry.Point3{X: tip + 900, Z: f.Hull.Bow.TopZ + 500}, To: geometry.Point3{X: f.Ribs[fault.Rib].Station, Z: middle.Z}}
	case Wavy:
		return solid.Eye{At: geometry.Point3{X: tip + 1200, Z: -150}}
	case Aside:
		return solid.Eye{At: geometry.Point3{X: tip + 700, Z: f.Hull.Bow.TopZ + 700}, To: geometry.Point3{Z: z + depth}}
	}
	return r.overSticks()
}

// overSticks looks over the near winding stick so that a sliver of the far one shows.
func (r *Report) overSticks() solid.Eye {
	f := r.Frame
	const sliver, past = 12.0, 1500.0 // mm
	aft, fore := r.stickFoot(0), r.stickFoot(len(f.Ribs)-1)
	rise := (fore.Z + sliver - aft.Z) / (fore.X - aft.X)
	run := f.Hull.Bow.Tip() + past - fore.X
	return solid.Eye{At: geometry.Point3{X: fore.X + run, Z: fore.Z + rise*run}, To: fore, Parallel: true}
}

// along looks along the bilge from past the bow. The eye lies near the plane that touches
// the ribs there, so that a bump stands up from it, and low down in that plane, so that
// the stringer runs away across the picture.
//
// end is 1 for the bow and -1 for the stern.
func (r *Report) along(fault Fault, end float64) solid.Eye {
	f, rib := r.Frame, r.Frame.Ribs[fault.Rib]
	const past, low, out = 600.0, 330.0, 25.0 // mm
	run := f.Hull.Bow.Tip() + past - rib.Station
	if end < 0 {
		run = -f.Hull.Stern.Tip() - past - rib.Station
	}
	place := bulgeOf(rib).peak * rib.Section.Half.Length()
	dy, dz := 0.0, 0.0
	if r.Sighted > 0 {
		place = rib.Stringers[r.Sighted-1]
		dy, dz = f.Stringers[r.Sighted-1].Line.Slopes(rib.Station)
	}
	p := rib.Face(place, 0)
	n := rib.Face(place, 1).Sub(p)
	off := n.Scale(out).Sub(n.Left().Scale(low))
	to := geometry.Point3{X: rib.Station, Y: p.X, Z: p.Y}
	return solid.Eye{At: to.Add(geometry.Point3{X: run, Y: dy*run + off.X, Z: dz*run + off.Y}), To: to}
}

// with adds what the builder looks along: a string from stem to stem over gunwales that
// may stand aside, winding sticks across them at the last ribs for a twist.
func (r *Report) with(b *solid.Boat, fault Fault, m solid.Moves) *solid.Boat {
	out := *b
	out.Lines = append([]solid.Line(nil), b.Lines...)
	f := r.Frame
	switch fault.Kind {
	case Aside:
		// Stretched over the breasthooks, it does not follow the sheer.
		out.Lines = append(out.Lines, solid.Line{Part: solid.Tool, Points: []geometry.Point3{
			{X: -f.Hull.Stern.GunwaleX, Z: f.Hull.Stern.TopZ}, {X: f.Hull.Bow.GunwaleX, Z: f.Hull.Bow.TopZ}}})
	case Twist:
		const over = 60.0 // mm past the widest of the boat to either side
		r.Sticks = math.Ceil((f.Hull.Beam+2*over)/10) * 10
		for _, rib := range []int{0, len(f.Ribs) - 1} {
			out.Faces = append([]solid.Face(nil), out.Faces...)
			r.stick(&out, rib, m)
		}
	}
	return &out
}

// stickFoot is the middle of the lower edge of a winding stick that lies across the
// gunwales at a rib.
func (r *Report) stickFoot(rib int) geometry.Point3 {
	g, x := &r.Frame.Gunwale, r.Frame.Ribs[rib].Station
	return geometry.Point3{X: x, Z: math.Max(g.At(x, g.Width/2, g.Height).Z, g.At(x, -g.Width/2, g.Height).Z)}
}

// stick lays a winding stick across the gunwales at a rib.
func (r *Report) stick(b *solid.Boat, rib int, m solid.Moves) {
	const tall = 30.0 // mm
	g, x := &r.Frame.Gunwale, r.Frame.Ribs[rib].Station
	z := r.stickFoot(rib).Z
	// It lies on both gunwales, wherever these have gone.
	at := g.Line.Point(x)
	port, board := at.Add(m.Gunwale(1, x)), geometry.Point3{X: x, Y: -at.Y, Z: at.Z}.Add(m.Gunwale(-1, x))
	way := port.Sub(board)
	way = geometry.Point3{Y: way.Y / way.Norm(), Z: way.Z / way.Norm()}
	mid := geometry.Point3{X: x, Y: (port.Y + board.Y) / 2, Z: (port.Z + board.Z) / 2}
	place := func(along, up float64) geometry.Point3 {
		return mid.Add(geometry.Point3{Y: way.Y*along - way.Z*up, Z: way.Z*along + way.Y*up})
	}
	low := z - at.Z
	half := r.Sticks / 2
	f := solid.Face{place(-half, low), place(half, low), place(half, low+tall), place(-half, low+tall)}
	b.Faces = append(b.Faces, f)
	b.Lines = append(b.Lines, solid.Line{Part: solid.Tool, Number: rib, Points: append(append([]geometry.Point3(nil), f...), f[0])})
}

// Detail is a part of the boat laid flat, so that its sideways scale can be stretched:
// x along, y across, mm.
type Detail struct {
	Fair, Faulty [][]geometry.Point
	Marks        []Mark
}

// Mark is a place of a detail with a name.
type Mark struct {
	geometry.Point
	Name string
}

// detail lays the fault flat: a stringer, both halves of a rib laid straight, the keel's
// underside, the middle between the gunwales. A twist has none.
func (r *Report) detail(m *Moved) (d Detail) {
	f := r.Frame
	switch m.fault.Kind {
	case Proud:
		if r.Sighted == 0 {
			return d
		}
		rib := f.Ribs[m.fault.Rib]
		s, share := f.Stringers[r.Sighted-1], rib.Stringers[r.Sighted-1]
		n := rib.Face(share, 1).Sub(rib.Face(share, 0))
		d.row(m, 4, s.Line.Point, func(x float64) geometry.Point3 { return m.Stringer(r.Sighted-1, 1, x) },
			func(p geometry.Point3) float64 { return p.Y*n.X + p.Z*n.Y })
	case OneSide:
		d.halves(m)
	case Wavy:
		d.row(m, len(f.Ribs), f.Keel.Line.Point, m.Keel, func(p geometry.Point3) float64 { return p.Z })
	case Aside:
		d.row(m, len(f.Ribs), func(x float64) geometry.Point3 { return geometry.Point3{X: x} },
			func(x float64) geometry.Point3 { return m.Gunwale(1, x) }, func(p geometry.Point3) float64 { return p.Y })
	}
	return d
}

// row lays a stick flat over so many bays to either side of the rib, as far as they go.
func (d *Detail) row(m *Moved, bays int, at, by func(x float64) geometry.Point3, across func(geometry.Point3) float64) {
	ribs := m.f.Ribs
	first, last := max(0, m.fault.Rib-bays), min(len(ribs)-1, m.fault.Rib+bays)
	var fair, faulty []geometry.Point
	const parts = 12 // of a bay
	for i := first; i <= last; i++ {
		x := ribs[i].Station
		d.Marks = append(d.Marks, Mark{geometry.Pt(x, across(at(x).Add(by(x)))), ribs[i].Name})
		for k := range parts {
			if i == last && k > 0 {
				break
			}
			on := x
			if i < last {
				on += (ribs[i+1].Station - x) * float64(k) / parts
			}
			fair = append(fair, geometry.Pt(on, across(at(on))))
			faulty = append(faulty, geometry.Pt(on, across(at(on).Add(by(on)))))
		}
	}
	d.Fair, d.Faulty = [][]geometry.Point{fair}, [][]geometry.Point{faulty}
}

// halves lays both halves of the rib straight on each other, from keel to head.
func (d *Detail) halves(m *Moved) {
	r := m.f.Ribs[m.fault.Rib]
	girth := r.Section.Half.Length()
	lines := [2][]geometry.Point{}
	const parts = 60
	for k := range parts + 1 {
		t := float64(k) / parts
		n := r.Face(t*girth, 1).Sub(r.Face(t*girth, 0))
		for i, side := range [2]float64{1, -1} {
			by := m.Rib(m.fault.Rib, side, t)
			lines[i] = append(lines[i], geometry.Pt(t*girth, by.Y*side*n.X+by.Z*n.Y))
		}
	}
	d.Fair, d.Faulty = [][]geometry.Point{{{}, {X: girth}}}, lines[:]
	d.Marks = []Mark{{geometry.Point{}, "keel"}, {geometry.Pt(bulgeOf(r).peak*girth, 0), "bilge"}, {geometry.Pt(girth, 0), "head"}}
}
