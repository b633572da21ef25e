package trial

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/trial/afloat"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/handwork"
	"ribwright/layout/report"
)

// Balance is what holds the shape of a frame, and what comes of taking members out.
type Balance struct {
	Report  *bend.Report
	Without *balance.Without // what comes out in the trials
	Trials  []balance.Trial
	Loose   *afloat.Loose // on the water with ribs that are only pushed in
	Miss    float64       // mm, by how much the ribs of the last trial miss the neutral set
	Hands   *handwork.Report
}

// Balanced says what holds the shape, and warns where nothing but cross pieces can.
func (b Balance) Balanced() []report.Block {
	out := []report.Block{report.Paragraph{Words: "Without a mold the shape is a balance: bent gunwales want to straighten, bent ribs want to open, cross pieces carry what is left over. Stringers want to straighten as well, and the cloth pulls the ribs open. In the neutral set, ribs relaxed to the widths of the rib table, the cross pieces carry nothing and can come out, in the likely case: rib heads that their mortises hold half, stringer ends that were steamed, cloth as taut as the design says." + b.cut()}}
	if why := b.Report.Boat.Why; why != nil {
		out = append(out, report.Caution{Words: "There is no neutral set: " + why.Text, Says: "beam theory"})
	}
	return out
}

// cut says how cross pieces are cut for the neutral set.
func (b Balance) cut() string {
	if len(b.Report.Boat.Fit) == 0 {
		return ""
	}
	return fmt.Sprintf(" Cut each cross piece to the gunwales as they then stand, which is within %.0f mm of its drawing where all went well, not the gunwales to the cross piece.", OffDrawing(b.Report))
}

// OffDrawing returns how far the gap for a cross piece is off its drawing at most in the
// neutral set, in whole mm and never under 1: no gap is measured finer.
func OffDrawing(r *bend.Report) float64 {
	off := 1.0
	for _, v := range r.Boat.Fit {
		off = math.Max(off, math.Ceil(math.Abs(v)))
	}
	return off
}

// held tells of the balance with the force in every cross piece and the beam at every rib.
func (b Balance) held(l report.Letters) []report.Block {
	out := append([]report.Block{report.Section("What holds the shape")}, b.Balanced()...)
	if len(b.Report.Frame.Thwarts) > 0 {
		out = append(out, b.coded(l))
	}
	return append(append(out, b.beams(l)), b.Promised(l)...)
}

// Promised says by how much the beam may change when members come out, and what that
// hangs on.
func (b Balance) Promised(l report.Letters) []report.Block {
	t := b.Trials[min(1, len(b.Trials)-1)]
	switch {
	case len(b.Without.Names) == 0:
		return nil
	case b.Without.OnlySeats():
		return []report.Block{report.Say("Without %s the frame stands as before: seats hang on the gunwales or stand on the floor and carry nothing of its shape.", b.Without)}
	}
	out := []report.Block{report.Paragraph{Words: Promise(b.Without.String(), t, l)}}
	table := report.Titled("What that hangs on: the beam without "+b.Without.String()+", one thing at a time").Words("When").Numbers("Narrower, "+l.Unit(), "Wider, "+l.Unit())
	for _, c := range t.Causes {
		table.Row(b.cause(c.Case), l.Whole(-c.Least), l.Whole(c.Most))
	}
	table.Row("all at once, at the worst", l.Whole(-t.Band.Least.Moved), l.Whole(t.Band.Most.Moved))
	table.Note = "How firmly heads sit and how hard cloth pulls is from memory (the tension that the design asks of the cloth is the likely one): they do not simply add up, for loose heads go whichever way the rest pulls: measure the beam before and after the skin goes on, and with the cross pieces in and out."
	return append(append(out, table), b.forced(t, l)...)
}

// forced says what stringer ends that are forced cold cost.
func (b Balance) forced(t balance.Trial, l report.Letters) []report.Block {
	ends, cost := b.Report.Boat.Ends, 0.0
	for _, c := range t.Causes {
		if c.Case.Cold > 0 {
			cost = math.Max(-c.Least, c.Most)
		}
	}
	words := fmt.Sprintf("Steam the ends of the stringers. Forced cold they move the beam by up to %s, and stringer %d bears %.0f N/mm2 there", l.Length(cost), ends.Stringer, ends.Stress)
	if ends.Stress > ends.Breaks/2 {
		words += fmt.Sprintf(": %s breaks at about %.0f N/mm2", ends.Wood, ends.Breaks)
	}
	return []report.Block{report.Paragraph{Words: words + "."}}
}

// cause words what is at its limit while all else is as likely.
func (b Balance) cause(c balance.Case) string {
	usual := b.Report.Boat.Likely()
	switch {
	case c.Upright > 0:
		return "rib heads fast, ribs opened by their width alone"
	case c.Heads < usual.Heads:
		return "rib heads loose in their mortises"
	case c.Heads > usual.Heads:
		return "rib heads fast in their mortises"
	case c.Cold > 0:
		return "stringer ends forced cold"
	case c.Cloth < usual.Cloth:
		return fmt.Sprintf("slack cloth, %.1f N/mm", c.Cloth)
	}
	return fmt.Sprintf("taut cloth, %.1f N/mm", c.Cloth)
}

// Promise words what the beam does when members come out, with its band.
func Promise(without string, t balance.Trial, l report.Letters) string {
	over := t.Band.Over()
	limits := []string{}
	if over.Least <= -0.5 {
		limits = append(limits, fmt.Sprintf("%s narrower (%s)", l.Length(-over.Least), worded(t.Band.Least.Case)))
	}
	if over.Most >= 0.5 {
		limits = append(limits, fmt.Sprintf("%s wider (%s)", l.Length(over.Most), worded(t.Band.Most.Case)))
	}
	if len(limits) == 0 {
		return fmt.Sprintf("Without %s the beam %s, and by no more than a millimeter whatever comes.", without, likely(over, l))
	}
	return fmt.Sprintf("Without %s the beam %s. At the worst it becomes %s.", without, likely(over, l), strings.Join(limits, " or "))
}

// likely words the change of the beam in the likely case.
func likely(over balance.Range, l report.Letters) string {
	switch {
	case over.Likely >= 0.5:
		return "widens by up to " + l.Length(over.Likely) + " in the likely case"
	case over.Likely <= -0.5:
		return "narrows by up to " + l.Length(-over.Likely) + " in the likely case"
	}
	return "does not change in the likely case"
}

// worded says what comes together in a case.
func worded(c balance.Case) string {
	heads, ends := "rib heads loose", "stringer ends steamed"
	switch {
	case c.Upright > 0:
		heads = "rib heads fast and ribs opened by their width alone"
	case c.Heads > 0:
		heads = "rib heads fast"
	}
	if c.Cold > 0 {
		ends = "stringer ends forced cold"
	}
	return fmt.Sprintf("%s, %s, cloth at %.1f N/mm", heads, ends, c.Cloth)
}

// Forces lists the force in every cross piece.
func (b Balance) Forces(l report.Letters) report.Table {
	t := report.Titled("Push of the cross pieces on each gunwale, " + l.Units.UnitOf("N") + "; + a strut, - a tie").Words("Cross piece")
	for _, r := range b.Trials {
		t = t.Numbers("ribs " + b.set(r, l))
	}
	for i, p := range b.Report.Frame.Thwarts {
		row := []string{p.Name}
		for _, r := range b.Trials {
			row = append(row, l.Push(r.In.Struts[i]))
		}
		t.Row(row...)
	}
	return t
}

// coded puts behind each name the code and the station of its cross piece.
func (b Balance) coded(l report.Letters) report.Table {
	t := b.Forces(l)
	first := report.Titled("").Words("Cross piece").Names("Code").Numbers("Station, " + l.Unit())
	t.Columns = append(first.Columns, t.Columns[1:]...)
	for i, row := range t.Rows {
		t.Rows[i] = append([]string{row[0], balance.Code(i), l.Whole(b.Report.Frame.Thwarts[i].At)}, row[1:]...)
	}
	return t
}

func (b Balance) set(t balance.Trial, l report.Letters) string {
	switch t.Set {
	case "off":
		return b.missed(l) + " than neutral"
	case "neutral":
		return "in the neutral set"
	}
	return "unset, as wide as their places"
}

// missed says by how much ribs miss the neutral set, and which way.
func (b Balance) missed(l report.Letters) string {
	way := " wider"
	if b.Miss < 0 {
		way = " narrower"
	}
	return l.Length(math.Abs(b.Miss)) + way
}

// beams lists how far the beam is off the design, and moves, at every rib.
func (b Balance) beams(l report.Letters) report.Table {
	t := report.Titled("Beam: mm off the design with everything in, and by how much it moves without " + b.Without.String()).Names("Rib").Numbers("Station, " + l.Unit())
	for _, r := range b.Trials {
		set := r.Set
		if set == "off" {
			set = b.missed(l)
		}
		t = t.Numbers("Off, "+set, "Moves, "+set)
	}
	for _, r := range b.Report.Frame.Ribs {
		row := []string{r.Name, l.Whole(r.Station)}
		for _, tr := range b.Trials {
			row = append(row, report.Signed(tr.Off(r.Station)), report.Signed(tr.Moved(r.Station)))
		}
		t.Row(row...)
	}
	return t
}
