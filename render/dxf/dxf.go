// Package dxf writes a plate as a drawing exchange file of release 12, in
// millimetres at exact size. Release 12 is the one that every shop's program
// opens; it has no splines and needs no handles.
package dxf

import (
	"bytes"
	"fmt"
	"io"

	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/plate/trace"
	"ribwright/render"
)

// decimals of a number: a tenth of a micrometre.
const decimals = 4

// Encode writes the plate with the layers of layout.Layers. Straight lines are
// LINE, arcs ARC, whole circles CIRCLE; lines of several pieces are POLYLINE, in
// which arcs stay arcs by their bulge and cubics become chords no farther than
// chord from them. x runs right, y up, the origin is the lower left corner of the
// stock.
//
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
		e.whole(70, 4)         // millimetres
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
