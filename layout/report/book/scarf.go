package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
	"ribwright/geometry/shop/cutlist"
	"ribwright/layout"
	"ribwright/layout/report"
)

// scarfs tells where long sticks are scarfed, or that none is.
func (w *writer) scarfs() {
	t := report.Titled("Scarfs in long sticks, middles along the stock from midship, "+w.Marks()).Names("Stick").Words("Part").Numbers("Middle", "Length", "Slope").Words("On the strip")
	plies := false
	for i, c := range w.Plan.Cuttings {
		for _, j := range c.Joints {
			s := w.Plan.Sticks[i]
			drawn := "mark it"
			if strings.Contains(s.Part, "gunwale") && slices.ContainsFunc(w.Frame.Gunwale.Scarfs, func(o frame.Scarf) bool { return math.Abs(o.Middle-j.Middle) < 0.5 }) {
				drawn = "drawn"
			}
			plies = plies || strings.Contains(s.Part, "ply")
			t.Row(s.Mark, s.Part, w.Mark(j.Middle), w.Cell(j.Length), fmt.Sprintf("1:%.3g", j.Length/s.Thickness), drawn)
		}
	}
	if len(t.Rows) == 0 {
		w.say("No stick needs a scarf with the boards of the ripping plan. Shorter boards want this book and the patterns made again for them: then they say where scarfs lie, how long they are and how they are made.")
		return
	}
	t.Note = "Scarfs keep out of mortises, cross pieces, lashings, the gunwales' middle third, the hardest curve of a batten and, where a board allows it, what is steamed of a stringer; three scarf lengths lie between two in one stick (FAA AC 43.13-1B), one between those of sticks side by side. Patterns show the scarfs that the design places, and the table of mortises or gaps counts to these alone; those that follow from the length of the boards are marked from this table, with a tape from midship."
	if plies {
		t.Note += " Ply 1 is the inboard one, the last the outboard one."
	}
	w.add(w.scarfFigure(), t, report.Findings{List: w.Plan.Heated()})
}

// scarfing is the work on scarfs, nil where no stick has one.
func (w *writer) scarfing() []string {
	n := w.alongSticks()
	if n == 0 {
		return nil
	}
	return []string{
		fmt.Sprintf("Mark the scarfs, %d in all, by the figure and the table Scarfs in long sticks in the chapter Gunwales: pieces are counted from aft. A scarf slopes through the thickness of a stick, the smaller side of its section: draw it on both narrow sides, from nothing on one wide face to the other wide face, as long as the table says.", n),
		"Plane the wide faces true at the ends first. Lay the two pieces of a joint on each other, one end back from the other by the length of the scarf, clamp them down, and saw and plane both slopes in one plane, to a feather on a board's edge.",
		"Turn one piece over and lay slope on slope: no light shows between them. Glue them, clamped on a straight board with film under them, a brad through the waste of each or a stop at each end so that they cannot slide. Leave them overnight.",
	}
}

// scarfFigure draws the first scarf of the table at the narrow side of its stick: the two
// pieces as they are planed together, then turned and glued.
func (w *writer) scarfFigure() report.Figure {
	stick, length := w.firstScarf()
	t := stick.Thickness
	per := jointScale(2.7*length, 3*t, 110, 40)
	s := newSketch("scarf", "Scarf", per)
	low, tail := 0.0, 0.7*length
	// Below, glued: both slopes on one line, brads in what is cut off.
	s.box(layout.Cut, -length/2-tail, low, length/2+tail, low+t)
	s.line(layout.Cut, -length/2, low, length/2, low+t)
	s.across(-length/2, length/2, -4.5, w.Fine(length))
	s.note(-length/2-tail, low+t/2, -3, -small/2, layout.Right, w.Fine(t))
	s.note(0, low+t, 0, 1.5, layout.Middle, "glued: slope on slope, wide faces level")
	// Above, planed: the upper piece back by the length, one plane through both.
	base, end := low+t+14*per, length/2
	left := -end - 1.7*length
	s.path(layout.Cut, curve.Polygon(geometry.Pt(left, base), geometry.Pt(end, base), geometry.Pt(-end, base+t), geometry.Pt(left, base+t)))
	s.path(layout.Cut, curve.Polyline(geometry.Pt(-end, base+t), geometry.Pt(-end-length, base+2*t), geometry.Pt(left, base+2*t), geometry.Pt(left, base+t)))
	s.path(layout.Guide, curve.Polyline(geometry.Pt(end, base), geometry.Pt(end, base+t), geometry.Pt(-end, base+t), geometry.Pt(-end, base+2*t), geometry.Pt(-end-length, base+2*t)))
	s.across(-end, end, (base+t)/per+3, w.Fine(length))
	s.note(end, base, 3, 0, layout.Left, "dashed: planed away, both in one plane")
	return report.Figure{Drawing: s.settled(),
		Caption: fmt.Sprintf("A scarf from the narrow side of its stick, %s, drawn for %s: above, the two pieces laid on each other and planed; below, one turned over and glued.", times(per), stick.Mark),
		About:   "Two pieces with one long slope through both, and the same pieces glued slope on slope."}
}

// firstScarf is the first stick with a joint, and the length of its scarf. There is one.
func (w *writer) firstScarf() (cutlist.Stick, float64) {
	for i, c := range w.Plan.Cuttings {
		if len(c.Joints) > 0 {
			return w.Plan.Sticks[i], c.Joints[0].Length
		}
	}
	return cutlist.Stick{}, 0
}
