package fanboard

import (
	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// The sheet that a cutter draws a board on. Common practice, no source.
const (
	material  = "plywood"
	thickness = 4.0
	margin    = 8.0 // mm round all that is drawn
)

// Part is a drawn board for a cutter: its outline to cut, its lines to draw and its words
// to engrave. A cutter knows no broken lines, so those are broken here.
func Part(d layout.Drawing) layout.Part {
	b := d.Bounds()
	edge := geometry.Rect(b.Min.X-margin, b.Min.Y-margin, b.Max.X+margin, b.Max.Y+margin)
	p := layout.Part{Name: d.Title, Cut: []curve.Path{curve.Rectangle(edge)}, Letters: d.Texts, Material: material, Thickness: thickness, Loose: true}
	for _, s := range d.Strokes {
		if s.Pen == layout.Long {
			p.Marks = append(p.Marks, broken(s.Path, s.Pen.Dash())...)
		} else {
			p.Marks = append(p.Marks, s.Path)
		}
	}
	return p
}

// broken cuts a straight line into dashes.
func broken(path curve.Path, dash []float64) (out []curve.Path) {
	pts := path.Flatten(0.01)
	from, to := pts[0], pts[len(pts)-1]
	long := to.Sub(from).Norm()
	at := func(s float64) geometry.Point { return from.Add(to.Sub(from).Scale(min(s/long, 1))) }
	for s := 0.0; s < long; s += dash[0] + dash[1] {
		out = append(out, curve.Polyline(at(s), at(s+dash[0])))
	}
	return out
}
