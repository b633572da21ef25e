// Package fleet writes what was found of boats put into one another as a page for a
// terminal.
package fleet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"ribwright/geometry/measure"
	"ribwright/geometry/trial/stow"
	"ribwright/layout/terminal"
)

// Page writes the report to be read on a terminal, lengths in the units asked for.
//
// Errors: the writer's own.
func Page(w io.Writer, r *stow.Report, units measure.System) error {
	p := &page{Page: terminal.Page{Units: units}, r: r}
	p.heading()
	p.table()
	p.contacts()
	p.out()
	p.failures()
	p.fitted()
	p.stack()
	p.caution()
	_, err := p.WriteTo(w)
	return err
}

type page struct {
	terminal.Page
	r *stow.Report
}

// fine letters a small room or lack of it.
func (p *page) fine(mm float64) string {
	switch {
	case math.IsInf(mm, 0):
		return "ample"
	case p.Units == measure.Imperial:
		return measure.FeetInches(mm)
	}
	return measure.MM(mm, 1)
}

func (p *page) name(i int) string { return p.r.Stack.Name(i) }

func (p *page) heading() {
	s := p.r.Stack
	verdict := "they nest, one in the other"
	if !s.Nests {
		verdict = "they do NOT all nest"
	}
	names := make([]string, len(s.Boats))
	for i, b := range s.Boats {
		names[i] = b.Title
	}
	p.Say("From the outermost in: %s: %s.", strings.Join(names, ", "), verdict)
	state := "Thwarts, yoke and seat bars of the lower boats are out."
	if p.r.Options.LeftIn {
		state = "Thwarts, yoke and seat bars of the lower boats are left in."
	}
	p.Say("%s Room asked for between wood and cloth: %s, as pads on the floor and free at the sides.", state, p.fine(p.r.Options.Pad)+p.unit())
	p.Line("")
}

// unit is what fine leaves unsaid.
func (p *page) unit() string {
	if p.Units == measure.Imperial {
		return ""
	}
	return " mm"
}

func (p *page) table() {
	p.Line("%-32s %8s %8s %8s %9s %9s", "LEAST ROOM"+strings.Replace(p.unit(), " ", ", ", 1), "floor", "sides", "ends", "keel up", "shift")
	for i, q := range p.r.Stack.Pairs {
		mark := " "
		if !q.Nests {
			mark = "!"
		}
		p.Line("%s%-31s %8s %8s %8s %9s %9s", mark, clip(p.name(i+1)+" in "+p.name(i), 31), p.fine(q.Rooms[stow.Floor].Room),
			p.fine(q.Rooms[stow.Sides].Room), p.fine(q.Rooms[stow.Ends].Room), p.fine(q.Place.Z), p.fine(q.Place.X))
		if q.Place.Turned {
			p.Line("   turned end for end")
		}
	}
	p.Say("Keel up: the upper boat's baseline over the lower one's. Shift: its midship forward of the lower one's. Ample: over 60 mm (2 3/8 in).")
	p.Line("")
}

// clip shortens a name to the width of its column.
func clip(s string, n int) string {
	r := []rune(s)
	if len(r) > n {
		return string(r[:n-3]) + "..."
	}
	return s
}

func (p *page) contacts() {
	p.Line("LOWERED WITHOUT PADS, first contact")
	for i, q := range p.r.Stack.Pairs {
		if !q.First.Meets() {
			continue
		}
		p.Say("  %s: %s meets %s of %s at station %s, with the keel %s up.", p.name(i+1), q.First.Upper.Name, q.First.Lower.Name, p.name(i), p.Length(q.First.At.X), p.Length(q.Touch))
		if c := q.Rooms[stow.Sides]; c.Meets() {
			p.Say("    Least room at the sides: %s by %s at station %s.", c.Upper.Name, c.Lower.Name, p.Length(c.At.X))
		}
	}
	p.Line("")
}

func (p *page) out() {
	if p.r.Options.LeftIn {
		return
	}
	s, as := p.r.Stack, ""
	switch {
	case p.r.After != nil:
		s, as = p.r.After, ", with the boats proposed"
	case !s.Nests:
		as = ", as the boats lie now"
	}
	p.Line("WHAT MUST COME OUT%s", as)
	for i := range s.Boats {
		names := s.TakenOut(i)
		name := fmt.Sprintf("%d %s", i+1, s.Boats[i].Title)
		switch {
		case len(s.Boats[i].Frame.Thwarts) == 0:
			p.Say("  %s: it has no thwarts.", name)
		case len(names) == 0:
			p.Say("  %s: nothing.", name)
		default:
			p.Say("  %s: %s.", name, strings.Join(names, "; "))
		}
	}
	p.Say("Gunwales spring when their thwarts are out: put a spreader of the thwart's length back on top, or measure the beam again, before you trust the room above.")
	p.Line("")
}

func (p *page) failures() {
	if p.r.Stack.Nests {
		return
	}
	p.Line("WHERE IT FAILS")
	for _, f := range p.r.Failures(p.Length, func(mm float64) string { return p.fine(mm) + p.unit() }) {
		p.Say("  %s %s.", f.About, f.Text)
		if f.Cure != "" {
			p.Say("    cured by: %s.", f.Cure)
		}
	}
	p.Line("")
}

func (p *page) fitted() {
	if p.r.After == nil {
		return
	}
	p.Line("PROPOSED")
	for i, b := range p.r.Proposed {
		if b == nil {
			continue
		}
		was, now := p.r.Stack.Pairs[i].Upper.Frame.Design.Hull, b.Frame.Design.Hull
		p.Say("  %s: beam %s (was %s), length %s (was %s); it lofts. A narrower boat is tippier and carries less: try it afloat on paper before you build.",
			b.Title, p.Length(float64(now.Beam)), p.Length(float64(was.Beam)), p.Length(float64(now.Length)), p.Length(float64(was.Length)))
	}
	a := p.r.After
	verdict := "nests"
	if !a.Nests {
		verdict = "does NOT nest"
	}
	p.Say("  With that the fleet %s: %s high, %s long, %s.", verdict, p.Length(a.Height), p.Length(a.Length), p.Kilos(a.Mass))
	p.Line("")
}

func (p *page) stack() {
	s := p.r.Stack
	if p.r.After != nil {
		p.Line("THE STACK, of the boats as they are")
	} else {
		p.Line("THE STACK")
	}
	p.Say("  %s high, %s wide, %s long.", p.Length(s.Height), p.Length(s.Width), p.Length(s.Length))
	masses := make([]string, len(s.Boats))
	for i, b := range s.Boats {
		masses[i] = fmt.Sprintf("%s %s", b.Title, p.Kilos(b.Mass))
	}
	p.Say("  %s in all, estimated from wood and cloth: %s.", p.Kilos(s.Mass), strings.Join(masses, ", "))
	if l := p.r.Limits.Roof; l > 0 {
		if over := p.r.Over(); over > 0 {
			p.Say("! Roof: %s OVER the %s given, before bars and straps are counted.", p.Kilos(over), p.Kilos(l))
		} else {
			p.Say("  Roof: %s left of the %s given, before bars and straps are counted.", p.Kilos(-over), p.Kilos(l))
		}
	}
	if l := p.r.Limits.Door; l > 0 {
		level, side := p.r.Through()
		switch {
		case level:
			p.Say("  Door of %s: goes through level.", p.Length(l))
		case side:
			p.Say("  Door of %s: too wide level; goes through on its side, strapped together.", p.Length(l))
		default:
			p.Say("! Door of %s: does NOT go through, level or on its side.", p.Length(l))
		}
	}
	p.Line("")
}

func (p *page) caution() {
	s := p.r.Stack
	p.Say("LIFTING: %s is %s each for two and %s each for four. Carry boats one by one and nest them where they will lie; a nest slides apart when tipped, and fingers are under it.", p.Kilos(s.Mass), p.Kilos(s.Mass/2), p.Kilos(s.Mass/4))
	p.Say("ROOF: the vehicle's and the bars' own limits hold, the lower of them, with bars and straps counted. Strap every boat to the bars and not only to the next, tie bow and stern down, and stop after the first minutes to look. A nest standing open side up fills with wind and rain: cover it. Turned over, every boat must be tied into the one around it.")
	p.Say("WIND: a nest is as high as several boats. In gusts or at speed it lifts and slews; slow down, or leave it.")
	p.Say("Everything is worked out from the designs as drawn, to no better than you build: try the nest by hand before you count on it. Local law comes first; nothing here certifies a load.")
}
