// Package svg writes a plate as one SVG file for a laser or a CNC router, in
// millimetres at exact size.
package svg

import (
	"bytes"
	"fmt"
	"io"

	svg "github.com/ajstarks/svgo/float"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
	"ribwright/layout/plate/trace"
	"ribwright/render"
)

// decimals of a coordinate: a tenth of a micrometre, so that neighbouring
// points never fall together.
const decimals = 4

// Encode writes the plate. Each layer is a group of its own, in the order of
// layout.Layers: MARK lines to draw, LETTERING single strokes, CUT closed
// outlines, holes before the outline round them, SHEET the corners of the stock,
// SCALE a square of 100 mm to check the size by. No line is drawn twice.
//
// Errors: the writer's own; what no plate may hold render.Trace has refused.
func Encode(w io.Writer, p trace.Plate) error {
	e := &encoder{}
	c := e.begin(geometry.Rect(0, 0, p.W, p.H), p.Title, render.Describe(p.Plate))
	for _, l := range p.Layers {
		c.Gid(l.Name)
		how := style(p.Machine, l.Name)
		for _, path := range l.Paths {
			c.Path(e.data(path), how)
		}
		c.Gend()
	}
	c.End()
	_, err := w.Write(e.out.Bytes())
	return err
}

type encoder struct {
	out        bytes.Buffer
	left, high float64 // of the picture's upper left corner
	room       []byte  // for the data of a path
}

// begin starts a picture of what the box shows, with its title and what is to be known
// of it.
func (e *encoder) begin(b geometry.Box, title, about string) *svg.SVG {
	e.left, e.high = b.Min.X, b.Max.Y
	c := svg.New(&e.out)
	c.Decimals = decimals
	c.StartviewUnit(b.W(), b.H(), "mm", 0, 0, b.W(), b.H())
	c.Title(lettering.Safe(title))
	c.Desc(lettering.Safe(about))
	return c
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
	start := e.at(nil, p[0].Start())
	d := append(append(e.room[:0], 'M'), start...)
	pieces := p[:last+1].Beziers()
	for i, s := range pieces {
		closing := closed && i == len(pieces)-1
		c, bent := s.(curve.Cubic)
		switch {
		case bent:
			d = append(e.at(append(d, 'C'), c.P1), ' ')
			d = append(e.at(d, c.P2), ' ')
		case closing:
			continue
		default:
			d = append(d, 'L')
		}
		if closing {
			d = append(d, start...)
		} else {
			d = e.at(d, s.End())
		}
	}
	if closed {
		d = append(d, 'Z')
	}
	e.room = d
	return string(d)
}

// at writes a place as x and y down from the upper left corner.
func (e *encoder) at(to []byte, q geometry.Point) []byte {
	to = append(render.AppendNumber(to, q.X-e.left, decimals), ',')
	return render.AppendNumber(to, e.high-q.Y, decimals)
}
