// Package svg writes a plate as one SVG file for a laser or a CNC router, in
// millimeters at exact size.
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
	"ribwright/layout/plate/trace"
	"ribwright/render"
)

// decimals of a coordinate: a tenth of a micrometer, so that neighboring
// points never fall together.
const decimals = 4

// Encode writes the plate. Each layer is a group of its own, in the order of
// layout.Layers: MARK lines to draw, LETTERING single strokes, CUT closed
// outlines, holes before the outline round them, SHEET the corners of the stock,
// SCALE a square of 100 mm to check the size by. No line is drawn twice.
// Errors: a number that is no place on the plate, a part mirrored or stretched,
// an outline that is not closed, or the writer's own error. Nothing is written
// unless all is made.
func Encode(w io.Writer, p layout.Plate) error {
	if err := render.CheckPlate(p); err != nil {
		return err
	}
	layers, err := trace.Of(p)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	c := svg.New(&out)
	c.Decimals = decimals
	c.StartviewUnit(p.W, p.H, "mm", 0, 0, p.W, p.H)
	c.Title(lettering.Safe(p.Title))
	c.Desc(lettering.Safe(render.Describe(p)))
	e := &encoder{svg: c, high: p.H}
	for _, l := range layers {
		c.Gid(l.Name)
		for _, path := range l.Paths {
			c.Path(e.data(path), style(p.Machine, l.Name))
		}
		c.Gend()
	}
	c.End()
	_, err = w.Write(out.Bytes())
	return err
}

type encoder struct {
	svg  *svg.SVG
	left float64 // x of the picture's left edge
	high float64 // y of its upper edge
}

// style is written on every path, because importers pass over inherited ones.
func style(m layout.Machine, layer string) string {
	c := m.Colors[layer]
	return fmt.Sprintf(`fill="none" stroke="#%02x%02x%02x" stroke-width="%s"`, c.R, c.G, c.B, render.Number(m.Line(), decimals))
}

// data writes a path of lines and cubics; arcs become cubics, which every
// importer reads the same way. A closed path ends to the digit where it starts,
// so that closing it adds no side a cutter would stutter on.
func (e *encoder) data(p curve.Path) string {
	closed, last := p.Closed(), len(p)-1
	for closed && last > 0 && trace.Pointlike(p[last:last+1]) {
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

// cubic writes a cubic whose end has been written already.
func (e *encoder) cubic(d *strings.Builder, c curve.Cubic, end string) {
	d.WriteString("C" + e.at(c.P1) + " " + e.at(c.P2) + " " + end)
}

// at writes a place as x and y down from the upper left corner.
func (e *encoder) at(q geometry.Point) string {
	return render.Number(q.X-e.left, decimals) + "," + render.Number(e.high-q.Y, decimals)
}
