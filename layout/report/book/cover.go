package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

func (w *writer) cover() {
	f := w.Frame
	w.chapter(w.book.Title)
	if w.book.For != "" {
		w.say(w.book.For)
	}
	w.add(report.Figure{Drawing: quarter(f), Caption: "The frame from over the bow, not to scale.",
		About: "Line drawing of the frame in three-quarter view: gunwales, ribs, keel, stringers, stems and cross pieces."})
	rows := [][]string{
		{"Length of hull", w.Length(f.Hull.Length)},
		{"Beam between the gunwale lines", w.Length(f.Hull.Beam)},
		{"Depth amidships, under the gunwales", w.Length(f.Hull.Depth)},
		{"Sticks", fmt.Sprintf("%d, of them %s", len(w.Plan.Sticks), wording.Counted(len(f.Ribs), "rib"))},
		{"The boat as built, estimated", w.Mass(w.Afloat.Own().Mass)},
	}
	for _, i := range w.Afloat.Outfits {
		rows = append(rows, []string{"Outfit: " + i.Name, w.Mass(i.Load().Mass)})
	}
	for _, i := range w.Afloat.Aboard() {
		rows = append(rows, []string{"Aboard: " + i.Name, w.Mass(i.Load().Mass)})
	}
	rows = append(rows,
		[]string{"Materials, prices " + w.Prices.Name, fmt.Sprintf("%.0f, give or take %.0f", w.Cost.Likely, w.Cost.Off)},
		[]string{"Work, " + w.Skill.String() + " builder", fmt.Sprintf("%.0f hours, give or take %.0f", hours.Hours(w.Work, "", w.Skill), hours.Off*hours.Hours(w.Work, "", w.Skill))})
	w.add(report.Table{Columns: []report.Column{text("The job"), text("")}, Rows: rows})
	w.section("Read first")
	w.add(report.List{Items: []string{
		"Print the full-size patterns with ribwright loft; this book has no line that may be cut by.",
		"Wood varies: every bend, strength, weight and time here is an estimate, some of it from rules of thumb that are said to be so. Nothing here certifies a boat.",
		"Local law, the waterway's authority and licensed advice come first.",
	}})
	w.section("Contents")
	w.add(report.Contents{})
}

// quarter draws the frame in three-quarter view, square to a line of sight over the
// bow from port.
func quarter(f *frame.Frame) layout.Drawing {
	const wide, turn, rise = 160.0, 55 * math.Pi / 180, 22 * math.Pi / 180
	d := layout.Drawing{Name: "quarter", Title: "Three-quarter view"}
	sinT, cosT := math.Sincos(turn)
	sinR, cosR := math.Sincos(rise)
	k := wide / (f.Hull.Length*sinT + f.Hull.Beam*cosT)
	see := func(p geometry.Point3) geometry.Point {
		return geometry.Point{X: k * (p.Y*cosT - p.X*sinT), Y: k * (p.Z*cosR - (p.X*cosT+p.Y*sinT)*sinR)}
	}
	draw := func(pen layout.Pen, pts []geometry.Point3) {
		var out []geometry.Point
		for _, p := range pts {
			out = append(out, see(p))
		}
		d.Line(pen, polyline(out))
	}
	for _, l := range frameLines(f) {
		draw(l.pen, l.pts)
	}
	return d
}

// spaceLine is a line of the frame in space.
type spaceLine struct {
	pen layout.Pen
	pts []geometry.Point3
}

// frameLines are the lines by which a frame is known.
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
		var pts []geometry.Point3
		for i := range n + 1 {
			pts = append(pts, g.At(aft+(fore-aft)*float64(i)/n, edge[0], edge[1]))
		}
		both(layout.Cut, pts)
	}
	for _, r := range f.Ribs {
		both(layout.Mark, ribLine(r))
	}
	for _, s := range f.Stringers {
		a, b := s.Line.Ends()
		var pts []geometry.Point3
		for i := range n + 1 {
			pts = append(pts, s.Line.Point(a+(b-a)*float64(i)/n))
		}
		both(layout.Tick, pts)
	}
	for _, t := range f.Thwarts {
		p := g.Line.Point(t.At)
		for _, x := range []float64{t.At - thwartWidth(t)/2, t.At + thwartWidth(t)/2} {
			out = append(out, spaceLine{layout.Mark, []geometry.Point3{{X: x, Y: p.Y, Z: p.Z}, {X: x, Y: -p.Y, Z: p.Z}}})
		}
	}
	return append(out, spaceLine{layout.Cut, profile(f)})
}

// thwartWidth is how wide a cross piece is at its ends, mm.
func thwartWidth(t frame.Thwart) float64 { return t.Outline.Bounds().H() }

// ribLine runs along the port half of a rib at mid-thickness.
func ribLine(r frame.Rib) []geometry.Point3 {
	const n = 24
	girth := r.Section.Half.Length()
	var out []geometry.Point3
	for i := range n + 1 {
		p := r.Face(girth*float64(i)/n, 0)
		out = append(out, geometry.Point3{X: r.Station, Y: p.X, Z: p.Y})
	}
	return out
}

// profile runs along the middle line from the head of the stern to the head of the
// bow.
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
	for i := range n + 1 {
		p, _ := h.Bow.Point(h.Bow.Outer.Length() * float64(i) / n)
		out = append(out, geometry.Point3{X: p.X, Z: p.Y})
	}
	return out
}
