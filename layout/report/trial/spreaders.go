package trial

import (
	"fmt"
	"math"

	"ribwright/geometry/design"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/spreader"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Spreaders tells which way and how hard each spreader holds, with what, and what comes
// of sticks alone.
func Spreaders(b *bend.Report, l report.Letters) []report.Block {
	slips := b.Boat.Glue.Plies > 1
	t := report.Titled("What each spreader holds, force on each gunwale").Words("Place", "Holds").Numbers("As one stick")
	if slips {
		t = t.Numbers("Before gluing", "Once glued")
	}
	t = t.Numbers("Sticks alone, " + l.Unit())
	for _, s := range b.Spread.Spreaders {
		row := []string{l.Station(s.At), s.Holds.String(), l.Units.Force(s.Force)}
		if slips {
			before := l.Units.Force(s.Before)
			if byForm(b) {
				before = "the form"
			}
			row = append(row, before, l.Units.Force(s.After))
		}
		t.Row(append(row, l.Whole(s.Alone))...)
	}
	t.Note = "Apart: push the gunwales apart with a stick that has a notch for a gunwale at each end. Together: pull them in with a strap or a windlass of cord round both, against the inner walls of a notched stick of that width, or with a bolted bar. As one stick: make the spreader strong enough for this force."
	if slips {
		t.Note += " Dry plies slip past each other and need far less, but clamps make them one stick."
	}
	t.Note += fmt.Sprintf(" Sticks alone: the beam when every spreader can only push. Tie the gunwales' ends before the spreaders go in: they spring apart with about %s on each. All forces are for clear wood, whose stiffness varies by a fifth.", l.Units.Force(math.Max(math.Abs(b.Spread.Ends[0]), math.Abs(b.Spread.Ends[1]))))
	out := []report.Block{t}
	if words := sticksAlone(b, l); words != "" {
		out = append(out, report.Caution{Words: words, Says: "beam theory, for clear wood"})
	}
	return out
}

// byForm reports whether a form holds the plies while they are glued.
func byForm(b *bend.Report) bool {
	return b.Boat.Glue.Plies > 1 && b.Frame.Design.Gunwale.Glued == design.GluedOnForm
}

// sticksAlone warns of spreaders that must pull; "" when all push or a form holds the
// gunwales.
func sticksAlone(b *bend.Report, l report.Letters) string {
	s, glue := b.Spread, b.Boat.Glue
	var pull []spreader.Spreader
	for _, o := range s.Spreaders {
		if o.Holds == spreader.Together {
			pull = append(pull, o)
		}
	}
	if len(pull) == 0 || byForm(b) {
		return ""
	}
	words := fmt.Sprintf("Hold the gunwales TOGETHER at %s. A stick that only pushes falls out there.", wording.List(pull, func(o spreader.Spreader) string { return l.Station(o.At) }))
	if w := s.Widest(); w.Alone-w.Beam > 2 {
		words += fmt.Sprintf(" With sticks alone the gunwales stand %s apart at %s, where the design has %s", l.Length(w.Alone), l.Station(w.At), l.Length(w.Beam))
		if glue.Plies > 1 {
			words += "; plies glued so stay too wide"
		}
		words += "."
	}
	return words
}
