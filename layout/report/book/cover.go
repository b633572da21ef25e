package book

import (
	"fmt"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/hours"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
	"ribwright/layout/report/trade"
)

func (w *writer) cover() {
	f := w.Frame
	w.chapter(w.book.Title)
	if w.book.For != "" {
		w.say("%s", w.book.For)
	}
	w.add(report.Figure{Drawing: w.Portrait, Caption: "The boat from over the bow, its cloth on, not to scale.",
		About: "Line drawing of the boat in three-quarter view: the skin outside, ribs, stringers, gunwales and cross pieces inside; what lies behind something is hidden."})
	t := report.Titled("").Words("The job", "").Filled(
		"Length of hull", w.Length(f.Hull.Length), "Beam between the gunwale lines", w.Length(f.Hull.Beam),
		"Depth amidships, under the gunwales", w.Length(f.Hull.Depth),
		"Sticks", fmt.Sprintf("%d, of them %s and %s", len(w.Plan.Sticks), wording.Counted(len(f.Ribs), "rib"), wording.Counted(f.Design.Ribs.Spare, "spare blank")),
		"The boat as built, estimated", w.Mass(w.Afloat.Own().Mass))
	work := hours.Hours(w.Work, "", w.Skill)
	w.add(t.Filled("Materials, in the currency of the price table "+w.Prices.Name, fmt.Sprintf("%.0f, give or take %.0f%s: %s", w.Cost.Likely, w.Cost.Off, w.Cost.Without(), w.Money()),
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
	w.add(glossary(w.Letters.Units))
}

// glossary explains the words of the trade that the book takes for granted.
func glossary(units measure.System) report.Table {
	var rows []string
	for _, word := range []string{"bow, stern", "forward, aft", "port, starboard", "midship", "station", "gunwale", "outwale",
		"keel", "stringer", "batten", "stem", "horn", "shelf", "forefoot", "molded", "breasthook", "cross piece", "thwart", "yoke", "painter",
		"proud", "shy", "bilge", "flare", "sheer", "rocker", "blank", "ply", "mortise, tenon", "scarf", "spreader", "edge-set", "springback", "fair",
		"windlass of cord", "clove hitch", "reef knot", "frapping", "bevel", "Forstner drill", "fid", "GM"} {
		meaning, _ := trade.Meaning(word)
		rows = append(rows, word, strings.Replace(meaning, ", in mm:", report.Either(units, ", in mm:", ", in inches:"), 1))
	}
	return report.Titled("Words of this book").Names("Word").Words("What it means").Filled(rows...)
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
