package tile

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// The size of paper that the first sheet is meant for: on larger paper it leaves the rest
// to patterns, mm.
const (
	frontWide  = 200.0
	frontHigh  = 255.0
	frontLarge = 1.4 // times that area is large paper
	nameHigh   = 6.0 // capitals of the boat's name, mm
)

// overCapitals is how far letters such as k reach over the capitals, as a share of their
// height, and somewhat more.
const overCapitals = 0.1

// frontOf is the part of the first sheet that its words take: in from the margins, so that
// neither the bold line of a frame nor a tall letter stands on them.
func frontOf(room geometry.Box) geometry.Box {
	room.Min.X += layout.Cut.Width() / 2
	room.Max.X -= gap // words end here, and figures of the scale bar begin a gap farther on
	room.Max.Y -= overCapitals * nameHigh
	if room.W()*room.H() > frontLarge*frontWide*frontHigh {
		room.Max.X = min(room.Max.X, room.Min.X+frontWide)
		room.Min.Y = max(room.Min.Y, room.Max.Y-frontHigh)
	}
	return room
}

// boatHighs are the heights that the picture of the boat is tried with, mm, until all goes
// on one sheet.
var boatHighs = [...]float64{34, 26, 18, 14, 12, 10, 0}

// cover draws the sheets that come before the patterns: none for a set without.
func (p plan) cover(set Set) (out []layout.Sheet) {
	if set.First == nil {
		return nil
	}
	for _, most := range boatHighs {
		if out = p.front(set, most); len(out) == 1 {
			break
		}
	}
	return out
}

// covers is how many those are: a picture takes room and gives none, so that what goes on one
// sheet with it does so without.
func (p plan) covers(set Set) int {
	if set.First == nil {
		return 0
	}
	return len(p.front(set, 0))
}

// front draws them with a picture of at most the given height.
func (p plan) front(set Set, most float64) []layout.Sheet {
	room := frontOf(p.room)
	var head layout.Sheet
	f := newFlow(room, title(&head, set, room, most))
	f.sheets[0] = head
	codes := set.First.Codes
	if set.Last != nil && !p.sheet.Size.Roll {
		codes = strings.TrimSpace(fmt.Sprintf("%s Sheet %d: %s.", codes, p.count+1, set.LastTitle))
	}
	f.index(p.uses(), codes)
	f.steps()
	if len(set.First.Checks) > 0 {
		f.checks(append(append([]layout.Check(nil), set.First.Checks...), p.distances()...))
	}
	f.card()
	if len(set.First.Found) > 0 {
		f.section("What was found", set.First.Found)
	}
	for _, n := range set.First.Notes {
		f.section(n.Heading, n.Lines)
	}
	if len(set.First.Cautions) > 0 {
		f.boxed("Cautions", set.First.Cautions)
	}
	f.legend()
	return f.sheets
}

// title draws the name and the boat, beside it where there is room; it returns how much of
// the room's height they take.
func title(s *layout.Sheet, set Set, room geometry.Box, most float64) float64 {
	const under = 2.0
	size, called := headingFit(set.Title, room.W())
	whom, wide, high := lettering.Wrap(set.For, small, room.W()), 0.0, 0.0
	for i, l := range slices.Concat(called, whom) {
		tall, step := size, nameLead*size
		if i >= len(called) {
			tall, step = small, leading
		}
		if i == 0 {
			step = size
		}
		high, wide = high+step, max(wide, lettering.Width(l, tall))
		s.Write(geometry.Point{X: room.Min.X, Y: room.Max.Y - high}, tall, layout.Left, l)
	}
	high += 2.5
	if set.First.Boat == nil || most == 0 {
		return high
	}
	boat := set.First.Boat()
	b := boat.Bounds()
	if b.Empty() {
		return high
	}
	k := min(room.W()/b.W(), most/b.H())
	left, down := room.Min.X+(room.W()-k*b.W())/2, high
	if k*b.W() < room.W()-wide-columnGap {
		left, down = room.Max.X-k*b.W(), 0
	}
	at := geometry.Stretch(k, k).Then(geometry.Shift(left-k*b.Min.X, room.Max.Y-down-k*b.Max.Y))
	for _, l := range boat.Strokes {
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: l.Pen, Path: l.Path.Map(at)})
	}
	return max(high, down+k*b.H()+under)
}

// nameLead is the distance between lines of a name, as a share of its letters.
const nameLead = 1.5

// headingFit sets a name in letters as large as let it stand in one line, else in lines of
// the smallest of them.
func headingFit(name string, room float64) (size float64, lines []string) {
	for _, size = range []float64{nameHigh, 5, what, small} {
		if lines = lettering.Wrap(name, size, room); len(lines) < 2 {
			break
		}
	}
	return size, lines
}

// index lists the patterns in the order of work with their sheets, and what the codes on
// them mean.
func (f *flow) index(uses []use, codes string) {
	f.heading("What to make, in this order", 2*leading)
	for i, u := range uses {
		f.entry(i+1, lettering.Safe(u.title), u.where())
	}
	if codes == "" {
		return
	}
	for _, l := range lettering.Wrap(lettering.Safe(codes), small, f.wide) {
		f.need(leading)
		f.sheet().Write(geometry.Pt(f.left, f.y-small), small, layout.Left, l)
		f.y -= leading
	}
}

// entry letters a pattern of the index, its sheets on the right: a long list of them takes
// up to half of the width, and goes on in lines below.
func (f *flow) entry(number int, title, where string) {
	wide := f.wide - 6 - 3
	room := math.Max(wide-lettering.Width(where, small), math.Min(lettering.Width(title, small), wide/2))
	left, right := lettering.Wrap(title, small, room), lettering.Wrap(where, small, wide-room+1e-6)
	rows := max(len(left), len(right))
	f.need(float64(rows) * leading)
	s := f.sheet()
	s.Write(geometry.Pt(f.left+4, f.y-small), small, layout.Right, fmt.Sprint(number))
	for i := range rows {
		if i < len(left) {
			s.Write(geometry.Pt(f.left+6, f.y-small), small, layout.Left, left[i])
		}
		if i < len(right) {
			s.Write(geometry.Pt(f.left+f.wide, f.y-small), small, layout.Right, right[i])
		}
		f.y -= leading
	}
}

// checks lists lengths with an empty column for what the tape finds.
func (f *flow) checks(checks []layout.Check) {
	const measured = 22.0
	f.heading("Check with a tape before you cut", 4*leading)
	f.sheet().Write(geometry.Pt(f.left+f.wide-measured+1.5, f.y-small), small, layout.Left, "measured")
	f.sheet().Write(geometry.Pt(f.left, f.y-small), small, layout.Left, "off by over 1 mm in 3 m: a joint slipped")
	f.y -= leading + 0.6
	for _, c := range checks {
		lines := lettering.Wrap(lettering.Safe(c.What+": "+c.Is), small, f.wide-measured-2)
		high := float64(len(lines))*leading + 1
		f.panel(high, func(s *layout.Sheet, at geometry.Point) {
			right := at.X + f.wide // the row may begin the next column
			for i, l := range lines {
				s.Write(at.Add(geometry.Pt(0, -small-0.9-leading*float64(i))), small, layout.Left, l)
			}
			s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Tick, Path: curve.Rectangle(geometry.Rect(right-measured, at.Y-high, right, at.Y))})
			s.Line(layout.Tick, at.Add(geometry.Pt(0, -high)), geometry.Pt(right-measured, at.Y-high))
		})
	}
}

// The outline of a bank card, mm, and the radius of its corners: ISO/IEC 7810, ID-1.
const (
	cardLong  = 85.60
	cardHigh  = 53.98
	cardRound = 3.18
)

// card draws the outline of a bank card. Laid on it a card leaves half the line to be seen
// all round; a sheet that is printed 3 % too small it hides whole.
func (f *flow) card() {
	f.heading("Is this sheet 100 %? Lay a bank card here", cardHigh+1)
	f.panel(cardHigh+1, func(s *layout.Sheet, at geometry.Point) {
		low := at.Add(geometry.Pt(min(1, f.wide-cardLong)/2, -cardHigh-0.5))
		if f.beside() {
			s.Write(geometry.Pt(low.X+cardLong+3, at.Y-small-1), small, layout.Left, "Lines")
			for i, p := range layout.Pens() {
				explain(s, p, geometry.Pt(low.X+cardLong+3, at.Y-small-2-leading*1.3*float64(i+1)))
			}
		}
		s.Strokes = append(s.Strokes, layout.Stroke{Pen: layout.Cut, Path: curve.Rounded(geometry.Box{Min: low, Max: low.Add(geometry.Pt(cardLong, cardHigh))}, cardRound)})
		y := low.Y + cardHigh - 12
		for _, words := range []string{
			"Good: the line shows all round.",
			"Bad: the card hides the line: fitted to page. Print at 100 %.",
			"Bad: white shows between card and line.",
		} {
			for _, l := range lettering.Wrap(words, small, cardLong-12) {
				s.Write(geometry.Pt(low.X+6, y), small, layout.Left, l)
				y -= leading
			}
			y -= 2
		}
	})
}

// beside reports whether the lines are explained beside the card.
func (f *flow) beside() bool { return f.wide > cardLong+40 }

// legend says what each line means, two in a row, unless that stands beside the card.
func (f *flow) legend() {
	if f.beside() {
		return
	}
	pens := layout.Pens()
	rows := (len(pens) + 1) / 2
	f.heading("Lines", float64(rows)*leading)
	f.panel(float64(rows)*leading, func(s *layout.Sheet, at geometry.Point) {
		for i, p := range pens {
			explain(s, p, geometry.Pt(at.X+f.wide/2*float64(i/rows), at.Y-leading*float64(i%rows)-small))
		}
	})
}

// explain draws a line and says what it means.
func explain(s *layout.Sheet, p layout.Pen, at geometry.Point) {
	long := max(11, period(p)+1) // its dashes begin once more; two of them stand in a column
	s.Line(p, at.Add(geometry.Pt(0, 1.2)), at.Add(geometry.Pt(long, 1.2)))
	s.Write(at.Add(geometry.Pt(long+1.5, 0)), small, layout.Left, meaning(p))
}

func meaning(p layout.Pen) string {
	return [...]string{
		layout.Cut:    "cut along its middle",
		layout.Mark:   "mark on the wood",
		layout.Long:   "mark, too",
		layout.Center: "a middle line",
		layout.Guide:  "helps; at a joint: cut",
		layout.Tick:   "ticks and crosses",
	}[p]
}
