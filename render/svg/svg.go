// Package svg writes a plate as one SVG file for a laser or a CNC router, in
// millimetres at exact size.
package svg

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	svg "github.com/ajstarks/svgo/float"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/render"
)

// decimals of a coordinate: a tenth of a micrometre, so that neighbouring
// points never fall together.
const decimals = 4

// speck is the size below which a line is left out, mm: far below a cutter's step.
const speck = 0.001

// hairline is the width of every line, mm.
const hairline = 0.1

// Encode writes the plate. Each layer is a group of its own: CUT holds closed
// outlines, holes before the outline round them; MARK lines to draw; LETTERING
// single strokes; SCALE a square of 100 mm to check the size by.
//
// Errors: a number that is no place on the plate, a part mirrored or stretched,
// an outline that is not closed, or the writer's own error. Nothing is written
// unless all is made.
func Encode(w io.Writer, p layout.Plate) error {
	if err := render.CheckPlate(p); err != nil {
		return err
	}
	var out bytes.Buffer
	c := svg.New(&out)
	c.Decimals = decimals
	c.StartviewUnit(p.W, p.H, "mm", 0, 0, p.W, p.H)
	c.Title(lettering.Safe(p.Title))
	c.Desc(fmt.Sprintf("%.1f x %.1f mm (%.2f x %.2f in); one unit is one millimetre; exact size, no cutter offset applied; "+
		"the square in the SCALE layer is 100 mm wide and high and is not to be cut", p.W, p.H, p.W/25.4, p.H/25.4))
	e := &encoder{svg: c, high: p.H}
	if err := e.layers(p); err != nil {
		return err
	}
	c.End()
	_, err := w.Write(out.Bytes())
	return err
}

type encoder struct {
	svg  *svg.SVG
	left float64 // x of the picture's left edge
	high float64 // y of its upper edge
}

// style is written on every path, because importers pass over inherited ones.
func style() string {
	return fmt.Sprintf(`fill="none" stroke="#000000" stroke-width="%s"`, render.Number(hairline, decimals))
}

func (e *encoder) layers(p layout.Plate) error {
	e.svg.Gid("CUT")
	for _, q := range p.Parts {
		for _, c := range q.Part.Cut {
			if !c.Closed() || !c.Joined() {
				return fmt.Errorf("the outline of %s is not closed, so it cannot be cut out", q.Part.Name)
			}
			if pointlike(c) {
				return fmt.Errorf("an outline of %s is a single point, so it cannot be cut out", q.Part.Name)
			}
			e.path(c.Map(q.Move))
		}
	}
	e.svg.Gend()
	e.svg.Gid("MARK")
	for _, q := range p.Parts {
		for _, c := range q.Part.Marks {
			e.path(c.Map(q.Move))
		}
	}
	e.svg.Gend()
	e.svg.Gid("LETTERING")
	for _, q := range p.Parts {
		for _, t := range q.Part.Letters {
			e.letters(t, q.Move)
		}
	}
	e.svg.Gend()
	e.svg.Gid("SCALE")
	e.path(curve.Rectangle(p.Check))
	corner := p.Check.Min.Add(geometry.Point{X: 5, Y: 5})
	e.letters(layout.Text{At: corner, Height: 5, Words: "100 mm, do not cut"}, geometry.Shift(0, 0))
	e.svg.Gend()
	return nil
}

// letters draws single strokes: a font would be dropped or moved by many
// cutters.
func (e *encoder) letters(t layout.Text, m geometry.Affine) {
	back := lettering.StrokeWidth(t.Words, t.Height) * [...]float64{0, 0.5, 1}[t.Align]
	place := geometry.Shift(-back, 0).Then(geometry.Turn(t.Angle)).Then(geometry.Shift(t.At.X, t.At.Y)).Then(m)
	for _, pts := range lettering.Strokes(t.Words, t.Height) {
		e.path(curve.Polyline(pts...).Map(place))
	}
}

// path writes one path in the cutter's style, unless it is too small to draw.
func (e *encoder) path(p curve.Path) {
	if !pointlike(p) {
		e.svg.Path(e.data(p), style())
	}
}

// data writes a path of lines and cubics; arcs become cubics, which every
// importer reads the same way. A closed path ends to the digit where it starts,
// so that closing it adds no side a cutter would stutter on.
func (e *encoder) data(p curve.Path) string {
	closed, last := p.Closed(), len(p)-1
	for closed && last > 0 && pointlike(p[last:last+1]) {
		last--
	}
	start := e.at(p[0].Start())
	var d strings.Builder
	d.WriteString("M" + start)
	for i, s := range p[:last+1] {
		end := e.at(s.End())
		if closed && i == last {
			end = start
		}
		switch s := s.(type) {
		case curve.Line:
			if !closed || i < last {
				d.WriteString("L" + end)
			}
		case curve.Cubic:
			e.cubic(&d, s, end)
		case curve.Arc:
			pieces := s.Cubics()
			for _, c := range pieces[:len(pieces)-1] {
				e.cubic(&d, c, e.at(c.P3))
			}
			e.cubic(&d, pieces[len(pieces)-1], end)
		}
	}
	if closed {
		d.WriteString("Z")
	}
	return d.String()
}

// pointlike reports whether a path is too small to draw.
func pointlike(p curve.Path) bool {
	b := p.Bounds()
	return b.Empty() || b.W() < speck && b.H() < speck
}

// cubic writes a cubic whose end has been written already.
func (e *encoder) cubic(d *strings.Builder, c curve.Cubic, end string) {
	d.WriteString("C" + e.at(c.P1) + " " + e.at(c.P2) + " " + end)
}

// at writes a place as x and y down from the upper left corner.
func (e *encoder) at(q geometry.Point) string {
	return render.Number(q.X-e.left, decimals) + "," + render.Number(e.high-q.Y, decimals)
}
