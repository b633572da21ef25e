package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/pushed"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

func (w *writer) ribs() {
	f, d := w.Frame, w.Frame.Design
	w.chapter(RibChapter)
	spare := ""
	if n := d.Ribs.Spare; n > 0 {
		spare = " and " + wording.Counted(n, "spare blank")
	}
	w.say("%s, %s wide and %s thick, %d of them%s. All lengths are on the flat blank, from its middle: what the bends add to the length is in them. Both halves are alike. Ribs are counted from midship outward, A aft and F forward; two that are alike share a row.",
		wording.Capital(d.Ribs.Species), w.Fine(float64(d.Ribs.Width)), w.Fine(float64(d.Ribs.Thickness)), len(f.Ribs), spare)
	w.say("The blank is the length between the shoulders, a tenon of %s at each end, and %s at each end to cut off after the test fit. Shoulder is only a line, where the gunwale's underside stops: nothing is sawn there, and the whole end of the rib is the tenon.", w.Fine(f.Ribs[0].Tenon), w.Fine(float64(d.Ribs.Trim)))
	w.add(w.lengths(), w.ribBends(), w.ribMarks())
	w.widths()
	w.add(trial.PushedIn(w.Bend, w.Loose, w.Letters)...)
	w.add(w.loose(), trial.LooseRibs(w.Bend, w.Letters))
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
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("Half of ribs %s and %s, %s: bold as wanted, dashed only pushed in, once with heads loose in their mortises and once with heads tight.", ribs[middle].Name, ribs[len(ribs)-1].Name, ratio(per)),
		About:   "Half sections of two ribs, each with the two even curves that it takes when nobody works its bilges."}
}

func (w *writer) ribBends() report.Table {
	bent, note := "hot", "Hot: the radius that you bend to, and by how many degrees farther the bend then turns than in the boat. It allows for springback and for the neutral set."
	if w.Bend.OnForms() {
		bent, note = "on the form", "The form's radius allows for springback and for the neutral set."
	}
	note += w.onPaper()
	t := report.Titled("Bends, from the middle of the blank, "+w.Unit()).Names("Rib").Words("From where to where, name, radius in the boat and degrees that it turns there, radius "+bent).Numbers("Least radius over thickness, "+bent, "Steam, min")
	for i, r := range w.Frame.Ribs {
		least := "straight"
		tight := math.Inf(1)
		for _, a := range w.Bend.Ribs[i].Arcs {
			tight = math.Min(tight, a.OnForm)
		}
		if !math.IsInf(tight, 1) {
			least = fmt.Sprintf("%.1f", tight)
		}
		t.Row(r.Name, w.runs(i), least, fmt.Sprintf("%.0f", w.Bend.Ribs[i].Minutes))
	}
	return t.Outward(w.Frame.Stations()).Noted(note)
}

// onPaper says what radii are measured to, and how a rib is drawn by them.
func (w *writer) onPaper() string {
	half, more := w.Fine(w.Frame.Ribs[0].Thickness/2), 0.0
	for _, r := range w.Frame.Ribs {
		more = math.Max(more, r.Correction/2)
	}
	longer := ""
	if more >= 0.05 {
		longer = fmt.Sprintf("; on the blank the bends of a half take up to %s more, for the outer face of a tight bend hardly stretches", w.Fine(math.Ceil(10*more)/10))
	}
	return fmt.Sprintf(" Radii, widths and depths run to the middle of the thickness, %s from either face: the inner face of a bend has a radius %s less, the outer one as much more. To check a rib on paper, begin on the middle line, level, and draw bend after bend, each going on where the last one points. On paper a bend is as long as its radius times its degrees over 57.3%s. The end comes to half the width in place and to the depth under the gunwales, within %s.",
		half, half, longer, report.Either(w.Letters.Units, "2 mm", "1/8 in"))
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
				shape = fmt.Sprintf("radius %s and %s deg", w.Whole(b.Radius), report.Angle(b.Sweep))
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
		return ", form " + w.Whole(a.Form)
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
	return t.Outward(w.Frame.Stations())
}
