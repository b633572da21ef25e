package trial

import (
	"fmt"
	"math"

	"ribwright/geometry/trial/bend"
	"ribwright/geometry/trial/edgeset"
	"ribwright/layout/report"
)

// EdgeSet tells what a sprung edge-set asks of the frame and what the profile does when
// the frame is let go; nothing where none is sprung.
func EdgeSet(r *bend.Report, l report.Letters) []report.Block {
	e := r.EdgeSet
	if e == nil {
		return nil
	}
	words := "A moment of " + moments(e.Moment) + " on each gunwale holds the edge-set. Props hold it while you build. Once they are gone the frame must, and it can only while stems and keel are one piece: join them before you spring the set. "
	words += fmt.Sprintf("Before the props go, screw and lash the stems' feet, and glue and peg the heads of the end ribs: a foot holds up to %s along the keel, an end rib up to %s between keel and gunwales. ",
		newtons(math.Max(e.Free.Thrust, e.Usual.Thrust)), newtons(math.Max(e.Free.Pull, e.Usual.Pull)))
	words += "What you saw or laminate into the gunwales beforehand the frame need not hold. For that, have gunwale.edge_set_made changed in the design and the plans printed anew: marks and boards move with it."
	t := report.Titled("What the profile does when the frame is let go, up is +, "+l.Unit()).Words("Stems' feet").
		Numbers("Sheer, bow", "Sheer, stern", "Rocker, bow", "Rocker, stern", "Depth, midship").
		Noted("Sheer: height of the gunwales' ends over midship. Rocker: height of the keel's ends over midship. Likely: the gunwales' ends are lashed on their shelves, where they turn a little, and the cross pieces are in. These are estimates of a plane frame, our own model: measure the heights again before you lash.")
	for _, row := range []struct {
		name string
		rest *edgeset.Rest
	}{{"loose", e.Loose}, {"joined; ends turn, ribs spread", e.Free}, {"joined; ends turn (likely)", e.Usual}, {"joined; ends fast", e.Fast}} {
		cells := []string{row.name}
		for _, mm := range []float64{row.rest.Sheer[1], row.rest.Sheer[0], row.rest.Rocker[1], row.rest.Rocker[0], row.rest.Depth} {
			cells = append(cells, change(mm, l))
		}
		t.Row(cells...)
	}
	return []report.Block{report.Section("The edge-set"), report.Paragraph{Words: words}, t}
}

// moments letters N mm at the ends that have a set.
func moments(m edgeset.Pair) string {
	at := func(i int) string { return fmt.Sprintf("%.0f N m", m[i]/1000) }
	switch {
	case at(0) == at(1):
		return at(1) + " at either end"
	case m[0] == 0:
		return at(1) + " at the bow"
	case m[1] == 0:
		return at(0) + " at the stern"
	}
	return at(1) + " at the bow and " + at(0) + " at the stern"
}

// change letters a change of height with its sign: an estimate is no finer than a
// millimeter, in inches too.
func change(mm float64, l report.Letters) string {
	mm = math.Round(mm)
	s := l.Whole(math.Abs(mm))
	switch {
	case mm == 0:
		return "0"
	case mm < 0:
		return "-" + s
	}
	return "+" + s
}

// newtons letters a force to the next ten newtons: an estimate is no finer.
func newtons(n float64) string { return fmt.Sprintf("%.0f N", 10*math.Ceil(n/10)) }
