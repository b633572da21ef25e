package pattern

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// setTo says to what width the ribs of a group are bent hot and to what they are
// relaxed then, between the middles of their heads' thickness; nothing of the latter
// without a neutral set. Ribs of a group may differ by what one-sided cross pieces ask
// of them.
func setTo(b *bend.Report, g frame.Group, units measure.System) string {
	words, apart, before := "", " between heads", ""
	if b.OnForms() {
		before = " before fitting"
	} else if hot := ribNamed(b, g.Rib.Name).Hot; hot > 0 {
		words, apart = "between heads: hot "+units.Rough(hot)+", ", "" // a bend's radius hot stands beside it
	}
	if b.Boat.Why != nil {
		return strings.TrimSuffix(words, ", ")
	}
	least, most := math.Inf(1), 0.0
	for _, rib := range b.Ribs {
		if slices.Contains(g.Names, rib.Name) {
			least, most = math.Min(least, rib.Relax), math.Max(most, rib.Relax)
		}
	}
	width := units.Rough((least + most) / 2)
	if most-least > marks.FreeWidth { // else nearer than anyone can relax a rib
		width = units.Rough(least) + " to " + units.Rough(most)
	}
	return words + "relax to " + width + apart + before
}

// drawRelax letters what a rib is bent and relaxed to on the rib itself, before its first
// mark, or among the labels when the mark comes too soon. half is half of a
// stringer's width.
func drawRelax(d *layout.Drawing, labels *lanes, r frame.Rib, half float64, words string) {
	const from = 4.0
	first, wide := r.Length/2, lettering.Width(lettering.Safe(words), small)
	for _, m := range r.BendMarks {
		first = math.Min(first, m)
	}
	for _, m := range r.StringerMarks {
		first = math.Min(first, m-half)
	}
	if first < from+wide+2 {
		labels.add(0, words)
		return
	}
	d.Write(from, 2, small, layout.Left, words)
	d.Keep = append(d.Keep, layout.Span{From: from - 2, To: from + wide + 2})
}

// form says to what radius bend i of a rib is bent hot, on its form or by hand, "" when
// it is straight.
func form(b *bend.Report, r frame.Rib, i int, units measure.System) string {
	word := ", hot "
	if b.OnForms() {
		word = ", form "
	}
	for _, a := range ribNamed(b, r.Name).Arcs {
		if a.Bend == i && !math.IsInf(a.Form, 0) {
			return word + units.Whole(a.Form)
		}
	}
	return ""
}

// plies says how thick the gunwale's plies are and how they are glued; "" for one solid stick.
func plies(b *bend.Report, units measure.System) string {
	d := b.Frame.Design.Gunwale
	if d.Plies < 2 {
		return ""
	}
	words := fmt.Sprintf("%d plies of %s", d.Plies, units.Fine(float64(d.Width)/float64(d.Plies)))
	switch d.Glued {
	case design.GluedBent:
		return words + ", glued bent round the spreaders"
	case design.GluedOnForm:
		return words + fmt.Sprintf(", glued on a form of radius %s at station %.0f mm", units.Whole(b.Gunwale.Form), b.Gunwale.At)
	}
	return words + ", glued straight"
}

// stockState says on what the mortise strip is laid: always on wood that is still
// straight, for paper does not bend in its own plane. Where the plies are glued in
// the bend, only the middle one keeps its length: the others slide past it.
func stockState(f *frame.Frame) string {
	if f.Design.Gunwale.Glued == design.GluedStraight {
		return "the straight stock."
	}
	return "the dry plies, clamped flush and straight. Then glue them bent, their midship marks together; the marks on the middle ply hold, the others slide."
}

// setting says in one line of the first sheet how tight the ribs are bent, what is
// meant by relaxed widths, and how a form for the gunwales is made. It is short, for
// sheets are counted.
func setting(b *bend.Report) string {
	d := b.Frame.Design
	what := "Ribs are bent hot"
	if b.OnForms() {
		what = "Rib forms are"
	}
	words := fmt.Sprintf("%s %.0f %% tighter than free: measure your first. Steam %.0f minutes.", what, 100*d.Bending.Springback, b.Ribs[0].Minutes)
	if b.Boat.Why == nil {
		words += " \"Relax to\": the free rib's width at mid-thickness that takes the load off the cross pieces."
	} else if len(b.Frame.Thwarts) > 0 {
		words += " No set of these ribs takes the load off the cross pieces: Frame balance has more."
	}
	if d.Gunwale.Plies > 1 {
		words += fmt.Sprintf(" A gunwale form has %.3f of the gunwale's radius.", 1-b.Gunwale.OnForm)
	}
	return words
}

// drawPlies letters over everything at midship how the gunwale's plies are glued.
func drawPlies(d *layout.Drawing, b *bend.Report, half float64, units measure.System) {
	words := lettering.Safe(plies(b, units))
	if words == "" {
		return
	}
	from, y := 4.0, half+upperRow+4.1
	wide := lettering.Width(words, small)
	d.Write(from, y, small, layout.Left, words)
	d.Keep = append(d.Keep, layout.Span{From: from - 2, To: from + wide + 2})
}
