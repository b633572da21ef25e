package book

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/layout/report"
)

// lengths lists how long each rib is and how wide it stands, hot, free and in the boat.
func (w *writer) lengths() report.Table {
	held, before, free := "Held hot", "before pegging", "cold and lifted out of its mortises"
	if w.Bend.OnForms() {
		held, before, free = "On the form", "before fitting", "cold and off its form"
	}
	t := report.Titled("Lengths and widths, "+w.Marks()).Names("Rib").
		Numbers("From midship", "Shoulder to shoulder", "Blank", held, "Relax to, "+before, "Width in place", "Depth under the gunwales")
	slack, differ := w.bilgeSlack()
	if differ {
		t = t.Numbers("Bilge marks may be off")
	}
	for i, r := range w.Frame.Ribs {
		b := w.Bend.Ribs[i]
		row := []string{r.Name, w.Cell(math.Abs(r.Station)), w.Mark(r.Length), w.Cell(r.Blank),
			w.roughIf(b.Hot, "heads cross"), w.roughIf(b.Relax, "-"), w.Whole(2 * r.Section.HalfBreadth), w.Whole(r.Section.Depth)}
		if differ {
			row = append(row, strings.TrimSuffix(w.slackOf(r), " "+w.Unit()))
		}
		t.Row(row...)
	}
	return t.Outward(w.Frame.Stations()).Noted(w.aboutLengths(free, slack, differ))
}

// heldHot lists how wide each rib is held hot by what its board springs back: the design's
// own springback, a step under it and two over it.
func (w *writer) heldHot() report.Table {
	t := report.Titled("Held hot, by the springback that you measured, " + w.Unit()).Names("Rib")
	at := slices.Index(w.Bend.Test, w.Bend.Expected())
	var columns []int
	for n := at - 2; n <= at+4; n += 2 {
		if n >= 0 && n < len(w.Bend.Test) && w.Bend.Test[n].Back > 0 {
			columns = append(columns, n)
			t = t.Numbers(fmt.Sprintf("%.0f%%", 100*w.Bend.Test[n].Back)) // in one word
		}
	}
	for i, r := range w.Frame.Ribs {
		row := []string{r.Name}
		for _, n := range columns {
			row = append(row, w.roughIf(w.Bend.Ribs[i].Held[n].Width, "heads cross"))
		}
		t.Row(row...)
	}
	return t.Outward(w.Frame.Stations()).Noted("Between two columns go in proportion. Each 1 % more also wants each hot radius about 1 % smaller. What a rib is relaxed to, its length and its marks stay.")
}

// roughIf letters a width that is bent by hand, and other words where there is none.
func (w *writer) roughIf(mm float64, none string) string {
	if mm > 0 {
		return w.Rough(mm)
	}
	return none
}

// slackOf letters by how far the marks of a rib's bilge may be off, "-" for a straight rib.
func (w *writer) slackOf(r frame.Rib) string {
	mm := marks.BilgeSlack(r)
	if math.IsInf(mm, 1) {
		return "-"
	}
	return w.Letters.Units.Within(mm)
}

// bilgeSlack is what slackOf says of every rib, and whether ribs differ in it.
func (w *writer) bilgeSlack() (same string, differ bool) {
	same = w.slackOf(w.Frame.Ribs[0])
	for _, r := range w.Frame.Ribs {
		differ = differ || w.slackOf(r) != same
	}
	return same, differ
}

// aboutLengths says what the widths mean and how far off a rib may be.
func (w *writer) aboutLengths(free, slack string, differ bool) string {
	words := fmt.Sprintf("Widths are between the heads, and the depth is from the gunwales' underside to the keel, all to the middle of the rib's thickness; widths that a rib is held at or relaxed to are in steps of %s, for wood keeps to no finer. Relax to: the width at which the rib, %s, leaves the cross pieces without load. ",
		report.Either(w.Letters.Units, "5 mm", "1/4 in"), free) + w.tooLong()
	switch {
	case differ:
		words += " Bilge marks may be off, along the blank, by what the last column says"
	case slack == "-":
		return words
	default:
		words += " Bilge marks may lie " + slack + " out or in along the blank"
	}
	return words + fmt.Sprintf(": that leaves the beam within %s mm (%s) of the drawing.", measure.MM(marks.FreeWidth, 0), measure.Sixteenths(marks.FreeWidth))
}

// tooLong says what comes of a rib that is too long: the gaps under its tenons take up some.
func (w *writer) tooLong() string {
	gaps := 2 * float64(w.Frame.Design.Ribs.TenonGap)
	if gaps < 1 {
		return "A rib that is too long changes the boat as the corrections say."
	}
	return "A rib may be " + w.Letters.Units.Within(gaps) + " too long: the gaps under its two tenons take that up. More changes the boat as the corrections say."
}

// cellIf letters a length, "-" where there is none.
func (w *writer) cellIf(is bool, mm float64) string {
	if !is {
		return "-"
	}
	return w.Gauge(mm)
}
