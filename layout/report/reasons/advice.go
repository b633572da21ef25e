package reasons

import (
	"fmt"

	"ribwright/geometry/sizing/advice"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Advice tells of the boats that would do, the first to be advised first, with what each
// takes and why it stands where it does.
func Advice(all []advice.Boat, l report.Letters, beginner bool) []report.Block {
	t := report.Titled("Boats that would do, the one to begin with first").Numbers("Rank").Words("Boat").
		Numbers("Length", "Beam", "Weight", "Hours", "Materials", "Longest stick", "Lever, "+l.Unit())
	var why []report.Block
	for i, b := range all {
		name := wording.Capital(b.Family)
		if b.NoBoat == "" {
			t.Row(fmt.Sprint(i+1), name, l.Length(b.Length), l.Length(b.Beam), l.Mass(b.Mass), fmt.Sprintf("%.0f", b.Hours),
				fmt.Sprintf("%.0f", b.Cost), l.Length(b.Stick), l.Whole(b.Lever))
			name += ", for " + b.For
		}
		why = append(why, report.Say("%d. %s:", i+1, name), report.List{Items: b.Why})
	}
	out := append([]report.Block{t.Noted("Hours and materials are estimates for this builder, in the currency of the prices that come with the program, good to a fifth. The lever is the greatest righting one, the steadier the more.")}, why...)
	if beginner {
		out = append(out, report.Paragraph{Words: "Who has built none begins with the smallest boat that is of use: the work is the same, there is less of it, and the second boat is the better for it (common practice, no source)."})
	}
	return out
}
