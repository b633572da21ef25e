package trial

import (
	"math"

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
	out := []report.Block{report.Paragraph{Words: "Without a mould the shape is a balance: bent gunwales want to straighten, bent ribs want to open, cross pieces carry what is left over. In the neutral set, ribs relaxed to the widths of the rib table, the cross pieces carry nothing and can come out."}}
	if why := b.Report.Boat.Why; why != nil {
		out = append(out, report.Caution{Words: "There is no neutral set: " + why.Text, Says: "beam theory"})
	}
	return out
}

// held tells of the balance with the force in every cross piece and the beam at every rib.
func (b Balance) held(l report.Letters) []report.Block {
	out := append([]report.Block{report.Section("What holds the shape")}, b.Balanced()...)
	if len(b.Report.Frame.Thwarts) > 0 {
		out = append(out, b.coded(l))
	}
	return append(out, b.beams(l))
}

// Forces lists the force in every cross piece.
func (b Balance) Forces(l report.Letters) report.Table {
	t := report.Titled("Push of the cross pieces on each gunwale, N; + a strut, - a tie").Words("Cross piece")
	for _, r := range b.Trials {
		t = t.Numbers("ribs " + b.set(r, l))
	}
	for i, p := range b.Report.Frame.Thwarts {
		row := []string{p.Name}
		for _, r := range b.Trials {
			row = append(row, report.Number(r.In.Struts[i]))
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
