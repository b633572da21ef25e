package dxf

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/render"
)

// chord is how far the chords of a cubic may lie from it, mm: less than a laser's
// beam wanders. Chords are not shorter than that asks for, because controllers
// stutter on dust.
const chord = 0.005

// speck is the size below which a piece is left out, mm.
const speck = 0.001

// path writes one line of a layer as the simplest entity that can hold it.
func (e *encoder) path(layer string, p curve.Path) {
	p = pieces(p)
	switch {
	case len(p) == 0:
	case len(p) == 1:
		e.single(layer, p[0])
	default:
		e.polyline(layer, p)
	}
}

// pieces turns a path into lines and arcs of at most half a turn and leaves out
// what is too small to draw. An arc alone stays whole.
func pieces(p curve.Path) curve.Path {
	var out curve.Path
	for _, s := range p {
		switch s := s.(type) {
		case curve.Line:
			if s.Length() >= speck {
				out = append(out, s)
			}
		case curve.Arc:
			if s.Length() >= speck {
				out = append(out, halves(s, len(p) == 1)...)
			}
		case curve.Cubic:
			out = append(out, curve.Polyline(curve.Path{s}.Flatten(chord)...)...)
		}
	}
	return out
}

// halves splits an arc of more than half a turn, which some readers turn about.
func halves(a curve.Arc, whole bool) []curve.Segment {
	if whole || math.Abs(a.Sweep) <= math.Pi {
		return []curve.Segment{a}
	}
	first, second := a, a
	first.Sweep /= 2
	second.From, second.Sweep = a.From+a.Sweep/2, a.Sweep/2
	return []curve.Segment{first, second}
}

// start writes what every entity begins with.
func (e *encoder) start(kind, layer string) {
	e.word(0, kind)
	e.word(8, layer)
}

func (e *encoder) single(layer string, s curve.Segment) {
	a, round := s.(curve.Arc)
	if !round {
		e.start("LINE", layer)
		e.at(10, s.Start())
		e.at(11, s.End())
		return
	}
	if math.Abs(a.Sweep) >= 2*math.Pi-1e-9 {
		e.start("CIRCLE", layer)
		e.at(10, a.Center)
		e.number(40, a.Radius)
		return
	}
	from, to := a.From, a.From+a.Sweep
	if a.Sweep < 0 {
		from, to = to, from // the format's arcs run counter-clockwise
	}
	e.start("ARC", layer)
	e.at(10, a.Center)
	e.number(40, a.Radius)
	e.angle(50, from)
	e.angle(51, to)
}

// angle writes an angle in degrees from 0 to 360, to 1e-7 of one: 0.02
// micrometres at a radius of 10 m.
func (e *encoder) angle(code int, a float64) {
	const decimals = 7
	deg := math.Mod(a*180/math.Pi, 360)
	if deg < 0 {
		deg += 360
	}
	e.word(code, render.Number(deg, decimals))
}

// polyline writes lines and arcs in one: each corner carries the bulge of the
// piece after it, tan(sweep/4).
func (e *encoder) polyline(layer string, p curve.Path) {
	closed := p.Closed()
	e.start("POLYLINE", layer)
	e.whole(66, 1) // corners follow
	e.at(10, geometry.Point{})
	flag := 0
	if closed {
		flag = 1
	}
	e.whole(70, flag)
	for _, s := range p {
		e.corner(layer, s.Start(), bulge(s))
	}
	if !closed {
		e.corner(layer, p[len(p)-1].End(), 0)
	}
	e.start("SEQEND", layer)
}

func (e *encoder) corner(layer string, p geometry.Point, bulge float64) {
	const decimals = 9 // of a bulge: 0.01 micrometres at a radius of 10 m
	e.start("VERTEX", layer)
	e.at(10, p)
	if bulge != 0 {
		e.word(42, render.Number(bulge, decimals))
	}
}

func bulge(s curve.Segment) float64 {
	if a, ok := s.(curve.Arc); ok {
		return math.Tan(a.Sweep / 4)
	}
	return 0
}
