package pattern

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// bending returns how the ribs and gunwales of f are bent, nil when their balance
// cannot be worked out: the patterns then say nothing of it.
func (o Options) bending(f *frame.Frame) *bend.Report {
	if o.report != nil && o.report.Frame == f {
		return o.report
	}
	r, err := bend.Of(f)
	if err != nil {
		return nil
	}
	return r
}

// relax says to what width the ribs of a group are relaxed before they are
// fitted, between the middles of their heads' thickness; "" without a neutral set.
// Ribs of a group may differ by what one-sided cross pieces ask of them.
func (o Options) relax(f *frame.Frame, g frame.Group) string {
	r := o.bending(f)
	if r == nil || r.Boat.Why != nil {
		return ""
	}
	least, most := math.Inf(1), 0.0
	for _, rib := range r.Ribs {
		for _, n := range g.Names {
			if rib.Name == n {
				least, most = math.Min(least, rib.Relax), math.Max(most, rib.Relax)
			}
		}
	}
	if most-least < 2 { // nearer than anyone can relax a rib
		return o.whole((least + most) / 2)
	}
	return o.whole(least) + " to " + o.whole(most)
}

// drawRelax letters what a rib is relaxed to on the rib itself, before its first
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

// whole letters a length that is true to a millimetre at best.
func (o Options) whole(mm float64) string {
	metric := measure.MM(mm, 0) + " mm"
	if o.Units == measure.Imperial {
		return measure.Sixteenths(mm) + " (" + metric + ")"
	}
	return metric
}

// form says on what radius bend i of a rib is bent, "" when it is straight or not
// known.
func (o Options) form(f *frame.Frame, r frame.Rib, i int) string {
	report := o.bending(f)
	if report == nil {
		return ""
	}
	for _, rib := range report.Ribs {
		for _, a := range rib.Arcs {
			if rib.Name == r.Name && a.Bend == i && !math.IsInf(a.Form, 0) {
				return ", form " + o.whole(a.Form)
			}
		}
	}
	return ""
}

// plies says how thick the gunwale's plies are and how they are glued; "" for one
// solid stick.
func (o Options) plies(f *frame.Frame) string {
	d := f.Design.Gunwale
	if d.Plies < 2 {
		return ""
	}
	words := fmt.Sprintf("%d plies of %s", d.Plies, o.plain(float64(d.Width)/float64(d.Plies)))
	switch d.Glued {
	case design.GluedBent:
		return words + ", glued bent round the spreaders"
	case design.GluedOnForm:
		if r := o.bending(f); r != nil {
			return words + fmt.Sprintf(", glued on a form of radius %s at station %.0f mm", o.whole(r.Gunwale.Form), r.Gunwale.At)
		}
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

// setting says in one line of the first sheet what is meant by forms and relaxed
// widths, and how a form for the gunwales is made. It is short, for sheets are
// counted.
func setting(f *frame.Frame, o Options) []string {
	r := o.bending(f)
	if r == nil {
		return nil
	}
	words := fmt.Sprintf("Rib forms are %.0f %% tighter than the free rib: measure your first. Steam %.0f minutes.", 100*f.Design.Bending.Springback, r.Ribs[0].Minutes)
	if r.Boat.Why == nil {
		words += " \"Relax to\": the free rib's width at mid-thickness that takes the load off the cross pieces."
	} else {
		words += " No set of these ribs takes the load off the cross pieces: see the verb bend."
	}
	if f.Design.Gunwale.Plies > 1 {
		words += fmt.Sprintf(" A gunwale form has %.3f of the gunwale's radius.", 1-r.Boat.Back())
	}
	return []string{words}
}

// drawPlies letters under the strip, in the first gap between mortises forward of
// midship, how the gunwale's plies are glued; over everything when it is too long
// for the gap. No scarf may lie so near midship, so nothing else is said there.
func drawPlies(d *layout.Drawing, f *frame.Frame, half float64, o Options) {
	words := lettering.Safe(o.plies(f))
	if words == "" {
		return
	}
	const lean = 12 // mm on either side of a mortise for its lean
	wide := lettering.Width(words, small)
	from, y := 4.0, half+11.5
	g := f.Gunwale.Mortises
	for i := 1; i < len(g); i++ {
		at := math.Max(g[i-1].FromMidship, -lean)
		if g[i].FromMidship > 0 && g[i].FromMidship-at >= wide+2*lean {
			from, y = at+lean, -half-6
			break
		}
		if g[i].FromMidship > 250 {
			break
		}
	}
	d.Write(from, y, small, layout.Left, words)
	d.Keep = append(d.Keep, layout.Span{From: from - 2, To: from + wide + 2})
}
