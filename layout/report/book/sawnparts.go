package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/seat"
	"ribwright/geometry/design"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/wording"
)

// offBench is what is done when the glue of the plies is hard.
const offBench = "Leave it overnight. The next day take off all that holds it, and scrape the glue off all faces. Do not plane them: marks would go with the glue."

// byMachine says which parts a machine may cut before the boat stands.
func (w *writer) byMachine() string {
	now := []string{"gauges"}
	if w.Bend.OnForms() {
		now = append(now, "forms")
	}
	sawn := []string{"breasthooks"}
	if len(w.Frame.Thwarts) > 0 && w.Bend.Boat.Why != nil {
		sawn = append(sawn, "cross pieces")
	}
	words := "If a machine cuts parts from the cutter's file, have it cut " + wording.And(now) + " now, and " + wording.And(sawn) + " when their stock is sawn and planed, after the next step."
	if w.Frame.Design.MadeStems() == design.StemsPlywood {
		words += " Stems come after the step Stems and breasthooks has glued their blanks: the file has each once, for a blank of its whole thickness."
	}
	if w.Frame.Design.MadeStems() == design.StemsLaminated {
		words += " Take the stems out of the file: their blanks are bent, and you saw them by hand."
	}
	var later []string
	if len(w.Frame.Thwarts) > 0 && w.Bend.Boat.Why == nil {
		later = append(later, "cross pieces")
	}
	if w.hungSeats() {
		later = append(later, "hangers of seats")
	}
	if len(later) > 0 {
		words += " The file has " + wording.And(later) + " too: take them out of it before it cuts. You saw them later by hand from their patterns, to the boat as it then stands."
	}
	return words
}

// machined lists what the cutter's file holds.
func (w *writer) machined() []string {
	out := []string{"stems", "breasthooks"}
	if len(w.Frame.Thwarts) > 0 {
		out = append(out, "cross pieces")
	}
	if w.hungSeats() {
		out = append(out, "hangers of seats")
	}
	if slices.ContainsFunc(w.Frame.Seats, func(s seat.Seat) bool { return s.Saddle != nil }) {
		out = append(out, "cheeks of saddles")
	}
	out = append(out, "gauges for bent ribs")
	if w.Bend.OnForms() {
		out = append(out, "forms")
	}
	return out
}

// endsOfRips says when a rip is crosscut whose end is ripped once more, "" where none is.
func (w *writer) endsOfRips() string {
	for _, v := range w.Plan.Woods {
		for _, b := range v.Boards {
			if slices.ContainsFunc(b.Rips, func(r cutlist.RipCut) bool { return len(r.Rest) > 0 }) {
				return "Where the plan rips the rest of a rip (numbers like 1.1), cut the checked end off that rip, crosscut what comes before the rest, as the plan says, and then rip the rest."
			}
		}
	}
	return ""
}

// sides explains the letters of the two sides.
func (w *writer) sides() string {
	if len(w.Frame.Stringers) == 0 {
		return ""
	}
	return " In S1p the p is for port, the left side of the boat looking forward; in S1s the s is for starboard, the right."
}

// boredEnds says how the ends of the gunwales are bored for the cord that lashes them.
func (w *writer) boredEnds() string {
	e := w.Bend.Joints.Ends
	place := func(i int) string {
		return fmt.Sprintf("%s %s from its end and %s up from the underside", w.Whole(e[i].FromEnd), w.Unit(), w.Whole(e[i].Up)+" "+w.Unit())
	}
	words := place(1)
	if place(0) != words {
		words += " at the bow, " + place(0) + " at the stern"
	}
	return fmt.Sprintf("Bore each end across for its lashing, along its sloping cut and not square to the wood, %s, %s; ease the edges of the holes.", w.Drill(e[1].Drill), words)
}

// crosses says what is marked on the stems for the stringers, "" without any.
func (w *writer) crosses() string {
	if len(w.Frame.Stringers) == 0 {
		return ""
	}
	return " Prick the crosses of the stringers' ends through on both sides: the stringers lie on the stem's flat sides, and nothing is cut for them."
}

// planedTo letters what the pieces of a rip are planed to, each section once.
func (w *writer) planedTo(r cutlist.RipCut) string {
	var out []string
	for _, p := range slices.Concat(r.Layers...) {
		s := w.Plan.Sticks[p.Stick]
		if words := w.Gauge(s.Width) + " x " + w.Gauge(s.Thickness); !slices.Contains(out, words) {
			out = append(out, words)
		}
	}
	return wording.Joined(out, "; ", strings.Clone)
}

// crosscutFirst letters what is crosscut off a rip before its rest is ripped once more, ""
// where it is not.
func (w *writer) crosscutFirst(r cutlist.RipCut) string {
	if len(r.Rest) == 0 {
		return ""
	}
	long := 0.0
	for _, p := range r.Layers[0] {
		long += math.Ceil(p.Length) + w.Plan.Kerf
	}
	return "first crosscut " + w.sawn(long) + " off this rip, for "
}
