// Package trace turns a plate into the lines a cutter follows: layer by layer in
// the order of cutting, every line once.
package trace

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// Layer is the lines of one layer in the order they are followed.
type Layer struct {
	Name  string
	Paths []curve.Path
}

// Plate is a plate with the lines of its layers.
type Plate struct {
	layout.Plate
	Layers []Layer
}

// Speck is the size below which a line is left out, mm: far below a cutter's step.
const Speck = 0.001

// Pointlike reports whether a path is too small to follow.
func Pointlike(p curve.Path) bool {
	b := p.Bounds()
	return b.Empty() || b.W() < Speck && b.H() < Speck
}

// Of returns the layers of a plate, in the order of layout.Layers. In the cut
// layer stand closed outlines, what lies inside another before it. A line that
// lies on one drawn before it is left out, in the cut layer only whole outlines.
//
// Errors: an outline that is not closed, that is a point, or that shares an edge
// with another.
func Of(p layout.Plate) ([]Layer, error) {
	cut, err := outlines(p)
	if err != nil {
		return nil, err
	}
	type stroke struct {
		layer string
		path  curve.Path
	}
	var strokes []stroke
	pieces := 0
	for _, c := range cut {
		pieces += len(c.path)
	}
	draw := func(layer string, all ...curve.Path) {
		for _, path := range all {
			strokes = append(strokes, stroke{layer, path})
			pieces += len(path)
		}
	}
	for _, q := range p.Parts {
		for _, m := range q.Part.Marks {
			draw(layout.LayerMark, m.Map(q.Move))
		}
		for _, t := range q.Part.Letters {
			draw(layout.LayerLetters, t.StrokesMoved(q.Move)...)
		}
	}
	draw(layout.LayerBoard, boards(p)...)
	draw(layout.LayerScale, scale(p)...)
	once, paths := newOnce(pieces), map[string][]curve.Path{}
	for _, c := range cut {
		if once.meets(c.path) {
			return nil, fmt.Errorf("%s shares an edge with another part, so it would be cut twice; lay the parts farther apart", c.part)
		}
		for _, s := range c.path {
			once.add(s, around(s))
		}
		paths[layout.LayerCut] = append(paths[layout.LayerCut], c.path)
	}
	for _, s := range strokes {
		paths[s.layer] = once.rest(paths[s.layer], s.path)
	}
	var out []Layer
	for _, name := range layout.Layers() {
		out = append(out, Layer{name, paths[name]})
	}
	return out, nil
}

// boards draws the corners of every sheet of stock, above it what it is, and on it the
// blanks that parts are sawn from.
func boards(p layout.Plate) []curve.Path {
	const arm = 20 // mm
	var out []curve.Path
	for _, b := range p.Boards {
		for _, side := range curve.Rectangle(b.Box) {
			at := side.Start()
			in := b.Box.Center().Sub(at)
			out = append(out, curve.Polyline(at.Add(geometry.Pt(math.Copysign(arm, in.X), 0)), at, at.Add(geometry.Pt(0, math.Copysign(arm, in.Y)))))
		}
		for _, t := range b.Label {
			out = append(out, t.Strokes()...)
		}
	}
	for _, q := range p.Parts {
		if q.Part.Blank != nil {
			out = append(out, q.Part.Blank.Map(q.Move))
		}
	}
	return out
}

// scale draws the square that shows whether a file has come through at its true
// size.
func scale(p layout.Plate) []curve.Path {
	const high = 5 // mm
	if p.Check.W() <= 0 {
		return nil
	}
	out := []curve.Path{curve.Rectangle(p.Check)}
	for i, words := range []string{"do not cut", fmt.Sprintf("%.0f mm = %.3f in", p.Check.W(), p.Check.W()/25.4)} {
		at := p.Check.Min.Add(geometry.Pt(high, high+2*high*float64(i)))
		out = append(out, layout.Text{At: at, Height: high, Words: words}.Strokes()...)
	}
	return out
}
