package book

import (
	"strings"

	"ribwright/geometry/trial/stow"
	"ribwright/layout/report"
)

// MostHome is of how many boats a course may be for its book to tell which nest: every boat is
// tried in every wider one.
const MostHome = 16

// home says which boats of the course go home in one another.
func (w *writer) home(piles []*stow.Stack, room float64) {
	if len(piles) == 0 {
		return
	}
	w.chapter("The way home")
	boats := 0
	for _, s := range piles {
		boats += len(s.Boats)
	}
	if boats == len(piles) {
		w.say("No boat of this course stands in another with %s of room all round: each goes home by itself. A boat that is sized to nest takes another with it (ribwright size --inside).", w.Length(room))
		return
	}
	w.say("The %d boats go home as %d: each stands in the one named before it, on pads of %s on its floor, with as much room at its sides. What is named comes out of the lower boat first; try each nest by hand before you count on it. Lift a nest with one person for each boat in it, tie each boat to the one under it, and ask the maker of the trailer or the rack what it carries.",
		boats, len(piles), w.Length(room))
	t := report.Titled("").Words("From the outside in", "Comes out").Numbers("Length, "+w.Unit(), "Width", "Height").Numbers("Mass")
	for _, s := range piles {
		var in, out []string
		for i, b := range s.Boats {
			in = append(in, b.Title)
			if taken := s.TakenOut(i); len(taken) > 0 {
				out = append(out, b.Title+": "+strings.Join(taken, ", "))
			}
		}
		nothing := "nothing"
		if len(out) > 0 {
			nothing = strings.Join(out, "; ")
		}
		t.Row(strings.Join(in, ", "), nothing, w.Whole(s.Length), w.Whole(s.Width), w.Whole(s.Height), w.Mass(s.Mass))
	}
	t.Note = "Worked out from the designs as drawn: a boat that came out wider than the room allows does not go in. Mass is of the boats alone."
	w.add(t)
}
