package book

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
	"ribwright/layout/sight"
)

func (w *writer) cover() {
	f := w.Frame
	w.chapter(w.book.Title)
	if w.book.For != "" {
		w.say("%s", w.book.For)
	}
	w.add(report.Figure{Drawing: w.quarter(), Caption: "The boat from over the bow, its cloth on, not to scale.",
		About: "Line drawing of the boat in three-quarter view: the skin outside, ribs, stringers, gunwales and cross pieces inside; what lies behind something is hidden."})
	t := report.Titled("").Words("The job", "").Filled(
		"Length of hull", w.Length(f.Hull.Length), "Beam between the gunwale lines", w.Length(f.Hull.Beam),
		"Depth amidships, under the gunwales", w.Length(f.Hull.Depth),
		"Sticks", fmt.Sprintf("%d, of them %s and %s", len(w.Plan.Sticks), wording.Counted(len(f.Ribs), "rib"), wording.Counted(f.Design.Ribs.Spare, "spare blank")),
		"The boat as built, estimated", w.Mass(w.Afloat.Own().Mass))
	work := hours.Hours(w.Work, "", w.Skill)
	w.add(t.Filled("Materials, in the currency of the price table "+w.Prices.Name, fmt.Sprintf("%.0f, give or take %.0f: %s", w.Cost.Likely, w.Cost.Off, w.Money()),
		"Work, "+w.Skill.String()+" builder", fmt.Sprintf("%.0f hours, give or take %.0f: %s", work, hours.Off*work, w.Time())))
	w.section("Read first")
	w.add(report.Told(w.Told)...)
	w.add(report.List{Items: []string{
		"Cut by the full-size patterns alone, which are printed apart from it: this book has no line that may be cut by.",
		"Wood varies: every bend, strength, weight and time here is an estimate, some of it from rules of thumb that are said to be so. Nothing here certifies a boat.",
		"Local law, the waterway's authority and licensed advice come first.",
	}})
	w.section("Contents")
	w.add(report.Contents{})
	w.add(glossary())
}

// glossary explains the words of the trade that the book takes for granted.
func glossary() report.Table {
	return report.Titled("Words of this book").Names("Word").Words("What it means").Filled(
		"molded (designs write moulded)", "the width of a stem on its flat side, from its outer edge inward",
		"horn, shelf", "the point in which a stem ends between the gunwales, and the step under it that they lie on",
		"scarf", "two sticks joined end to end by long slopes that are glued on each other",
		"fair", "in one sweep, without bumps or flats",
		"clove hitch", "two turns round a stick, the second crossing over the first and tucked under itself",
		"reef knot", "left over right, then right over left",
		"frapping", "turns round the strands of a lashing, between the sticks, that draw it tight",
		"springback", "the share of its curvature that a bent stick loses when it is let go",
		"GM", "how stiffly a boat stands up when it begins to heel, as a length: more is stiffer, less than 0 rolls over")
}

// quarter draws the boat under its cloth, with all that hides left out, over the bow
// from port.
func (w *writer) quarter() layout.Drawing {
	const wide, turn, rise = 160.0, 55 * math.Pi / 180, 22 * math.Pi / 180
	d := layout.Drawing{Name: "quarter", Title: "Three-quarter view"}
	f := w.Frame
	sinT, cosT := math.Sincos(turn)
	sinR, cosR := math.Sincos(rise)
	from := geometry.Point3{X: cosT * cosR, Y: sinT * cosR, Z: sinR}
	k := wide / (f.Hull.Length*sinT + f.Hull.Beam*cosT)
	b := solid.Of(f, solid.AsDrawn{}, nil)
	b.Cover(w.Afloat.Cloth)
	p := sight.Picture{View: sight.NewView(solid.Eye{At: from, Parallel: true}, k), Window: geometry.EmptyBox(), Fold: layout.Mark, Pen: func(l solid.Line) (layout.Pen, bool) {
		if l.Part == solid.Gunwales || l.Part == solid.Stems {
			return layout.Mark, true
		}
		return layout.Tick, true
	}}
	p.Draw(&d, b, geometry.Point{})
	return d
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
