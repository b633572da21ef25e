package trial

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
	"ribwright/layout/report"
)

// Fleet tells which boats nest in one another: the verdict and what fails first, then
// the room, what must come out, and the stack with what is dangerous about it.
func Fleet(r *stow.Report, units measure.System) []report.Block {
	n := nest{report.Letters{Units: units}, r}
	out := n.verdict()
	for _, part := range []func() []report.Block{n.failures, n.proposed, n.room, n.contacts, n.out, n.stack} {
		out = append(out, part()...)
	}
	return append(out, report.Paragraph{Words: "Everything is worked out from the designs as drawn, to no better than you build: try the nest by hand before you count on it. Local law comes first; nothing here certifies a load."})
}

type nest struct {
	report.Letters
	*stow.Report
}

// small letters a room or the lack of it.
func (n nest) small(mm float64) string {
	if n.Units == measure.Imperial {
		return n.Length(mm)
	}
	return n.Fine(mm)
}

// cell letters a room for a column.
func (n nest) cell(mm float64) string {
	if math.IsInf(mm, 0) {
		return "ample"
	}
	return n.Cell(mm)
}

func say(format string, args ...any) report.Paragraph {
	return report.Paragraph{Words: fmt.Sprintf(format, args...)}
}

func (n nest) verdict() []report.Block {
	verdict, state := "they nest, one in the other", "out"
	if !n.Stack.Nests {
		verdict = "they do NOT all nest"
	}
	if n.Options.LeftIn {
		state = "left in"
	}
	var names []string
	for _, b := range n.Stack.Boats {
		names = append(names, b.Title)
	}
	return []report.Block{say("From the outermost in: %s: %s.", strings.Join(names, ", "), verdict),
		say("Thwarts, yoke and seat bars of the lower boats are %s. Room asked for between wood and cloth: %s, as pads on the floor and free at the sides.", state, n.small(n.Options.Pad))}
}

// failures says where a boat is held up, and what would cure it.
func (n nest) failures() []report.Block {
	var items []string
	for _, f := range n.Failures(n.Length, n.small) {
		words := f.About + " " + f.Text + "."
		if f.Cure != "" {
			words += " Cured by: " + f.Cure + "."
		}
		items = append(items, words)
	}
	if len(items) == 0 {
		return nil
	}
	return []report.Block{section("Where it fails"), report.List{Items: items}}
}

// proposed tells of the smaller boats, where they were asked for.
func (n nest) proposed() []report.Block {
	if n.After == nil {
		return nil
	}
	out := []report.Block{section("Proposed")}
	for i, b := range n.Proposed {
		if b == nil {
			continue
		}
		was, now := n.Stack.Pairs[i].Upper.Frame.Design.Hull, b.Frame.Design.Hull
		out = append(out, say("%s: beam %s (was %s), length %s (was %s); it lofts.", b.Title, n.Length(float64(now.Beam)), n.Length(float64(was.Beam)), n.Length(float64(now.Length)), n.Length(float64(was.Length))),
			report.Caution{Words: "A narrower boat is tippier and carries less: try it afloat on paper before you build.", Says: "arithmetic"})
	}
	verdict := "nests"
	if !n.After.Nests {
		verdict = "does NOT nest"
	}
	return append(out, say("With that the fleet %s: %s high, %s long, %s.", verdict, n.Length(n.After.Height), n.Length(n.After.Length), n.Mass(n.After.Mass)))
}

func (n nest) room() []report.Block {
	t := report.Table{Title: "Least room, " + n.Unit(), Note: "Keel up: the upper boat's baseline over the lower one's. Shift: its midship forward of the lower one's. Ample: over 60 mm (2 3/8 in).",
		Columns: []report.Column{report.Words("Boat in boat"), report.Numbers("Floor"), report.Numbers("Sides"), report.Numbers("Ends"), report.Numbers("Keel up"), report.Numbers("Shift"), report.Names("Nests")}}
	for i, q := range n.Stack.Pairs {
		name, nests := n.Stack.Name(i+1)+" in "+n.Stack.Name(i), "yes"
		if q.Place.Turned {
			name += ", turned end for end"
		}
		if !q.Nests {
			nests = "NO"
		}
		t.Rows = append(t.Rows, []string{name, n.cell(q.Rooms[stow.Floor].Room), n.cell(q.Rooms[stow.Sides].Room), n.cell(q.Rooms[stow.Ends].Room), n.cell(q.Place.Z), n.cell(q.Place.X), nests})
	}
	return under(t)
}

// contacts says what touches first without pads.
func (n nest) contacts() []report.Block {
	var items []string
	for i, q := range n.Stack.Pairs {
		if !q.First.Meets() {
			continue
		}
		words := fmt.Sprintf("%s: %s meets %s of %s at station %s, with the keel %s up.", n.Stack.Name(i+1), q.First.Upper.Name, q.First.Lower.Name, n.Stack.Name(i), n.Length(q.First.At.X), n.Length(q.Touch))
		if c := q.Rooms[stow.Sides]; c.Meets() {
			words += fmt.Sprintf(" Least room at the sides: %s by %s at station %s.", c.Upper.Name, c.Lower.Name, n.Length(c.At.X))
		}
		items = append(items, words)
	}
	if len(items) == 0 {
		return nil
	}
	return []report.Block{section("First contact, lowered without pads"), report.List{Items: items}}
}

// out lists the cross pieces that are in the way.
func (n nest) out() []report.Block {
	if n.Options.LeftIn {
		return nil
	}
	s, as := n.Stack, ""
	switch {
	case n.After != nil:
		s, as = n.After, ", with the boats proposed"
	case !s.Nests:
		as = ", as the boats lie now"
	}
	var items []string
	for i, b := range s.Boats {
		what := strings.Join(s.TakenOut(i), "; ")
		switch {
		case len(b.Frame.Thwarts) == 0:
			what = "it has no thwarts"
		case what == "":
			what = "nothing"
		}
		items = append(items, s.Name(i)+": "+what+".")
	}
	return []report.Block{section("What must come out" + as), report.List{Items: items},
		report.Caution{Words: "Gunwales spring when their thwarts are out: put a spreader of the thwart's length back on top, or measure the beam again, before you trust the room above.", Says: practice}}
}
