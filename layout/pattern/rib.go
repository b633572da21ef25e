package pattern

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
)

// RibStrip draws the marking strip for one group of ribs: half a rib, from its
// middle (x = 0) out to the end of its blank, y = 0 along its middle line. The
// other half is marked by turning the strip over on the middle.
func RibStrip(b *bend.Report, g frame.Group, units measure.System) layout.Drawing {
	f := b.Frame
	r, half := g.Rib, float64(f.Design.Ribs.Width)/2
	d := layout.Drawing{
		Name: "rib-" + r.Name, Title: "Rib " + strings.Join(g.Names, ", "), Family: "Rib strips",
		Make: fmt.Sprintf("blank %s, make %d", units.Fine(r.Blank), len(g.Names)),
	}
	shoulder, tenon, end := r.Length/2, r.Length/2+r.Tenon, r.Blank/2
	d.Line(layout.Mark, curve.Rectangle(geometry.Box{Min: geometry.Point{X: 0, Y: -half}, Max: geometry.Point{X: end, Y: half}}))
	d.Straight(layout.Center, 0, 0, end, 0)
	labels := &lanes{base: half}
	mark := func(pen layout.Pen, x float64, words string) {
		d.Straight(pen, x, -half, x, half)
		labels.add(x, words)
	}
	middle := "middle of rib " + strings.Join(g.Names, ", ") + ", turn over here"
	if first := r.Section.Half[0]; first.Radius > 0 {
		middle += ", radius " + units.Fine(first.Radius) + form(b, r, 0, units)
	}
	mark(layout.Center, 0, middle)
	markBends(b, r, units, mark)
	mark(layout.Cut, shoulder, "shoulder "+units.Fine(shoulder)+within(marks.ShoulderSlack(f), units))
	mark(layout.Cut, tenon, "tenon end "+units.Fine(tenon))
	mark(layout.Mark, end, "blank end")
	if widths := setTo(b, g, units); widths != "" {
		drawRelax(&d, labels, r, float64(f.Design.Stringers.Width)/2, widths)
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

// within says how far off a mark may be, "" where it does not matter.
func within(slack float64, units measure.System) string {
	if math.IsInf(slack, 1) {
		return ""
	}
	return " \u00b1" + units.Within(slack)
}

// markBends marks what lies between middle and shoulder.
func markBends(b *bend.Report, r frame.Rib, units measure.System, mark func(pen layout.Pen, x float64, words string)) {
	slack := within(marks.BilgeSlack(r), units)
	for i, at := range r.BendMarks {
		words := "bend ends " + units.Fine(at) + slack
		if next := r.Section.Half[i+1]; next.Radius > 0 {
			words = "bend begins " + units.Fine(at) + slack + ", radius " + units.Fine(next.Radius) + form(b, r, i+1, units)
		}
		mark(layout.Mark, at, words)
	}
	for i, at := range r.StringerMarks {
		mark(layout.Mark, at, fmt.Sprintf("S%d %s", i+1, units.Fine(at)))
	}
}
