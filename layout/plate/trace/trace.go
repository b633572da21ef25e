// Package trace turns a plate into the lines a cutter follows: layer by layer in
// the order of cutting, every line once.
package trace

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// Layer is the lines of one layer in the order they are followed.
type Layer struct {
	Name  string
	Paths []curve.Path
}

// speck is the size below which a line is left out, mm: far below a cutter's step.
const speck = 0.001

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
	once := newOnce()
	for _, c := range cut {
		if once.meets(c.path) {
			return nil, fmt.Errorf("%s shares an edge with another part, so it would be cut twice; lay the parts farther apart", c.part)
		}
		once.add(c.path)
	}
	paths := map[string][]curve.Path{}
	for _, c := range cut {
		paths[layout.LayerCut] = append(paths[layout.LayerCut], c.path)
	}
	draw := func(layer string, path curve.Path) {
		paths[layer] = append(paths[layer], once.rest(path)...)
	}
	for _, q := range p.Parts {
		for _, c := range q.Part.Marks {
			draw(layout.LayerMark, c.Map(q.Move))
		}
		for _, t := range q.Part.Letters {
			for _, s := range t.Strokes() {
				draw(layout.LayerLetters, s.Map(q.Move))
			}
		}
	}
	for _, b := range boards(p) {
		draw(layout.LayerBoard, b)
	}
	for _, s := range scale(p) {
		draw(layout.LayerScale, s)
	}
	var out []Layer
	for _, name := range layout.Layers() {
		out = append(out, Layer{name, paths[name]})
	}
	return out, nil
}

// pointlike reports whether a path is too small to follow.
func pointlike(p curve.Path) bool {
	b := p.Bounds()
	return b.Empty() || b.W() < speck && b.H() < speck
}

// boards draws the corners of every sheet of stock and, where the rim has room for
// it, what it is.
func boards(p layout.Plate) []curve.Path {
	const arm, high = 20, 5 // mm
	var out []curve.Path
	for _, b := range p.Boards {
		lo, hi := b.Box.Min, b.Box.Max
		for _, c := range [][3]float64{{lo.X, lo.Y, 1}, {hi.X, lo.Y, -1}, {hi.X, hi.Y, -1}, {lo.X, hi.Y, 1}} {
			up := 1.0
			if c[1] == hi.Y {
				up = -1
			}
			at := geometry.Point{X: c[0], Y: c[1]}
			out = append(out, curve.Polyline(at.Add(geometry.Point{X: arm * c[2]}), at, at.Add(geometry.Point{Y: arm * up})))
		}
		if b.Rim < 2+high+2 {
			continue
		}
		at := geometry.Point{X: lo.X + arm + 5, Y: lo.Y + 2}
		out = append(out, layout.Text{At: at, Height: high, Words: b.Title}.Strokes()...)
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
		at := p.Check.Min.Add(geometry.Point{X: high, Y: high + 2*high*float64(i)})
		out = append(out, layout.Text{At: at, Height: high, Words: words}.Strokes()...)
	}
	return out
}
