package book

import (
	"fmt"
	"strings"

	"ribwright/geometry/finding"
	"ribwright/geometry/measure"
	"ribwright/geometry/shop/cost"
	"ribwright/geometry/shop/course"
	"ribwright/geometry/shop/cutlist"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Course is what the book of a course is made of.
type Course struct {
	Title   string
	Units   measure.System
	Boats   []CourseBoat
	Pool    *cutlist.Pooled // of the boats, in their order
	Cost    cost.Estimate   // of all together
	Prices  *cost.Table
	Rings   finding.List   // where rings do not lie as wood that is bent wants them
	Days    *course.Plan   // of its work
	Home    []*stow.Stack  // how its boats go home; nil where nobody asked
	Room    float64        // between the boats of one of them, mm
	LeftOut []string       // builders whose boats could not be made
	Boards  []report.Block // of the fan boards; nil where none are asked for
}

// CourseBoat is one of its boats.
type CourseBoat struct {
	Builder, Folder     string
	Length, Beam, Depth float64 // mm
	Hours               float64 // by its builder's skill
	Cost                float64 // of its materials, bought for it alone
}

// Names are the builders' names, in the order of their boats.
func (c Course) Names() []string {
	var out []string
	for _, b := range c.Boats {
		out = append(out, b.Builder)
	}
	return out
}

// OfCourse makes the book of a course: what is done when by whom, one ripping plan and one
// shopping list for all boats, and what goes into each builder's bin.
func OfCourse(c Course) report.Report {
	w := &writer{Facts: Facts{Units: c.Units, Plan: &c.Pool.Plan, Rings: c.Rings, Cost: c.Cost, Prices: c.Prices}, Letters: report.Letters{Units: c.Units}}
	w.book = report.Report{Title: c.Title, Kind: "course book"}
	w.builders(c)
	w.days(c.Days)
	w.add(c.Boards...)
	w.pile(c)
	w.boards()
	w.chapter("Shopping list for the course")
	w.priced()
	w.bins(c)
	w.home(c.Home, c.Room)
	w.add(report.Paragraph{Words: report.Promise})
	return w.book
}

func (w *writer) builders(c Course) {
	w.chapter("Builders")
	w.say("One pile of wood for %s: this book says which boards to buy, how to rip them, and what goes into each builder's bin. A builder's own book tells everything else. Its ripping plan is for a boat built by itself: leave it out, and saw by this one. Its cut list holds: every piece here has the length and the section that stand there.", wording.Counted(len(c.Boats), "boat"))
	w.say("Each mark has its builder's number in front: 3:G1 is G1 of builder 3. Pencil the whole mark on each piece as it comes off the saw.")
	t := report.Titled("").Numbers("No.").Words("Builder", "Folder").Numbers("Length, "+w.Unit(), "Beam", "Depth", "Hours", "Cost alone")
	hours, alone := 0.0, 0.0
	for i, b := range c.Boats {
		t.Row(fmt.Sprint(i+1), b.Builder, b.Folder, w.Cell(b.Length), w.Cell(b.Beam), w.Cell(b.Depth), fmt.Sprintf("%.0f", b.Hours), fmt.Sprintf("%.0f", b.Cost))
		hours, alone = hours+b.Hours, alone+b.Cost
	}
	t.Note = fmt.Sprintf("Together %.0f hours of work. Bought boat by boat the materials cost about %.0f, together about %.0f%s, at the prices of the table %q.", hours, alone, c.Cost.Likely, c.Cost.Without(), c.Prices.Name)
	w.add(t)
	if len(c.LeftOut) > 0 {
		w.warn(fmt.Sprintf("Nothing is counted here for %s: no boat was made for them. The summary says why. Put it right and make the course again before you buy.", wording.Joined(c.LeftOut, ", ", strings.Clone)), "arithmetic of this table")
	}
}

// pile compares one pile with a pile for each boat.
func (w *writer) pile(c Course) {
	w.chapter("Boards for all")
	t := report.Titled("").Words("Wood").Numbers("Boards", "Boards boat by boat", "Waste", "Waste boat by boat", "Least waste").Words("No plan takes less")
	for i, v := range c.Pool.Woods {
		if len(v.Boards) == 0 {
			continue
		}
		a, proved := c.Pool.Apart[i], "not known"
		if v.Optimal() {
			proved = "proved, for boards of this size"
		}
		t.Row(v.Species, fmt.Sprint(len(v.Boards)), fmt.Sprint(a.Boards), report.Percent(v.Waste()), report.Percent(a.Waste()), report.Percent(v.LeastWaste()), proved)
	}
	t.Note = "Waste is sawdust and offcuts of the boards bought. Least waste is a bound: no plan for the same pieces from boards of these sizes wastes less, and perhaps none reaches it."
	w.add(t)
}

// bins says what goes into each builder's bin, and off which board.
func (w *writer) bins(c Course) {
	w.chapter("Bins")
	w.say("One bin for each builder, with a label on it and on each bundle: a file of labels comes with this book on letter and A4. Tick each piece when it lies in it. Boards are counted in each wood, as in the ripping plan; S1p/2 is the second piece of S1p, from aft.")
	board := map[cutlist.Piece]string{}
	for _, v := range w.Plan.Woods {
		for i, s := range v.Boards {
			for _, p := range s.Pieces() {
				board[p] = fmt.Sprint(i + 1)
			}
		}
	}
	for b, boat := range c.Boats {
		w.section(fmt.Sprintf("%d: %s", b+1, boat.Builder))
		t := report.Titled("Pieces, "+w.Unit()).Names("Mark").Words("Part").Names("Wood").Numbers("Length", "Width", "Thick", "Board").Names("In")
		for i, s := range w.Plan.Sticks {
			if c.Pool.Owners[i] != b {
				continue
			}
			for _, p := range w.Plan.Cuttings[i].Pieces {
				mark := s.Mark
				if p.Of > 1 {
					mark += fmt.Sprintf("/%d", p.Number)
				}
				t.Row(mark, s.Part, s.Species, w.Cell(p.Length), w.Gauge(s.Width), w.Gauge(s.Thickness), board[p], "[  ]")
			}
		}
		w.add(t)
	}
}
