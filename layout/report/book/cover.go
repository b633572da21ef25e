package book

import (
	"fmt"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/lines"
	"ribwright/layout/report"
)

func (w *writer) cover() {
	f := w.Frame
	w.chapter(w.book.Title)
	if w.book.For != "" {
		w.say("%s", w.book.For)
	}
	w.add(report.Figure{Drawing: lines.Portrait(w.Frame, w.Afloat.Cloth), Caption: "The boat from over the bow, its cloth on, not to scale.",
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
		"bow, stern; forward, aft", "the ends, ahead and behind; toward them",
		"port, starboard", "the left and the right side, looking ahead",
		"midship, station", "the middle of the length; a place along the boat, level from midship",
		"gunwale, outwale", "the long stick along an upper edge, in which the ribs stand; the strip outside it, over the cloth",
		"keel, stringer, batten", "the long stick along the middle of the bottom; those that hold the cloth out beside it; any stick so thin that it bends fair",
		"stem, breasthook", "the upright piece at an end; the flat one behind its top, which ties the gunwales together",
		"cross piece, thwart, yoke", "a bar from gunwale to gunwale; one to hold them; one to carry the boat by",
		"bilge, flare", "where the bottom turns up into the side; how far the side leans outward",
		"sheer, rocker", "the line of the gunwale seen from the side; how much higher the keel's ends are than its middle",
		"blank, ply", "a piece before it has its shape; one of several layers that are glued on each other",
		"mortise, tenon", "a slot, and the end that goes into it",
		"spreader", "what holds the gunwales apart, or together, while the frame is built",
		"edge-set", "a bend of the gunwales the stiff way, on edge",
		"windlass of cord", "a loop round both gunwales, drawn tight by a stick that is put through it and turned; tie the stick",
		"bevel, Forstner drill, fid", "a tool whose blade is set to an angle and keeps it; a drill for flat holes, led by its rim; a smooth spike that opens a way for cord",
		"painter", "the rope at an end, to tie the boat by",
		"molded (designs write moulded)", "the width of a stem on its flat side, from its outer edge inward",
		"horn, shelf", "the point at the top of a stem, against which the gunwales' ends butt, and the step under it that they lie on",
		"scarf", "two sticks joined end to end by long slopes that are glued on each other",
		"fair", "in one sweep, without bumps or flats",
		"clove hitch", "two turns round a stick, the second crossing over the first and tucked under itself",
		"reef knot", "left over right, then right over left",
		"frapping", "turns round the strands of a lashing, between the sticks, that draw it tight",
		"springback", "the share of its curvature that a bent stick loses when it is let go",
		"GM", "how stiffly a boat stands up when it begins to heel, as a length: more is stiffer, less than 0 rolls over")
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
