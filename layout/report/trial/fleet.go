package trial

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/balance"
	"ribwright/geometry/trial/stow"
	"ribwright/geometry/wording"
	"ribwright/layout/report"
)

// Fleet tells which boats nest in one another: the verdict and what fails first, then
// the room, what must come out and what that does to each boat, and the stack with what
// is dangerous about it.
func Fleet(r *stow.Report, sprung []Sprung, units measure.System) []report.Block {
	n := nest{report.Letters{Units: units}, r, sprung}
	out := n.verdict()
	for _, part := range []func() []report.Block{n.failures, n.proposed, n.room, n.contacts, n.out, n.stack} {
		out = append(out, part()...)
	}
	return append(out, report.Paragraph{Words: "Everything is worked out from the designs as drawn, to no better than you build: try the nest by hand before you count on it. Local law comes first; nothing here certifies a load."})
}

type nest struct {
	report.Letters
	*stow.Report
	sprung []Sprung
}

// Sprung is what a boat does when its cross pieces come out.
type Sprung struct {
	Title   string
	Neutral bool // whether its ribs are in the neutral set, as they can be
	Trial   balance.Trial
}

// keeps words whether the boats of which something comes out keep their shape.
func (n nest) keeps(s *stow.Stack) []report.Block {
	var items []string
	for i, b := range s.Boats {
		for _, k := range n.sprung {
			if k.Title != b.Title || len(s.TakenOut(i)) == 0 {
				continue
			}
			set := "its ribs in the neutral set"
			if !k.Neutral {
				set = "its ribs unset, for it has no neutral set"
			}
			over := k.Trial.Band.Over()
			items = append(items, fmt.Sprintf("%s, %s: its beam %s; at the worst it becomes %s narrower or %s wider.", s.Name(i), set, likely(over, n.Letters), n.Length(-over.Least), n.Length(over.Most)))
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []report.Block{report.Say("Whether they keep their shape, for rib heads from tight to loose, stringer ends steamed or forced and cloth from slack to taut:"), report.List{Items: items}}
}

// small letters what lacks or is asked for, never less than it is to the millimeter: boats
// are not built closer.
func (n nest) small(mm float64) string {
	return report.Either(n.Units, n.Length(math.Ceil(mm-0.01)), n.Length(mm))
}

func (n nest) cell(mm float64) string {
	if math.IsInf(mm, 0) {
		return "ample"
	}
	return n.Whole(mm)
}

func (n nest) verdict() []report.Block {
	verdict, state := "they nest, one in the other", "out"
	if !n.Stack.Nests {
		verdict = "they do NOT all nest"
	}
	if n.Options.LeftIn {
		state = "left in"
	}
	if len(n.Options.Out) > 0 {
		state += ", but for " + strings.Join(n.Options.Out, ", ")
	}
	names := wording.List(n.Stack.Boats, func(b *stow.Boat) string { return b.Title })
	return []report.Block{report.Say("From the outermost in: %s: %s.", names, verdict),
		report.Say("Cross pieces and seats of the lower boats are %s. Room asked for between wood and cloth: %s, as pads on the floor and free at the sides.", state, n.small(n.Options.Pad))}
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
	return listed("Where it fails", items)
}

// proposed tells of the smaller boats, where they were asked for.
func (n nest) proposed() []report.Block {
	if n.After == nil {
		return nil
	}
	out := []report.Block{report.Section("Proposed")}
	for i, b := range n.Proposed {
		if b == nil {
			continue
		}
		was, now := n.Stack.Pairs[i].Upper.Frame.Design.Hull, b.Frame.Design.Hull
		out = append(out, report.Say("%s: beam %s (was %s), length %s (was %s); it lofts.", b.Title, n.Length(float64(now.Beam)), n.Length(float64(was.Beam)), n.Length(float64(now.Length)), n.Length(float64(was.Length))),
			report.Caution{Words: "A narrower boat is tippier and carries less: try it afloat on paper before you build.", Says: "arithmetic"})
	}
	verdict := "nests"
	if !n.After.Nests {
		verdict = "does NOT nest"
	}
	return append(out, report.Say("With that the fleet %s: %s high, %s long, %s.", verdict, n.Length(n.After.Height), n.Length(n.After.Length), n.Mass(n.After.Mass)))
}

func (n nest) room() []report.Block {
	t := report.Titled("Least room, "+n.Unit()).Words("Boat in boat").Numbers("Floor", "Sides", "Ends", "Keel up", "Shift").Names("Nests").Noted("Keel up: the upper boat's baseline over the lower one's. Shift: its midship forward of the lower one's. Ample: over 60 mm (2 3/8 in).")
	for i, q := range n.Stack.Pairs {
		name, nests := n.Stack.Name(i+1)+" in "+n.Stack.Name(i), "yes"
		if q.Place.Turned {
			name += ", turned end for end"
		}
		if !q.Nests {
			nests = "NO"
		}
		t.Row(name, n.cell(q.Rooms[stow.Floor].Room), n.cell(q.Rooms[stow.Sides].Room), n.cell(q.Rooms[stow.Ends].Room), n.cell(q.Place.Z), n.cell(q.Place.X), nests)
	}
	return under(t)
}

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
	return listed("First contact, lowered without pads", items)
}

// listed is a section of items, nothing without any.
func listed(title string, items []string) []report.Block {
	if len(items) == 0 {
		return nil
	}
	return []report.Block{report.Section(title), report.List{Items: items}}
}

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
		case len(b.Frame.Thwarts)+len(b.Frame.Seats) == 0:
			what = "it has no thwarts and no seats"
		case what == "":
			what = "nothing"
		}
		items = append(items, s.Name(i)+": "+what+".")
	}
	out := append([]report.Block{report.Section("What must come out" + as), report.List{Items: items}}, n.keeps(s)...)
	return append(out, report.Caution{Words: "Gunwales spring when their cross pieces are out: put a spreader of their length back on top, or measure the beam again, before you trust the room above.", Says: practice})
}

// stack tells how large and heavy the nest is, whether it keeps to its limits, and how
// to lift, tie and drive it.
func (n nest) stack() []report.Block {
	s, title := n.Stack, "The stack"
	if n.After != nil {
		title = "The stack, of the boats as they are"
	}
	masses := wording.List(s.Boats, func(b *stow.Boat) string { return b.Title + " " + n.Mass(b.Mass) })
	out := []report.Block{report.Section(title),
		report.Say("%s high, %s wide, %s long; %s in all, estimated from wood and cloth: %s.", n.Length(s.Height), n.Length(s.Width), n.Length(s.Length), n.Mass(s.Mass), masses)}
	out = append(append(out, n.roof()...), n.door()...)
	return append(out,
		report.Caution{Words: fmt.Sprintf("Lifting: %s is %s each for two and %s each for four. Carry boats one by one and nest them where they will lie; a nest slides apart when tipped, and fingers are under it.", n.Mass(s.Mass), n.Mass(s.Mass/2), n.Mass(s.Mass/4)), Says: practice},
		report.Caution{Words: "Roof: the vehicle's and the bars' own limits hold, the lower of them, with bars and straps counted. Strap every boat to the bars and not only to the next, tie bow and stern down, and stop after the first minutes to look. A nest standing open side up fills with wind and rain: cover it. Turned over, every boat must be tied into the one around it.", Says: practice},
		report.Caution{Words: "Wind: a nest is as high as several boats. In gusts or at speed it lifts and slews; slow down, or leave it.", Says: practice})
}

func (n nest) roof() []report.Block {
	l := n.Limits.Roof
	if l <= 0 {
		return nil
	}
	if over := n.Over(); over > 0 {
		return []report.Block{report.Caution{Words: fmt.Sprintf("Roof: %s OVER the %s given, before bars and straps are counted.", n.Mass(over), n.Mass(l))}}
	}
	return []report.Block{report.Say("Roof: %s left of the %s given, before bars and straps are counted.", n.Mass(-n.Over()), n.Mass(l))}
}

func (n nest) door() []report.Block {
	l := n.Limits.Door
	if l <= 0 {
		return nil
	}
	switch level, side := n.Through(); {
	case level:
		return []report.Block{report.Say("Door of %s: goes through level.", n.Length(l))}
	case side:
		return []report.Block{report.Say("Door of %s: too wide level; goes through on its side, strapped together.", n.Length(l))}
	}
	return []report.Block{report.Caution{Words: fmt.Sprintf("Door of %s: does NOT go through, level or on its side.", n.Length(l))}}
}
