package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

func (w *writer) ribs() {
	f, d := w.Frame, w.Frame.Design
	w.chapter("Ribs")
	spare := ""
	if n := d.Ribs.Spare; n > 0 {
		spare = " and " + wording.Counted(n, "spare blank")
	}
	w.say("%s, %s wide and %s thick, %d of them%s. All lengths are on the flat blank, from its middle: what the bends add to the length is in them. Both halves are alike.",
		wording.Capital(d.Ribs.Species), w.Fine(float64(d.Ribs.Width)), w.Fine(float64(d.Ribs.Thickness)), len(f.Ribs), spare)
	w.say("The blank is the length between the shoulders, a tenon of %s at each end, and %s at each end to cut off after the test fit.", w.Fine(f.Ribs[0].Tenon), w.Fine(float64(d.Ribs.Trim)))
	w.add(w.ribLengths(), w.ribBends(), w.ribMarks())
	w.widths()
	w.add(trial.PushedIn(w.Bend, w.Loose, w.Letters)...)
	w.add(w.loose(), trial.LooseRibs(w.Bend, w.Letters))
	w.warn("Steam scalds worse than boiling water and pure steam is invisible. Vent the box, never plug it, stand aside when you open it; gauntlets, long sleeves and goggles. Bend one rib and look at it before you cut the others.", "common practice; bend limits here are from memory")
}

func (w *writer) ribLengths() report.Table {
	before := "before pegging"
	if w.Bend.OnForms() {
		before = "before fitting"
	}
	t := report.Titled("Lengths, "+w.Marks()).Names("Rib").Numbers("Station", "Shoulder to shoulder", "Blank", "Width at the heads, in place", "Relax to, "+before, "Depth under the gunwales", "Length may be off", "Bilge marks may be off")
	for i, r := range w.Frame.Ribs {
		relax, slack := "-", marks.BilgeSlack(r)
		if mm := w.Bend.Ribs[i].Relax; mm > 0 {
			relax = w.Rough(mm)
		}
		t.Row(r.Name, w.Cell(r.Station), w.Mark(r.Length), w.Cell(r.Blank), w.Cell(2*r.Section.HalfBreadth), relax, w.Cell(r.Section.Depth), w.Cell(2*float64(w.Frame.Design.Ribs.TenonGap)), w.cellIf(!math.IsInf(slack, 0), slack))
	}
	t.Note = fmt.Sprintf("Relax to: the width between the heads, middle to middle of their thickness, at which the free rib leaves the cross pieces without load, in steps that wood keeps to. Length may be off: so much too long the gaps under both tenons take up; beyond it the boat comes out as the corrections say. Bilge marks may be off: so far out or in along the blank they leave the beam within %s mm (%s).", measure.MM(marks.FreeWidth, 0), measure.Sixteenths(marks.FreeWidth))
	return t
}

// loose draws two ribs beside what they do when they are only pushed in: the one nearest
// midship and the last forward.
func (w *writer) loose() report.Figure {
	ribs := w.Frame.Ribs
	middle := slices.IndexFunc(ribs, func(r frame.Rib) bool { return r.Name == w.Frame.Nearest(0).Name })
	wide := ribs[middle].Section.HalfBreadth
	per := scaleFor(2.4*wide, 1.2*ribs[middle].Section.Depth, report.Wide, 90)
	s := newSketch("pushed in", "Ribs only pushed in", per)
	from := 0.0
	for _, i := range []int{middle, len(ribs) - 1} {
		r, loose := ribs[i], w.Bend.Ribs[i].Pushed
		place := geometry.Shift(from, 0)
		s.path(layout.Cut, r.Section.Half.Path(geometry.Point{}, 0).Map(place))
		for _, h := range []pushed.Head{loose.Hinged, loose.Clamped} {
			s.path(layout.Guide, h.Half.Path(geometry.Point{}, 0).Map(place))
		}
		s.line(layout.Center, from, -10, from, r.Section.Depth)
		s.note(from+r.Section.HalfBreadth, r.Section.Depth, 0, 1.5, layout.Middle, r.Name)
		from += wide + 60
	}
	return report.Figure{Drawing: s.Drawing,
		Caption: fmt.Sprintf("Half of ribs %s and %s, %s: bold as wanted, dashed only pushed in, once with heads loose in their mortises and once with heads tight.", ribs[middle].Name, ribs[len(ribs)-1].Name, ratio(per)),
		About:   "Half sections of two ribs, each with the two even curves that it takes when nobody works its bilges."}
}

// cellIf letters a length, "-" where there is none.
func (w *writer) cellIf(is bool, mm float64) string {
	if !is {
		return "-"
	}
	return w.Cell(mm)
}

func (w *writer) ribBends() report.Table {
	bent, note := "hot", "Hot: the radius that you bend to, and by how many degrees farther the bend then turns than in the boat. It allows for springback and for the neutral set."
	if w.Bend.OnForms() {
		bent, note = "on the form", "The form's radius allows for springback and for the neutral set."
	}
	t := report.Titled("Bends, from the middle of the blank, "+w.Unit()).Names("Rib").Words("From where to where, name, radius at mid-thickness in the boat and "+bent).Numbers("Least radius over thickness", "Steam, min")
	for i, r := range w.Frame.Ribs {
		least := "straight"
		if !math.IsInf(r.Tightest, 1) {
			least = fmt.Sprintf("%.1f", r.Tightest)
		}
		t.Row(r.Name, w.runs(i), least, fmt.Sprintf("%.0f", w.Bend.Ribs[i].Minutes))
	}
	t.Note = note
	return t
}

// runs describes the half rib from the middle outward.
func (w *writer) runs(i int) string {
	r := w.Frame.Ribs[i]
	from := 0.0
	var parts []string
	for j, b := range r.Section.Half {
		to := r.Length / 2
		if j < len(r.BendMarks) {
			to = r.BendMarks[j]
		}
		name, shape := "", "straight"
		for _, a := range w.Bend.Ribs[i].Arcs {
			if a.Bend == j {
				name = a.Name + ", "
				shape = "radius " + w.Cell(b.Radius)
				shape += w.bentTo(a)
			}
		}
		parts = append(parts, fmt.Sprintf("%s to %s %s%s", w.Cell(from), w.Cell(to), name, shape))
		from = to
	}
	return strings.Join(parts, "; ")
}

// bentTo says how a bend is made hot, "" when it comes out straight.
func (w *writer) bentTo(a bend.Arc) string {
	switch {
	case math.IsInf(a.Form, 1):
		return ""
	case w.Bend.OnForms():
		return ", form " + w.Cell(a.Form)
	}
	return fmt.Sprintf(", hot %s (%+.0f deg)", w.Whole(a.Form), math.Round(a.Over*180/math.Pi)+0)
}

func (w *writer) ribMarks() report.Table {
	t := report.Titled("Middles of the stringers, from the middle of the blank, " + w.Marks()).Names("Rib")
	for i := range w.Frame.Stringers {
		t = t.Numbers(fmt.Sprintf("S%d", i+1))
	}
	for _, r := range w.Frame.Ribs {
		row := []string{r.Name}
		for _, m := range r.StringerMarks {
			row = append(row, w.Mark(m))
		}
		t.Row(row...)
	}
	return t
}

// corrections tells what to do when the boat as built is not as drawn.
func (w *writer) corrections() {
	w.datum()
	w.section("Corrections by eye")
	step, name := report.Either(w.Letters.Units, 10, 12.7), report.Either(w.Letters.Units, "10 mm", "1/2 in")
	w.say("Where the gunwales stand wider or deeper than drawn, as they always do somewhere, make the rib longer before you cut its shoulders: by so much for each %s of beam at its heads, and by so much for each %s of depth. The two add up; narrower or shallower shortens alike.", name, name)
	t := report.Titled("").Names("Rib").Numbers("Beam drawn, "+w.Unit(), "For "+name+" more beam", "Depth drawn, "+w.Unit(), "For "+name+" more depth", "Length drawn, "+w.Unit())
	for i, r := range w.Frame.Ribs {
		c := w.Corrections[i]
		t.Row(r.Name, w.Cell(2*r.Section.HalfBreadth), w.longer(step*c.Beam), w.Cell(r.Section.Depth), w.longer(step*c.Depth), w.Cell(r.Length))
	}
	t.Note = "Worked out with the turns and the bilge radius as drawn: bottom and topside take up the change. Good for a few centimetres."
	w.add(t)
}

func (w *writer) longer(mm float64) string { return signed(w.Cell(mm)) }

// signed puts a plus before a number that is more than nothing.
func signed(s string) string {
	if s == "0" || s == "0.0" || s[0] == '-' {
		return s
	}
	return "+" + s
}
