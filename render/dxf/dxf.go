// Package dxf writes a plate as a drawing exchange file of release 12, in
// millimetres at exact size. Release 12 is the one that every shop's program
// opens; it has no splines and needs no handles.
package dxf

import (
	"bufio"
	"fmt"
	"io"
	"strconv"

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
// Errors: the writer's own; what no plate may hold render.Trace has refused.
func Encode(w io.Writer, p trace.Plate) error {
	e := &encoder{bufio.NewWriterSize(w, 32<<10)}
	e.comment(lettering.ASCII(p.Title))
	e.comment(lettering.ASCII(render.Describe(p.Plate)))
	e.comment(fmt.Sprintf("arcs are arcs; other curves are chords within %s mm", render.Number(chord, 3)))
	e.header(p)
	e.tables(p)
	e.section("BLOCKS", func() {})
	e.section("ENTITIES", func() {
		for _, l := range p.Layers {
			for _, path := range l.Paths {
				e.path(l.Name, path)
			}
		}
	})
	e.put(group{0, "EOF"})
	return e.out.Flush()
}

type encoder struct{ out *bufio.Writer } // it remembers the first error

// group is one value under its code: a word, a whole number, a number, or a place.
type group struct {
	code  int
	value any
}

// put writes groups.
func (e *encoder) put(all ...group) {
	for _, g := range all {
		switch v := g.value.(type) {
		case float64:
			e.number(g.code, v, decimals)
		case string:
			e.word(g.code, v)
		case geometry.Point:
			e.place(g.code, v)
		case int:
			e.word(g.code, strconv.Itoa(v))
		}
	}
}

// place writes a place, which stands under the codes of its x, y and z; z is always
// there, because some readers count on it.
func (e *encoder) place(code int, p geometry.Point) {
	e.number(code, p.X, decimals)
	e.number(code+10, p.Y, decimals)
	e.word(code+20, "0")
}

func (e *encoder) number(code int, v float64, decimals int) {
	e.code(code)
	e.out.Write(render.AppendNumber(e.out.AvailableBuffer(), v, decimals))
	e.out.WriteString("\r\n")
}

func (e *encoder) word(code int, v string) {
	e.code(code)
	e.out.WriteString(v)
	e.out.WriteString("\r\n")
}

// code writes a code of up to three digits, set right, on a line of its own. Shops'
// programs expect the line ends of their system, so they are CR LF.
func (e *encoder) code(code int) {
	to := e.out.AvailableBuffer()
	for most := 100; most > max(code, 1); most /= 10 {
		to = append(to, ' ')
	}
	to = strconv.AppendInt(to, int64(code), 10)
	e.out.Write(append(to, '\r', '\n'))
}

// comment writes a line for people in ASCII, which is all that release 12 can say, at most as
// long as readers take.
func (e *encoder) comment(words string) {
	const most = 250
	for words != "" {
		n := min(most, len(words))
		e.word(999, words[:n])
		words = words[n:]
	}
}

func (e *encoder) section(name string, body func()) {
	e.put(group{0, "SECTION"}, group{2, name})
	body()
	e.put(group{0, "ENDSEC"})
}

// header says the release, the unit and what the drawing fills.
func (e *encoder) header(p trace.Plate) {
	box := geometry.EmptyBox()
	for _, l := range p.Layers {
		for _, path := range l.Paths {
			box = box.Union(path.Bounds())
		}
	}
	if box.Empty() {
		box = geometry.Box{}
	}
	e.section("HEADER", func() {
		e.put(group{9, "$ACADVER"}, group{1, "AC1009"},
			group{9, "$INSUNITS"}, group{70, 4}, // millimetres; younger than release 12, those that know it use it
			group{9, "$MEASUREMENT"}, group{70, 1}, // metric
			group{9, "$INSBASE"}, group{10, geometry.Point{}},
			group{9, "$EXTMIN"}, group{10, box.Min},
			group{9, "$EXTMAX"}, group{10, box.Max},
			group{9, "$LIMMIN"}, group{10, 0.0}, group{20, 0.0}, // limits have no height
			group{9, "$LIMMAX"}, group{10, p.W}, group{20, p.H})
	})
}

// tables lists the one kind of line and the layers.
func (e *encoder) tables(p trace.Plate) {
	names := append([]string{"0"}, layout.Layers()...)
	e.section("TABLES", func() {
		e.put(group{0, "TABLE"}, group{2, "LTYPE"}, group{70, 1},
			group{0, "LTYPE"}, group{2, "CONTINUOUS"}, group{70, 0}, group{3, "Solid line"}, group{72, 65}, group{73, 0}, group{40, 0},
			group{0, "ENDTAB"})
		e.put(group{0, "TABLE"}, group{2, "LAYER"}, group{70, len(names)})
		for _, n := range names {
			e.put(group{0, "LAYER"}, group{2, n}, group{70, 0}, group{62, index(p.Colors[n])}, group{6, "CONTINUOUS"})
		}
		e.put(group{0, "ENDTAB"})
	})
}

// palette is the first colors of the format by their number: red, yellow, green,
// cyan, blue, magenta and 7, which is black on a white screen.
var palette = [...]layout.Color{1: {R: 255}, {R: 255, G: 255}, {G: 255}, {G: 255, B: 255}, {B: 255}, {R: 255, B: 255}, {}}

// index returns the number of the nearest of the seven colors; release 12 knows
// no others by value.
func index(c layout.Color) int {
	best, least := 7, 1<<30
	for i := 1; i < len(palette); i++ {
		r, g, b := int(c.R)-int(palette[i].R), int(c.G)-int(palette[i].G), int(c.B)-int(palette[i].B)
		if d := r*r + g*g + b*b; d < least {
			best, least = i, d
		}
	}
	return best
}
