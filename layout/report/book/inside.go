package book

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/inside"
	"ribwright/geometry/curve"
	"ribwright/geometry/wording"
	"ribwright/layout"
	"ribwright/layout/report"
)

// inside is what people sit on, lean on and push against, and the flotation.
func (w *writer) inside() {
	o, bags := w.Bend.Inside, w.Afloat.Flotation.Bags
	if len(o.Floors)+len(o.Braces)+len(o.Backs)+len(bags) == 0 {
		return
	}
	w.chapter("Inside")
	w.add(w.insidePlan())
	w.floors()
	w.braces()
	w.backs()
	w.flotation()
}

// insidePlan is the boat from above with all that is inside.
func (w *writer) insidePlan() report.Figure {
	f, o := w.Frame, w.Bend.Inside
	per := scaleFor(f.Hull.Length, f.Hull.Beam, 164, 60)
	s := newSketch("inside", "Inside, from above", per)
	g := &f.Gunwale
	aft, fore := g.Line.Ends()
	for _, side := range []float64{1, -1} {
		s.path(layout.Cut, curve.Polyline(along(aft, fore, 80, func(x float64) geometry.Point {
			return geometry.Pt(x, side*g.At(x, 0, 0).Y)
		})...))
	}
	box := func(p layout.Pen, x0, x1, y0, y1 float64) {
		s.path(p, curve.Polyline(geometry.Pt(x0, y0), geometry.Pt(x1, y0), geometry.Pt(x1, y1), geometry.Pt(x0, y1), geometry.Pt(x0, y0)))
	}
	for _, fl := range o.Floors {
		for _, y := range fl.Across {
			box(layout.Cut, fl.Aft, fl.Fore, y-fl.Wide/2, y+fl.Wide/2)
		}
	}
	for _, b := range o.Braces {
		box(layout.Cut, b.At, b.At+b.Thick, -b.Bar/2, b.Bar/2)
		for _, y := range []float64{-b.Across, b.Across} {
			box(layout.Mark, b.At-b.Rail/2, b.At+b.Rail/2, y-b.RailWide/2, y+b.RailWide/2)
		}
	}
	for _, b := range o.Backs {
		box(layout.Cut, b.At-b.Thick, b.At, -b.Across/2, b.Across/2)
	}
	for _, b := range w.Afloat.Flotation.Bags {
		s.path(layout.Guide, around(b))
		w.lettered(s, b)
	}
	s.line(layout.Center, -f.Hull.Length/2, 0, f.Hull.Length/2, 0)
	s.line(layout.Center, 0, -f.Hull.Beam/2-4*per, 0, f.Hull.Beam/2+4*per)
	for _, fl := range o.Floors {
		s.across(fl.Aft, fl.Fore, -f.Hull.Beam/2/per-7, w.Length(fl.Long))
	}
	return report.Figure{Drawing: s.Drawing, Caption: fmt.Sprintf("Inside from above, %s, bow to the right, upright line at midship. Solid: floor slats, backrests, footbraces; dashed: flotation, numbered as in its tables.", ratio(per)),
		About: "The boat from above with floor slats, backrests, footbraces and flotation in their places."}
}

func (w *writer) floors() {
	if len(w.Bend.Inside.Floors) == 0 {
		return
	}
	w.section("Floor slats")
	t := report.Titled("Floor slats, of "+w.Bend.Inside.Wood+", "+w.Marks()).Names("Floor").Numbers("Slats", "Width", "Thickness", "Length", "Aft end at", "Fore end at").Words("Middles from the middle line, each side")
	for i, fl := range w.Bend.Inside.Floors {
		var at []string
		for _, y := range fl.Across {
			if y >= -1e-9 {
				at = append(at, w.Fine(math.Abs(y)))
			}
		}
		t.Row(fmt.Sprint(i+1), fmt.Sprint(fl.Count), w.Mark(fl.Wide), w.Mark(fl.Thick), w.Mark(fl.Long), w.Station(fl.Aft), w.Station(fl.Fore), strings.Join(at, ", "))
	}
	w.add(t)
	fl := w.Bend.Inside.Floors[0]
	w.add(report.List{First: 1, Items: []string{
		"Plane the slats, round their upper edges and oil them.",
		fmt.Sprintf("Lay them over the ribs at the places of the table and lash each to its end ribs and to every second rib between, %d lashings a slat in the first floor. Nothing is screwed into a rib.", fl.Lashings()),
		"Tie the knots between the slats, clear of knees and heels. A slat can be cut free and taken out to dry and to clean."}})
}

func (w *writer) braces() {
	if len(w.Bend.Inside.Braces) == 0 {
		return
	}
	w.section("Footbrace")
	t := report.Titled("Footbraces, "+w.Marks()).Words("For").Numbers("Leg", "Board's after face at", "Board", "Rails, each", "Rails' middles from the middle line")
	for _, b := range w.Bend.Inside.Braces {
		t.Row(wording.OneLine(b.Who), w.Whole(b.Leg), w.Station(b.At), w.Mark(b.Bar), w.Mark(b.Rail), w.Mark(b.Across))
	}
	t.Note = "Leg is from the seat's back to the sole, worked from the stature, good to 30 mm: measure the person. The board stands at 0.95 of it from the backrest, knees a little bent."
	b := w.Bend.Inside.Braces[0]
	w.add(t, report.List{First: 1, Items: []string{
		fmt.Sprintf("Plane two rails %s square. Bore %d holes of %s through each, level and across the boat, %s apart, the middle one at the board's place: three steps forward and three aft for other legs and shoes.", w.Fine(b.RailWide), inside.Holes, w.Length(8), w.Length(inside.Step)),
		"Lash both rails to the ribs under them, as the slats are.",
		fmt.Sprintf("Saw the board %s tall and %s thick. Saw one square of %s into two cleats, corner to corner, and glue and screw one behind each end of the board as a knee. Bore each knee's foot for a peg of %s, which goes through the rail's hole.", w.Fine(b.Tall), w.Fine(b.Thick), w.Length(70), w.Length(8)),
		"Sit in the boat and push: the pegs come out by hand, and no foot goes under the board."}})
}

func (w *writer) backs() {
	if len(w.Bend.Inside.Backs) == 0 {
		return
	}
	w.section("Backrest")
	w.say("Two bars on webbing, hung from the ribs' heads, for the small of the back.")
	t := report.Titled("Backrests, of two bars, "+w.Marks()).Words("For").Numbers("Fore face at", "Lower edge over the floor", "Bars across", "Each bar", "Thick", "Both bars", "Between the gunwales there")
	for _, b := range w.Bend.Inside.Backs {
		t.Row(wording.OneLine(b.Who), w.Station(b.At), w.Mark(b.Low), w.Mark(b.Across), w.Mark(b.Bar), w.Mark(b.Thick), w.Mark(b.Tall), w.Mark(b.Gunwale))
	}
	w.add(t, report.List{First: 1, Items: []string{
		"Before the skin goes on, tie a loop of webbing round the rib's head nearest to the place on each side, close under the gunwale.",
		"Round all edges of both bars. Bore two slots for the webbing near each end of each bar, in line.",
		"Lead webbing through the slots of both bars, the gap of the table between them, and to the loops at both sides, with a buckle at each.",
		"Tie the lower bar to the rib or slat below, so that the backrest cannot ride up.",
		"Set its height and its lean by the buckles with the person in the boat: it bears on the small of the back."}})
}
