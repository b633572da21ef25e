package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/solid"
	"ribwright/geometry/curve"
	"ribwright/geometry/trial/flaw"
	"ribwright/layout"
	"ribwright/layout/report"
	"ribwright/layout/sight"
)

// eye teaches how the frame is judged by eye: where to stand, what is fair, and what each
// fault looks like.
func (w *writer) eye() {
	w.chapter("Judging by eye")
	w.say("A tape finds what you measure; the eye finds what you did not think of. Look along the frame when all ribs are in under their battens and before a head is pegged, and once more before the cloth goes on. Stand so that the light comes from behind the boat, close one eye, half close the other, and look along a line so that it runs away from you: a length of %s shrinks to a hand's breadth and every bump in it stands up. Look, walk to the other end, look again; then the same on the other side.", w.Length(w.Frame.Hull.Length))
	w.add(w.stands())
	w.add(report.List{First: 1, Items: []string{
		"Along each bilge, from low down past the bow and past the stern.",
		"From the end, into the nested row of ribs.",
		"Along the keel, from below it.",
		"Down on the gunwales, with a string stretched from stem to stem over the middle.",
		"From the end, over two straight sticks laid across the gunwales.",
		"From abeam, a boat's length off: gunwale, bilge and keel each in one sweep, without a flat and without a hump. What catches the eye there is looked at along its line from the places above.",
	}})
	w.say("On the left of each picture below is this boat fair, on the right with one fault alone; both are drawn from its lines, at one scale and from the place with the number. In the strips under the pictures the dashed line is fair. Figures were worked out for this boat; limits by common practice have no source. The frame stands as it does while ribs are bent in: a batten along each bilge, no other stringers, no cross pieces.")
	for i, l := range w.Eye.Looks {
		w.section(fmt.Sprintf("%d. %s", i+1, w.faultName(l.Fault)))
		w.add(w.sideBySide(l), w.faultTable(l))
	}
}

func (w *writer) faultName(f flaw.Fault) string {
	switch rib := w.Frame.Ribs[f.Rib].Name; f.Kind {
	case flaw.Proud:
		return fmt.Sprintf("A rib proud: %s by %s", rib, w.Length(f.Size))
	case flaw.OneSide:
		return fmt.Sprintf("One side full: %s by %s, the other side as much flat", rib, w.Length(f.Size))
	case flaw.Wavy:
		return fmt.Sprintf("A wavy keel: up and down by %s", w.Length(f.Size))
	case flaw.Aside:
		return fmt.Sprintf("Gunwales unequal: %s to port amidships", w.Length(f.Size))
	}
	return fmt.Sprintf("A twist: %s degrees from end to end", plainAngle(f.Size))
}

// stands draws the frame from abeam and from above, with the places for the eye.
func (w *writer) stands() report.Figure {
	looks := w.Eye.Looks
	tip, far := w.Frame.Hull.Stern.Tip(), 0.0
	for _, l := range looks {
		far = math.Max(far, l.Eye.At.X)
	}
	per := scaleFor(tip+far, 0, report.Wide-8, 1)
	d := layout.Drawing{Name: "stands", Title: "Where to stand"}
	abeam := sight.NewView(solid.Eye{At: geometry.Point3{Y: -1}, Parallel: true}, 1/per)
	above := sight.NewView(solid.Eye{At: geometry.Point3{Z: 1}, Parallel: true}, 1/per)
	seen(&d, abeam, w.Eye.Fair, geometry.Point{}, geometry.EmptyBox(), noRibs)
	down := geometry.Pt(0, -w.Frame.Hull.Beam/per/2-9)
	seen(&d, above, w.Eye.Fair, down, geometry.EmptyBox(), noRibs)
	for i, l := range looks {
		name := fmt.Sprint(i + 1)
		stand(&d, abeam, l.Eye, geometry.Point{}, name)
		if l.Eye.At.Y != 0 {
			stand(&d, above, l.Eye, down, name)
		}
	}
	words := &sketch{d, 1}
	return report.Figure{Drawing: words.settled(), Caption: fmt.Sprintf("Where the eye goes, from abeam and from above, %s. Dashed: the way it looks. All places are mirrored at the stern, and the first on the other side.", ratio(per)),
		About: "Side view and plan of the bare frame with numbered places for the eye past the bow."}
}

// stand marks a place for the eye.
func stand(d *layout.Drawing, v sight.View, e solid.Eye, at geometry.Point, name string) {
	const round = 1.4
	p, _ := v.Place(e.At)
	q, _ := v.Place(e.To)
	p, q = p.Add(at), q.Add(at)
	d.Line(layout.Mark, curve.Circle(p, round))
	from := p.Add(q.Sub(p).Unit().Scale(round))
	d.Line(layout.Guide, curve.Polyline(from, p.Lerp(q, 0.75)))
	d.Write(p.X+2.2, p.Y-small/2, small, layout.Left, name)
}

// seen draws a boat from an eye with the pens given.
func seen(d *layout.Drawing, v sight.View, b *solid.Boat, at geometry.Point, window geometry.Box, pen func(solid.Line) (layout.Pen, bool)) {
	sight.Picture{View: v, Window: window, Fold: layout.Tick, Pen: pen}.Draw(d, b, at)
}

// noRibs leaves the ribs out, which a small picture has no room for.
func noRibs(l solid.Line) (layout.Pen, bool) { return layout.Tick, l.Part != solid.Ribs }

// bold draws what is to be looked at in bold, all else thin.
func (w *writer) bold(f flaw.Fault) func(solid.Line) (layout.Pen, bool) {
	return func(l solid.Line) (layout.Pen, bool) {
		if flaw.Looked(f, w.Eye.Sighted, l) {
			return layout.Cut, true
		}
		return layout.Tick, true
	}
}

// Panels are half as wide as a figure.
const (
	panelGap  = 4.0
	panelWide = (report.Wide - panelGap) / 2
)

// panel is how a look is drawn: mm of the boat for one of paper where the eye looks, the
// height of its window, and where in it the place looked at lies, mm.
func (w *writer) panel(f flaw.Fault) (per, high float64, middle geometry.Point) {
	switch f.Kind {
	case flaw.OneSide:
		return scaleFor(2*w.Frame.Ribs[f.Rib].Section.HalfBreadth+60, 0, panelWide, 1), 36, geometry.Pt(panelWide/2, 16)
	case flaw.Proud:
		return 6, 34, geometry.Pt(panelWide/2, 17)
	case flaw.Wavy:
		return 6, 28, geometry.Pt(panelWide/2, 14)
	case flaw.Aside:
		return scaleFor(w.Frame.Hull.Beam+2*w.Frame.Gunwale.Width+60, 0, panelWide, 1), 34, geometry.Pt(panelWide/2, 24)
	}
	return scaleFor(w.Eye.Sticks+20, 0, panelWide, 1), 36, geometry.Pt(panelWide/2, 27)
}

// sideBySide draws the fair boat and the one with the fault, and the detail under them.
func (w *writer) sideBySide(l flaw.Look) report.Figure {
	per, high, middle := w.panel(l.Fault)
	d := layout.Drawing{Name: fmt.Sprintf("eye %d", l.Fault.Kind+1), Title: w.faultName(l.Fault)}
	v := sight.NewView(l.Eye, 1/per)
	for i, b := range []*solid.Boat{l.Fair, l.Faulty} {
		from := geometry.Pt(float64(i)*(panelWide+panelGap), 0)
		d.Line(layout.Tick, curve.Rectangle(geometry.Around(from, from.Add(geometry.Pt(panelWide, high)))))
		window := geometry.Around(middle.Scale(-1), geometry.Pt(panelWide, high).Sub(middle))
		seen(&d, v, b, from.Add(middle), window, w.bold(l.Fault))
		d.Write(from.X+1.5, high+1.5, small, layout.Left, []string{"fair", "with the fault"}[i])
	}
	scale := ratio(per)
	if !l.Eye.Parallel {
		scale += " where the eye looks"
	}
	caption := scale + "."
	if more := w.detail(&d, l); more != "" {
		caption += " " + more
	}
	return report.Figure{Drawing: d, Caption: caption, About: "The frame from one place, fair on the left, with the fault on the right. " + strings.ReplaceAll(w.faultName(l.Fault), ":", ",") + "."}
}

// detail draws a part laid flat under the pictures, and says how.
func (w *writer) detail(d *layout.Drawing, l flaw.Look) string {
	if len(l.Detail.Faulty) == 0 {
		return ""
	}
	b := geometry.EmptyBox()
	for _, lines := range [][][]geometry.Point{l.Detail.Fair, l.Detail.Faulty} {
		for _, line := range lines {
			b = b.Union(geometry.Around(line...))
		}
	}
	stretch, words := 10.0, "the line half way between the gunwales"
	switch l.Fault.Kind {
	case flaw.Proud:
		stretch, words = 5, fmt.Sprintf("stringer %d", w.Eye.Sighted)
	case flaw.OneSide:
		stretch, words = 5, "both halves of the rib laid straight, the upper line port"
	case flaw.Wavy:
		words = "the middle of the keel"
	}
	per := scaleFor(b.W(), b.H()*stretch, report.Wide-24, 16)
	left, low := (report.Wide-b.W()/per)/2, -7-b.H()*stretch/per
	at := func(p geometry.Point) geometry.Point {
		return geometry.Pt(left+(p.X-b.Min.X)/per, low+(p.Y-b.Min.Y)*stretch/per)
	}
	drawDetail(d, layout.Guide, l.Detail.Fair, at)
	drawDetail(d, layout.Cut, l.Detail.Faulty, at)
	last := math.Inf(-1)
	for _, m := range l.Detail.Marks {
		p := at(m.Point)
		d.Straight(layout.Tick, p.X, low-2, p.X, low-4)
		if p.X-last > 8 {
			d.Write(p.X, low-7, small, layout.Middle, m.Name)
			last = p.X
		}
	}
	return fmt.Sprintf("Below, %s, %s along, across %.0f times as large as along.", words, ratio(per), stretch)
}

func drawDetail(d *layout.Drawing, pen layout.Pen, lines [][]geometry.Point, at func(geometry.Point) geometry.Point) {
	for _, line := range lines {
		pts := make([]geometry.Point, len(line))
		for i, p := range line {
			pts[i] = at(p)
		}
		d.Line(pen, curve.Polyline(pts...))
	}
}
