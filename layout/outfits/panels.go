package outfits

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/measure"
	"ribwright/geometry/outfit/sail"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// PanelDrawings returns the panels of cloth: x along the leech from clew to peak, y
// forward from it.
func PanelDrawings(f *sail.Fit, units measure.System) []layout.Drawing {
	var out []layout.Drawing
	for i, p := range f.Cloth.Panels {
		d := layout.Drawing{Name: fmt.Sprintf("panel-%d", i+1), Title: fmt.Sprintf("Panel %d of %d", i+1, len(f.Cloth.Panels)), Family: "Sail panels", Make: "cut 1 of cloth"}
		d.Line(layout.Cut, curve.Polygon(p.Outline...))
		d.Line(layout.Mark, curve.Polygon(p.Edge...))
		if !math.IsNaN(p.Seam) {
			a, b := across(p.Outline, p.Seam)
			d.Straight(layout.Guide, a, p.Seam, b, p.Seam)
		}
		for _, r := range reefsOn(f, p.Edge) {
			d.Straight(layout.Mark, r.a.X, r.a.Y, r.b.X, r.b.Y)
			d.Write(r.a.X+(r.b.X-r.a.X)*0.3, r.a.Y+(r.b.Y-r.a.Y)*0.3+2, small, layout.Middle, r.name)
		}
		lines := []string{
			fmt.Sprintf("%s, %.2f m2 %s", f.Boat.Frame.Design.Title, f.Plan.Area(), f.Sail.Rig),
			"thin: finished edge; " + units.Fine(float64(f.Sail.Hem)) + " hem beyond it; dashed: the next panel's edge lies here",
			"leech runs along this strip, peak to the right; patch every corner in three layers",
		}
		at := wordsOn(p, lines)
		d.Write(at.X, at.Y+6, head, layout.Left, d.Title)
		for k, w := range lines {
			d.Write(at.X, at.Y-row*float64(k), small, layout.Left, w)
		}
		drawCorners(&d, f, geometry.Around(p.Outline...))
		keepWords(&d)
		out = append(out, d)
	}
	return out
}

// wordsOn returns where the first line of a panel's words begins: about the middle of
// its length, just over its lower finished edge. Words in the middle of the panel
// would stand on tiles of their own that no joint holds to the others.
func wordsOn(p sail.Panel, lines []string) geometry.Point {
	wide := 0.0
	for _, l := range lines {
		wide = math.Max(wide, lettering.Width(l, small))
	}
	middle := sail.Centroid(p.Outline)
	from, over := middle.X-wide/2, math.Inf(-1)
	for _, x := range []float64{from, middle.X, from + wide} {
		if y := lowest(p.Edge, x); !math.IsInf(y, 1) {
			over = math.Max(over, y)
		}
	}
	if math.IsInf(over, -1) { // a panel of hem alone
		return geometry.Pt(from, middle.Y)
	}
	return geometry.Pt(from, math.Min(middle.Y, over+row*float64(len(lines))))
}

// lowest returns where an upright line first meets a polygon from below; without end
// where it misses.
func lowest(pts []geometry.Point, x float64) float64 {
	turned := make([]geometry.Point, len(pts))
	for i, p := range pts {
		turned[i] = geometry.Pt(p.Y, p.X)
	}
	low, _ := across(turned, x)
	return low
}

// across returns where a level crosses a polygon, from left to right.
func across(pts []geometry.Point, y float64) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y < y) != (b.Y < y) {
			x := a.Lerp(b, (y-a.Y)/(b.Y-a.Y)).X
			from, to = math.Min(from, x), math.Max(to, x)
		}
	}
	return from, to
}

// reefed is the line of a reef on a piece of cloth.
type reefed struct {
	name string
	a, b geometry.Point
}

// reefsOn are the lines of all reefs that are of use on a piece of the finished sail.
func reefsOn(f *sail.Fit, piece []geometry.Point) (out []reefed) {
	for r := 1; r < f.Useful(); r++ {
		if a, b, ok := f.ReefIn(r, piece); ok {
			out = append(out, reefed{fmt.Sprintf("line of reef %d", r), a, b})
		}
	}
	return out
}

func drawCorners(d *layout.Drawing, f *sail.Fit, box geometry.Box) {
	c := f.Cloth
	middle := sail.Centroid(c.Finished)
	for i, q := range f.Plan.Corners {
		at := c.Turn.Apply(q)
		if !box.Holds(at) {
			continue
		}
		in := at.Add(middle.Sub(at).Unit().Scale(45))
		d.Write(in.X, in.Y, head, layout.Middle, f.Plan.Names[i])
	}
}

// PanelParts returns the panels for a cutter of cloth.
func PanelParts(f *sail.Fit) []layout.Part {
	var out []layout.Part
	for i, p := range f.Cloth.Panels {
		part := layout.Part{Name: fmt.Sprintf("panel %d", i+1), Cut: []curve.Path{curve.Polygon(p.Outline...)}, Marks: []curve.Path{curve.Polygon(p.Edge...)}}
		if !math.IsNaN(p.Seam) {
			a, b := across(p.Outline, p.Seam)
			part.Marks = append(part.Marks, curve.Polyline(geometry.Pt(a, p.Seam), geometry.Pt(b, p.Seam)))
		}
		for _, r := range reefsOn(f, p.Edge) {
			part.Marks = append(part.Marks, curve.Polyline(r.a, r.b))
		}
		if t, ok := panelLetters(p, fmt.Sprintf("panel %d, peak this way >", i+1), fmt.Sprintf("%d >", i+1)); ok {
			part.Letters = append(part.Letters, t)
		}
		out = append(out, part)
	}
	return out
}

// panelLetters finds letters for a panel that lie wholly on it, about its middle: the
// first words that fit, as large as fit; the last panel may be a mere strip. It reports
// false where none do.
func panelLetters(p sail.Panel, words ...string) (layout.Text, bool) {
	const clear = 5.0 // of the edge, mm
	middle := sail.Centroid(p.Outline)
	for _, w := range words {
		for _, high := range []float64{15, 10, 7, engraved} {
			t := layout.Text{Height: high, Align: layout.Middle, Words: w}
			half := lettering.Width(w, high) / 2 // and the cutter's letters may reach further
			half = math.Max(half, lettering.StrokeWidth(w, high)-half)
			from, to := math.Inf(-1), math.Inf(1)
			for _, y := range []float64{middle.Y - high - clear, middle.Y + high + clear} { // tails and all
				a, b := across(p.Outline, y)
				from, to = math.Max(from, a), math.Min(to, b)
			}
			if t.At = geometry.Pt((from+to)/2, middle.Y-high/2); to-from >= 2*(half+clear) {
				return t, true
			}
		}
	}
	return layout.Text{}, false
}
