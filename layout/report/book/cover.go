package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

func (w *writer) cover() {
	f := w.Frame
	w.chapter(w.book.Title)
	if w.book.For != "" {
		w.say("%s", w.book.For)
	}
	w.add(report.Figure{Drawing: quarter(f), Caption: "The frame from over the bow, not to scale.",
		About: "Line drawing of the frame in three-quarter view: gunwales, ribs, keel, stringers, stems and cross pieces."})
	t := report.Titled("").Words("The job", "").Filled(
		"Length of hull", w.Length(f.Hull.Length), "Beam between the gunwale lines", w.Length(f.Hull.Beam),
		"Depth amidships, under the gunwales", w.Length(f.Hull.Depth),
		"Sticks", fmt.Sprintf("%d, of them %s and %s", len(w.Plan.Sticks), wording.Counted(len(f.Ribs), "rib"), wording.Counted(f.Design.Ribs.Spare, "spare blank")),
		"The boat as built, estimated", w.Mass(w.Afloat.Own().Mass))
	for _, i := range w.Afloat.Outfits {
		t.Row("Outfit: "+i.Name, w.Mass(i.Load().Mass))
	}
	for _, i := range w.Afloat.Aboard() {
		t.Row("Aboard: "+i.Name, w.Mass(i.Load().Mass))
	}
	work := hours.Hours(w.Work, "", w.Skill)
	w.add(t.Filled("Materials, prices "+w.Prices.Name, fmt.Sprintf("%.0f, give or take %.0f", w.Cost.Likely, w.Cost.Off),
		"Work, "+w.Skill.String()+" builder", fmt.Sprintf("%.0f hours, give or take %.0f", work, hours.Off*work)))
	w.section("Read first")
	w.add(report.List{Items: []string{
		"Print the full-size patterns with ribwright loft; this book has no line that may be cut by.",
		"Wood varies: every bend, strength, weight and time here is an estimate, some of it from rules of thumb that are said to be so. Nothing here certifies a boat.",
		"Local law, the waterway's authority and licensed advice come first.",
	}})
	w.section("Contents")
	w.add(report.Contents{})
}

// quarter draws the frame in three-quarter view, square to a line of sight over the bow from port.
func quarter(f *frame.Frame) layout.Drawing {
	const wide, turn, rise = 160.0, 55 * math.Pi / 180, 22 * math.Pi / 180
	d := layout.Drawing{Name: "quarter", Title: "Three-quarter view"}
	sinT, cosT := math.Sincos(turn)
	sinR, cosR := math.Sincos(rise)
	k := wide / (f.Hull.Length*sinT + f.Hull.Beam*cosT)
	for _, l := range frameLines(f) {
		var out []geometry.Point
		for _, p := range l.pts {
			out = append(out, geometry.Pt(k*(p.Y*cosT-p.X*sinT), k*(p.Z*cosR-(p.X*cosT+p.Y*sinT)*sinR)))
		}
		d.Line(l.pen, curve.Polyline(out...))
	}
	return d
}

type spaceLine struct {
	pen layout.Pen
	pts []geometry.Point3
}

func frameLines(f *frame.Frame) []spaceLine {
	var out []spaceLine
	both := func(pen layout.Pen, pts []geometry.Point3) {
		other := make([]geometry.Point3, len(pts))
		for i, p := range pts {
			other[i] = geometry.Point3{X: p.X, Y: -p.Y, Z: p.Z}
		}
		out = append(out, spaceLine{pen, pts}, spaceLine{pen, other})
	}
	const n = 60
	g := &f.Gunwale
	aft, fore := g.Line.Ends()
	for _, edge := range [][2]float64{{g.Width / 2, g.Height}, {-g.Width / 2, g.Height}, {g.Width / 2, 0}} {
		both(layout.Cut, along(aft, fore, n, func(x float64) geometry.Point3 { return g.At(x, edge[0], edge[1]) }))
	}
	for _, r := range f.Ribs {
		both(layout.Mark, ribLine(r))
	}
	for _, s := range f.Stringers {
		a, b := s.Line.Ends()
		both(layout.Tick, along(a, b, n, s.Line.Point))
	}
	for _, t := range f.Thwarts {
		p := g.Line.Point(t.At)
		half := t.Outline.Bounds().H() / 2
		for _, x := range []float64{t.At - half, t.At + half} {
			out = append(out, spaceLine{layout.Mark, []geometry.Point3{{X: x, Y: p.Y, Z: p.Z}, {X: x, Y: -p.Y, Z: p.Z}}})
		}
	}
	return append(out, spaceLine{layout.Cut, profile(f)})
}

// ribLine runs along the port half of a rib at mid-thickness.
func ribLine(r frame.Rib) []geometry.Point3 {
	const n = 24
	return along(0, r.Section.Half.Length(), n, func(s float64) geometry.Point3 {
		p := r.Face(s, 0)
		return geometry.Point3{X: r.Station, Y: p.X, Z: p.Y}
	})
}

// profile runs along the middle line from the head of the stern to the head of the bow.
func profile(f *frame.Frame) []geometry.Point3 {
	const n = 30
	var out []geometry.Point3
	h := f.Hull
	for i := n; i >= 0; i-- {
		p, _ := h.Stern.Point(h.Stern.Outer.Length() * float64(i) / n)
		out = append(out, geometry.Point3{X: -p.X, Z: p.Y})
	}
	for i := 1; i < 2*n; i++ {
		x := -h.Stern.Toe.X + (h.Bow.Toe.X+h.Stern.Toe.X)*float64(i)/(2*n)
		z, _ := h.KeelZ(x)
		out = append(out, geometry.Point3{X: x, Z: z})
	}
	return append(out, along(0, h.Bow.Outer.Length(), n, func(s float64) geometry.Point3 {
		p, _ := h.Bow.Point(s)
		return geometry.Point3{X: p.X, Z: p.Y}
	})...)
}
