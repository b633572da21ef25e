package dxf

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout/plate/trace"
)

// chord is how far the chords of a cubic may lie from it, mm: less than a laser's
// beam wanders. Chords are not shorter than that asks for, because controllers
// stutter on dust.
const chord = 0.005

// path writes one line of a layer as the simplest entity that can hold it.
func (e *encoder) path(layer string, p curve.Path) {
	switch p = pieces(p); len(p) {
	case 0:
	case 1:
		e.single(layer, p[0])
	default:
		e.polyline(layer, p)
	}
}

// pieces turns a path into lines and arcs of at most half a turn and leaves out
// what is too small to draw. An arc alone stays whole.
func pieces(p curve.Path) curve.Path {
	out := make(curve.Path, 0, len(p))
	for _, s := range p {
		a, round := s.(curve.Arc)
		c, bent := s.(curve.Cubic)
		switch {
		case bent:
			out = append(out, curve.Polyline(curve.Path{c}.Flatten(chord)...)...)
		case s.Length() < trace.Speck:
		case round && len(p) > 1 && math.Abs(a.Sweep) > math.Pi: // some readers turn it about
			out = append(out, curve.Stretch(a, 0, 0.5), curve.Stretch(a, 0.5, 1))
		default:
			out = append(out, s)
		}
	}
	return out
}

// entity writes what every entity begins with.
func (e *encoder) entity(kind, layer string) {
	e.word(0, kind)
	e.word(8, layer)
}

func (e *encoder) single(layer string, s curve.Segment) {
	a, round := s.(curve.Arc)
	if !round {
		e.entity("LINE", layer)
		e.place(10, s.Start())
		e.place(11, s.End())
		return
	}
	if math.Abs(a.Sweep) >= 2*math.Pi-1e-9 {
		e.entity("CIRCLE", layer)
		e.place(10, a.Center)
		e.number(40, a.Radius, decimals)
		return
	}
	from, to := a.From, a.From+a.Sweep
	if a.Sweep < 0 {
		from, to = to, from // the format's arcs run counter-clockwise
	}
	e.entity("ARC", layer)
	e.place(10, a.Center)
	e.number(40, a.Radius, decimals)
	e.degrees(50, from)
	e.degrees(51, to)
}

// degrees writes an angle from 0 to 360, to 1e-7 of one: 0.02 micrometres at a radius
// of 10 m.
func (e *encoder) degrees(code int, a float64) {
	const decimals = 7
	deg := math.Mod(a*180/math.Pi, 360)
	if deg < 0 {
		deg += 360
	}
	e.number(code, deg, decimals)
}

// polyline writes lines and arcs in one: each corner carries the bulge of the
// piece after it, tan(sweep/4).
func (e *encoder) polyline(layer string, p curve.Path) {
	flag := 0
	if p.Closed() {
		flag = 1
	}
	e.entity("POLYLINE", layer)
	e.put(group{66, 1}, group{10, geometry.Point{}}, group{70, flag}) // 66: corners follow
	for _, s := range p {
		e.entity("VERTEX", layer)
		e.place(10, s.Start())
		if a, round := s.(curve.Arc); round {
			const decimals = 9 // of a bulge: 0.01 micrometres at a radius of 10 m
			e.number(42, math.Tan(a.Sweep/4), decimals)
		}
	}
	if flag == 0 {
		e.entity("VERTEX", layer)
		e.place(10, p[len(p)-1].End())
	}
	e.entity("SEQEND", layer)
}
