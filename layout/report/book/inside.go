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
	per := scaleFor(f.Hull.Length, f.Hull.Beam, 144, 60)
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
			box(layout.Mark, b.RailAft, b.RailAft+b.Rail, y-b.RailWide/2, y+b.RailWide/2)
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
		s.across(fl.Aft, fl.Fore, -f.Hull.Beam/2/per-11, w.Length(fl.Long))
	}
	var solid []string
	for _, of := range []struct {
		n    int
		name string
	}{{len(o.Floors), "floor slats"}, {len(o.Backs), "backrests"}, {len(o.Braces), "footbraces"}} {
		if of.n > 0 {
			solid = append(solid, of.name)
		}
	}
	what := ""
	if len(solid) > 0 {
		what = " Solid: " + wording.And(solid) + "."
	}
	if len(w.Afloat.Flotation.Bags) > 0 {
		what += " Dashed: flotation, numbered as in its tables."
	}
	return report.Figure{Drawing: s.settled(), Caption: fmt.Sprintf("Inside from above, %s, bow to the right, upright line at midship.%s", ratio(per), what),
		About: "The boat from above with what is inside it in its place."}
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
	w.add(w.slatFigure(fl), report.List{First: 1, Items: []string{
		"Plane the slats, round their upper edges and oil them.",
		fmt.Sprintf("Lay them over the ribs at the places of the table and lash each to its end ribs and to every second rib between, %d lashings a slat in the first floor, each of %s of cord. Nothing is screwed into a rib.", fl.Lashings(), w.Length(1000*inside.Lashing)),
		w.underRibs(),
		"Tie the knots between the slats, clear of knees and heels. A slat can be cut free and taken out to dry and to clean."}})
}

// underRibs says how cord comes round a rib that has its skin on.
func (w *writer) underRibs() string {
	deep := w.Fine(float64(w.Frame.Design.Stringers.Depth))
	return "Cord goes behind a rib beside a stringer or the keel alone, where the cloth stands nearly " + deep + " off it; midway between two it stands much less. Push it through with a hook of bent wire, blunt at its tip. A slat on a batten or close beside one: two turns over the slat and round the rib beside that batten. A slat between two: one loop, as drawn, that cannot slip to either side. Where a slat or a rail lies on a lashing, hollow its underside by a shaving until it does not rock."
}

// legsUnder warns of cross pieces over somebody's legs, who must come out from under them.
func (w *writer) legsUnder() {
	const lap = 200.0 // mm before the back: what lies under a bar farther aft is no leg
	f := w.Frame
	for _, b := range w.Bend.Inside.Braces {
		for _, t := range f.Thwarts {
			if t.At < b.At-b.Leg+lap || t.At > b.At {
				continue
			}
			under := f.Gunwale.At(t.At, -f.Gunwale.Width/2, 0).Z - t.Thickness - f.Hull.FloorZ(t.At)
			w.warn(fmt.Sprintf("%s stands over the legs of %s, its underside some %s over the floor. Both legs must come out from under it at once when the boat goes over: try it on land with a life jacket on, then in shallow water, swamped, with a helper beside you. Where they do not, paddle without it: the frame keeps its shape as Frame balance tells.", t.Name, wording.OneLine(b.Who), w.Length(10*math.Floor(under/10))), "common practice, no source")
		}
	}
}

func (w *writer) braces() {
	if len(w.Bend.Inside.Braces) == 0 {
		return
	}
	w.section("Footbrace")
	t := report.Titled("Footbraces, "+w.Marks()).Words("For").Numbers("Leg", "Board's after face at", "Board", "Rails, each", "Rails' after ends at", "Rails' middles from the middle line", "Knees' middles from it")
	for _, b := range w.Bend.Inside.Braces {
		t.Row(wording.OneLine(b.Who), w.Whole(b.Leg), w.Station(b.At), w.Mark(b.Bar), w.Mark(b.Rail), w.Station(b.RailAft), w.Mark(b.Across), w.Mark(b.KneeAcross()))
	}
	t.Note = "Leg is from the seat's back to the sole, worked from the stature, good to 30 mm: measure the person. The board stands at 0.95 of it from the backrest, knees a little bent."
	w.legsUnder()
	b := w.Bend.Inside.Braces[0]
	w.add(t, w.braceFigure(b), report.List{First: 1, Items: []string{
		fmt.Sprintf("Plane two rails %s wide and %s tall. Plane their undersides to the ribs: %s degrees, %s off the outboard edge, running out to nothing inboard, so that they stand plumb. Bore %d holes of %s through each, level and across the boat, %s over the inboard edge of its underside, %s apart, the middle one %s forward of the rail's after end: three steps forward and three aft for other legs and shoes.", w.Fine(b.RailWide), w.Fine(b.RailTall), report.Angle(b.Lean), w.Fine(b.Off()), inside.Holes, w.Length(inside.Peg), w.Fine(b.HoleUp), w.Length(inside.Step), w.Length(b.HoleAt-b.RailAft)),
		"Lash both rails to the ribs under them, as the slats are.",
		fmt.Sprintf("Saw the board %s tall and %s thick; it stands on the rails. Saw one square of %s, %s thick, corner to corner into two knees, and trim their legs to %s, the grain along the foot.", w.Fine(b.Tall), w.Fine(b.Thick), w.Length(inside.KneeSquare), w.Fine(b.RailWide), w.Length(inside.Knee)),
		fmt.Sprintf("Glue and screw a knee on the board's forward face inboard of each rail, a card's thickness off it, its foot %s over the inboard edge of the rail's underside, so that it clears the slats.", w.Fine(b.KneeFoot)),
		fmt.Sprintf("When that is hard, stand the board in its place and bore each knee through the rail's middle hole, %s forward of the board and %s over the knee's foot. A peg of %s goes through both.", w.Length(inside.KneeHole), w.Length(inside.KneeUp), w.Length(inside.Peg)),
		"Sit in the boat and push: the pegs come out by hand, and no foot goes under the board."}})
	w.inTheWay()
}

// loop says how a loop of webbing is closed.
func (w *writer) loop() string {
	return fmt.Sprintf("A loop is %s of webbing, once round the wood with an eye left on the inner side, closed by a water knot (an overhand knot, its other end led back along it) with tails of %s, drawn tight by your weight.", w.Length(1000*inside.LoopLong), w.Length(75))
}

func (w *writer) backs() {
	if len(w.Bend.Inside.Backs) == 0 {
		return
	}
	w.section("Backrest")
	w.say("Two bars on webbing, hung from the ribs' heads, for the small of the back.")
	t := report.Titled("Backrests, of two bars, "+w.Marks()).Words("For").Numbers("Fore face at", "Lower edge over the floor", "Bars across", "Each bar", "Thick", "Both bars", "Between the gunwales there").Words("Loops on rib")
	for _, b := range w.Bend.Inside.Backs {
		t.Row(wording.OneLine(b.Who), w.Station(b.At), w.Mark(b.Low), w.Mark(b.Across), w.Mark(b.Bar), w.Mark(b.Thick), w.Mark(b.Tall), w.Mark(b.Gunwale), b.Rib)
	}
	w.add(t, w.backFigure(w.Bend.Inside.Backs[0]), report.List{First: 1, Items: []string{
		"When the frame is oiled and dry, before the skin goes on, tie a loop of webbing round the head of the rib of the table on each side, close under the gunwale. " + w.loop() + " No foam lies there.",
		fmt.Sprintf("Round all edges of both bars. Bore and saw two upright slots for the webbing near each end of each bar, %s by %s, %s and %s from its end.", w.Length(slotLong), w.Length(slotWide), w.Length(slotIn), w.Length(slotIn+slotApart)),
		"Lead webbing through the slots of both bars, the gap of the table between them, and to the loops at both sides, with a buckle at each.",
		"Tie the lower bar to the rib or slat below, so that the backrest cannot ride up.",
		"Set its height and its lean by the buckles with the person in the boat: it bears on the small of the back."}})
}
