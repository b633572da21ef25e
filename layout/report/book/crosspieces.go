package book

import (
	"fmt"
	"math"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/design"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
	"ribwright/layout/report/trial"
)

func (w *writer) crossPieces() {
	f := w.Frame
	w.chapter("Spreaders and cross pieces")
	t := report.Titled("Spreaders while building, "+w.Marks()).Words("Place", "Holds").Numbers("Along the gunwale", "Middle to middle of the undersides", "Between the inner lower edges")
	for _, s := range w.Bend.Spread.Spreaders {
		t.Row(w.Station(s.At), s.Holds.String(), w.Mark(s.Along), w.Mark(s.Beam), w.Mark(s.Inner))
	}
	w.add(append([]report.Block{t}, trial.Spreaders(w.Bend, w.Letters)...)...)
	if len(f.Thwarts) == 0 {
		w.say("The design has no cross pieces that stay in the boat.")
		return
	}
	c := report.Titled("Cross pieces, under the gunwales, "+w.Marks()).Names("Stick").Words("Name", "Middle at").Numbers("Length", "Between the gunwales", "Thick", "End cut, degrees off square", "Lower face cut back")
	for i, p := range f.Thwarts {
		c.Row(frame.CrossMark(i), p.Name, w.Station(p.At), w.Mark(p.Length), w.Mark(p.Between), w.Gauge(p.Thickness), report.Angle(p.EndCut), w.Gauge(p.Under))
	}
	c.Note = "Length is the greatest, across the boat. Cut the ends to the pattern; they stay inside the gunwales' outer faces, clear of the skin."
	w.add(c)
	for i := range f.Thwarts {
		w.add(w.crossPiece(i))
	}
}

func (w *writer) crossPiece(i int) report.Figure {
	p := w.Frame.Thwarts[i]
	b := p.Outline.Bounds()
	per := scaleFor(b.W(), b.H(), 150, 30)
	s := newSketch(fmt.Sprintf("cross-%d", i+1), p.Name, per)
	s.path(layout.Cut, p.Outline)
	for _, h := range p.Holes {
		s.path(layout.Cut, h)
	}
	s.line(layout.Center, 0, b.Min.Y-1.5*per, 0, b.Max.Y+1.5*per)
	s.across(b.Min.X, b.Max.X, b.Min.Y/per-6, w.Fine(p.Length))
	s.up(b.Min.Y, b.Max.Y, b.Min.X/per-4, w.Fine(b.H()))
	return report.Figure{Drawing: s.settled(), Caption: fmt.Sprintf("%s, %s, from above, %s; forward is up. Holes %s, for bolts; see Joints.", frame.CrossMark(i), p.Name, ratio(per), w.Drill(p.Hole)),
		About: fmt.Sprintf("Outline of the cross piece %s with its length and width.", p.Name)}
}

func (w *writer) ends() {
	f := w.Frame
	w.chapter("Stems and breasthooks")
	w.add(w.stem(f.Bow))
	if f.Design.EndsAlike() {
		w.say("The stern is like the bow: make two of each.")
		w.add(w.hook(f.BowHook))
		return
	}
	w.add(w.stem(f.Stern), w.hook(f.BowHook), w.hook(f.SternHook))
}

// stemsMade is how the stems are made, up to their outline.
func (w *writer) stemsMade() []string {
	d := w.Frame.Design
	switch d.MadeStems() {
	case design.StemsPlywood:
		return []string{
			"Saw the layers of each stem's blank from plywood, one of each of these thicknesses: " + wording.List(design.Sheets(w.Frame.Bow.Thickness), report.Either(w.Letters.Units, w.Letters.Units.Whole, w.Fine)) + "; the grain of their faces along the pattern's arrow.",
			"Glue the layers of a blank on each other, flat under weights. Leave them overnight.",
			"Lay the pattern on the glued blank, its arrow along the grain. Saw each stem to its pattern, through all layers at once, or have the machine cut it. Fair the edges."}
	case design.StemsLaminated:
		form := math.Inf(1)
		for _, s := range w.Bend.Stems {
			form = math.Min(form, s.Form)
		}
		return []string{
			fmt.Sprintf("Saw a form whose edge has a radius of %s at the forefoot, which allows for springback, and straight runs beyond it. Wax it.", w.Letters.Units.Whole(form)),
			fmt.Sprintf("Glue the %d layers of each stem round it, from the middle outward. Leave them on the form overnight.", d.Bending.StemPlies),
			"Plane the piece to its siding, and saw it to the pattern."}
	}
	return []string{"Lay each stem's pattern on its blank, the arrow along the grain. Saw the stems from their blanks, and fair the edges."}
}

func (w *writer) stem(st frame.Stem) report.Figure {
	b := st.Outline.Bounds()
	per := scaleFor(b.W(), b.H(), 120, 95)
	s := newSketch(st.End+"-stem", wording.Capital(st.End)+" stem", per)
	s.path(layout.Cut, st.Outline)
	for k, l := range st.Landings {
		s.line(layout.Mark, l.X-2*per, l.Y, l.X+2*per, l.Y)
		s.line(layout.Mark, l.X, l.Y-2*per, l.X, l.Y+2*per)
		s.note(l.X, l.Y, -2.6, 1.2, layout.Right, fmt.Sprintf("S%d", k+1))
	}
	s.line(layout.Guide, b.Min.X-4*per, st.Waterline, b.Max.X+4*per, st.Waterline)
	s.across(b.Min.X, b.Max.X, b.Min.Y/per-7, w.Fine(b.W()))
	s.up(b.Min.Y, b.Max.Y, b.Max.X/per+9, w.Fine(b.H()))
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("%s stem, %s, drawn as the bow: %s thick, %s molded. The toe, where the keel turns up into the outer edge, lies %s and the after end of the foot %s from midship. Crosses are the stringers' ends, dashed the designed waterline; gunwales rest on the shelf at the top.", wording.Capital(st.End), ratio(per), w.Fine(st.Thickness), w.Fine(st.Moulded), w.Fine(st.ToeX), w.Fine(st.Outline[0].Start().X)),
		About:   fmt.Sprintf("Outline of the %s stem with its length, its height, the waterline and where the stringers end.", st.End)}
}

func (w *writer) hook(h frame.Breasthook) report.Figure {
	b := h.Outline.Bounds()
	per := scaleFor(b.W(), b.H(), 90, 60)
	s := newSketch(h.End+"-hook", wording.Capital(h.End)+" breasthook", per)
	s.path(layout.Cut, h.Outline)
	s.line(layout.Center, b.Min.X-4*per, 0, b.Max.X+4*per, 0)
	if hole := h.Hole(); hole != nil {
		s.path(layout.Cut, hole)
	}
	s.across(b.Min.X, b.Max.X, b.Min.Y/per-7, w.Fine(b.W()))
	s.up(b.Min.Y, b.Max.Y, b.Min.X/per-6, w.Fine(b.H()))
	slope := math.Atan(h.Slope)
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("%s breasthook, %s, from above, flat: %s thick, sides lean %s degrees outward at the top, rising %s degrees to the end. Flush with the gunwales' tops. The gunwales lean %s degrees off upright; the plate is not level, so that its sides lean by another angle.", wording.Capital(h.End), ratio(per), w.Fine(h.Thickness), report.Angle(h.Bevel), report.Angle(slope), report.Angle(w.Frame.Gunwale.Tilt)),
		About:   fmt.Sprintf("Outline of the %s breasthook with its length and width.", h.End)}
}
