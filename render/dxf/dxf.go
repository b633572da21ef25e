// Package dxf writes a plate as a drawing exchange file of release 12, in
// millimeters at exact size. Release 12 is the one that every shop's program
// opens; it has no splines and needs no handles.
package dxf

import (
	"bytes"
	"fmt"
	"io"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/plate/trace"
	"ribwright/render"
)

// decimals of a number: a tenth of a micrometer.
const decimals = 4

// Encode writes the plate with the layers of layout.Layers. Straight lines are
// LINE, arcs ARC, whole circles CIRCLE; lines of several pieces are POLYLINE, in
// which arcs stay arcs by their bulge and cubics become chords no farther than
// chord from them. x runs right, y up, the origin is the lower left corner of the
// stock.
// Errors: those of render.CheckPlate and trace.Of, or the writer's own. Nothing
// is written unless all is made.
func Encode(w io.Writer, p layout.Plate) error {
	if err := render.CheckPlate(p); err != nil {
		return err
	}
	layers, err := trace.Of(p)
	if err != nil {
		return err
	}
	e := &encoder{}
	e.comment(lettering.Safe(p.Title))
	e.comment(lettering.Safe(render.Describe(p)))
	e.comment(fmt.Sprintf("arcs are arcs; other curves are chords within %s mm", render.Number(chord, 3)))
	e.header(p, layers)
	e.tables(p)
	e.section("BLOCKS", func() {})
	e.section("ENTITIES", func() {
		for _, l := range layers {
			for _, path := range l.Paths {
				e.path(l.Name, path)
			}
		}
	})
	e.word(0, "EOF")
	_, err = w.Write(e.out.Bytes())
	return err
}

type encoder struct{ out bytes.Buffer }

// word writes one group: its code and its value, each on a line. Shops' programs
// expect the line ends of their system, so they are CR LF.
func (e *encoder) word(code int, value string) { fmt.Fprintf(&e.out, "%3d\r\n%s\r\n", code, value) }

func (e *encoder) whole(code, value int) { e.word(code, fmt.Sprint(value)) }

func (e *encoder) number(code int, value float64) { e.word(code, render.Number(value, decimals)) }

// at writes a place under the codes of its x, y and z; z is always there, because
// some readers count on it.
func (e *encoder) at(code int, p geometry.Point) {
	e.number(code, p.X)
	e.number(code+10, p.Y)
	e.number(code+20, 0)
}

// comment writes a line for people, at most as long as readers take.
func (e *encoder) comment(words string) {
	const most = 250
	for words != "" {
		n := min(most, len(words))
		e.word(999, plain(words[:n]))
		words = words[n:]
	}
}

// plain keeps what release 12 can say: printable ASCII.
func plain(s string) string {
	out := []byte(s)
	for i, c := range out {
		if c < ' ' || c > '~' {
			out[i] = '?'
		}
	}
	return string(out)
}

func (e *encoder) section(name string, body func()) {
	e.word(0, "SECTION")
	e.word(2, name)
	body()
	e.word(0, "ENDSEC")
}

// header says the release, the unit and what the drawing fills.
func (e *encoder) header(p layout.Plate, layers []trace.Layer) {
	box := geometry.EmptyBox()
	for _, l := range layers {
		for _, path := range l.Paths {
			box = box.Union(path.Bounds())
		}
	}
	if box.Empty() {
		box = geometry.Box{}
	}
	e.section("HEADER", func() {
		e.word(9, "$ACADVER")
		e.word(1, "AC1009")
		e.word(9, "$INSUNITS") // younger than release 12; those that know it use it
		e.whole(70, 4)         // millimeters
		e.word(9, "$MEASUREMENT")
		e.whole(70, 1) // metric
		e.word(9, "$INSBASE")
		e.at(10, geometry.Point{})
		e.word(9, "$EXTMIN")
		e.at(10, box.Min)
		e.word(9, "$EXTMAX")
		e.at(10, box.Max)
		e.word(9, "$LIMMIN")
		e.flat(geometry.Point{})
		e.word(9, "$LIMMAX")
		e.flat(geometry.Point{X: p.W, Y: p.H})
	})
}

// flat writes a place without a height, as the limits have it.
func (e *encoder) flat(p geometry.Point) {
	e.number(10, p.X)
	e.number(20, p.Y)
}

// tables lists the one kind of line and the layers.
func (e *encoder) tables(p layout.Plate) {
	names := append([]string{"0"}, layout.Layers()...)
	e.section("TABLES", func() {
		e.table("LTYPE", 1, func() {
			e.word(0, "LTYPE")
			e.word(2, "CONTINUOUS")
			e.whole(70, 0)
			e.word(3, "Solid line")
			e.whole(72, 65)
			e.whole(73, 0)
			e.number(40, 0)
		})
		e.table("LAYER", len(names), func() {
			for _, n := range names {
				e.word(0, "LAYER")
				e.word(2, n)
				e.whole(70, 0)
				e.whole(62, index(p.Colors[n]))
				e.word(6, "CONTINUOUS")
			}
		})
	})
}

func (e *encoder) table(name string, n int, body func()) {
	e.word(0, "TABLE")
	e.word(2, name)
	e.whole(70, n)
	body()
	e.word(0, "ENDTAB")
}

// palette is the first colors of the format by their number: red, yellow, green,
// cyan, blue, magenta and 7, which is black on a white screen.
var palette = [...]layout.Color{1: {R: 255}, {R: 255, G: 255}, {G: 255}, {G: 255, B: 255}, {B: 255}, {R: 255, B: 255}, {}}

// index returns the number of the nearest of the seven colors; release 12 knows
// no others by value.
func index(c layout.Color) int {
	best, least := 7, 1<<30
	for i := 1; i < len(palette); i++ {
		d := square(c.R, palette[i].R) + square(c.G, palette[i].G) + square(c.B, palette[i].B)
		if d < least {
			best, least = i, d
		}
	}
	return best
}

func square(a, b uint8) int { return (int(a) - int(b)) * (int(a) - int(b)) }

// chord is how far the chords of a cubic may lie from it, mm: less than a laser's
// beam wanders. Chords are not shorter than that asks for, because controllers
// stutter on dust.
const chord = 0.005

// speck is the size below which a piece is left out, mm.
const speck = 0.001

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
// micrometers at a radius of 10 m.
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
	const decimals = 9 // of a bulge: 0.01 micrometers at a radius of 10 m
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
