package pattern

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// RibStrip draws the marking strip for one group of ribs: half a rib, from its
// middle (x = 0) out to the end of its blank, y = 0 along its middle line. The
// other half is marked by turning the strip over on the middle.
func RibStrip(f *frame.Frame, g frame.Group, o Options) layout.Drawing {
	r, half := g.Rib, float64(f.Design.Ribs.Width)/2
	d := layout.Drawing{
		Name: "rib-" + r.Name, Title: "Rib " + list(g.Names), Family: "Rib strips",
		Make: fmt.Sprintf("blank %s, make %d", o.plain(r.Blank), len(g.Names)),
	}
	shoulder, tenon, end := r.Length/2, r.Length/2+r.Tenon, r.Blank/2
	d.Line(layout.Mark, curve.Rectangle(geometry.Box{Min: geometry.Point{X: 0, Y: -half}, Max: geometry.Point{X: end, Y: half}}))
	d.Straight(layout.Center, 0, 0, end, 0)
	labels := &lanes{base: half}
	mark := func(pen layout.Pen, x float64, words string) {
		d.Straight(pen, x, -half, x, half)
		labels.add(x, words)
	}
	middle := "middle of rib " + list(g.Names) + ", turn over here"
	if b := r.Section.Half[0]; b.Radius > 0 {
		middle += ", radius " + o.plain(b.Radius) + o.form(f, r, 0)
	}
	mark(layout.Center, 0, middle)
	for _, m := range marksOf(f, r, o) {
		mark(layout.Mark, m.at, m.words)
	}
	mark(layout.Cut, shoulder, "shoulder "+o.plain(shoulder))
	mark(layout.Cut, tenon, "tenon end "+o.plain(tenon))
	mark(layout.Mark, end, "blank end")
	if width := o.relax(f, g); width != "" {
		drawRelax(&d, labels, r, float64(f.Design.Stringers.Width)/2, "relax to "+width+" between heads before fitting")
	}
	labels.draw(&d)
	for _, share := range r.StringerMarks {
		w := float64(f.Design.Stringers.Width) / 2
		d.Straight(layout.Guide, share-w, -half, share-w, half)
		d.Straight(layout.Guide, share+w, -half, share+w, half)
	}
	// A little air below, so that a line of the next strip is not taken for ours.
	d.Straight(layout.Tick, 0, -half, 0, -half-1.5)
	return d
}

type ribMark struct {
	at    float64
	words string
}

// marksOf lists the marks between middle and shoulder.
func marksOf(f *frame.Frame, r frame.Rib, o Options) []ribMark {
	var out []ribMark
	b := r.BendMarks
	for i, at := range b {
		words := "bend ends "
		next := r.Section.Half[i+1]
		if next.Radius > 0 {
			words = "bend begins "
		}
		words += o.plain(at)
		if next.Radius > 0 {
			words += ", radius " + o.plain(next.Radius) + o.form(f, r, i+1)
		}
		out = append(out, ribMark{at, words})
	}
	for i, at := range r.StringerMarks {
		out = append(out, ribMark{at, fmt.Sprintf("S%d %s", i+1, o.plain(at))})
	}
	return out
}
