package lines

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/trial/flaw"
	"ribwright/layout"
	"ribwright/layout/sight"
)

// How large each picture of a fault is, mm of drawing.
const panelWide, panelHigh = 84.0, 40.0

// Fault draws a frame fair and with a fault, from one place, at one scale: "fair" and
// "faulty". What the eye runs along is drawn with the pen Cut.
func Fault(f *frame.Frame, s *flaw.Seen, at flaw.Stand) []layout.Drawing {
	per := f.Hull.Length * 1.08 / panelWide
	if at != flaw.Abeam {
		per = closeUp(f, s.Fault)
	}
	v := sight.NewView(s.Eye, 1/per)
	box := geometry.Rect(-panelWide/2, -panelHigh/2, panelWide/2, panelHigh/2)
	pen := func(l solid.Line) (layout.Pen, bool) {
		if flaw.Looked(s.Fault, s.Sighted, l) {
			return layout.Cut, true
		}
		return layout.Tick, true
	}
	var out []layout.Drawing
	for i, b := range []*solid.Boat{s.Fair, s.Faulty} {
		d := layout.Drawing{Name: []string{"fair", "faulty"}[i], Title: []string{"Fair", "With the fault"}[i]}
		sight.Picture{View: v, Window: box, Fold: layout.Tick, Pen: pen}.Draw(&d, b, geometry.Point{})
		out = append(out, d)
	}
	return out
}

// closeUp is how many mm of the boat one of the picture is where the eye looks from an end:
// a rib fills it that has one side full, and of a line that runs away there is enough to
// see a bump.
func closeUp(f *frame.Frame, fault flaw.Fault) float64 {
	const room, near = 1.15, 6.0
	if fault.Kind == flaw.OneSide {
		return math.Max(near, 2*f.Ribs[fault.Rib].Section.HalfBreadth*room/panelWide)
	}
	return near
}
