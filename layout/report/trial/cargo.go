package trial

import (
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/cargo"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Cargo tells what happens when all live cargo moves at once; nothing without any.
func Cargo(r *cargo.Report, l report.Letters) []report.Block {
	if r == nil {
		return nil
	}
	t := report.Titled("When all live cargo moves and the paddlers sit still").Words("It").
		Numbers("By, "+l.Unit(), "Heels, degrees", "Freeboard left, "+l.Unit(), "Lever left, mm", "Paddlers the other way, "+l.Unit())
	for _, m := range r.Moves {
		against := "-"
		if m.Against > 0 {
			against = l.Whole(m.Against)
		}
		if m.Upset {
			t.Row(m.What, l.Whole(m.By), "upset", "0", "0", against)
			continue
		}
		t.Row(m.What, l.Whole(m.By), report.Angle(m.Heel), l.Whole(m.Freeboard), measure.MM(m.Lever, 0), against)
	}
	held := ". The boat holds it up to " + l.Length(r.Held) + " off the middle line while it stays low and the paddlers sit still; upset means that water comes in or the boat goes over."
	if r.HeldEverywhere() {
		held = ". The boat holds it wherever it goes."
	}
	return []report.Block{t.Noted("Live cargo is " + wording.List(r.Who, wording.OneLine) + ", " + l.Mass(r.Mass) + held + " The last column is how far the paddlers' weight must move the other way to keep it upright: a body leans some 100 mm. How far live cargo moves is our own choice: a look over the side, the gunwale's inside, a step. It stays low in the middle, is never tied in, and wears a life jacket.")}
}
