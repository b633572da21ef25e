package pattern

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"ribwright/geometry/boat/frame"
	"ribwright/geometry/marks"
	"ribwright/geometry/measure"
	"ribwright/geometry/trial/bend"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// Ribs says on what ribs are drawn to be marked.
type Ribs int

// The ways.
const (
	Strips Ribs = iota // a strip for each rib, as wide as the rib
	Stick              // all ribs on one stick, a lane each
)

// String is the way's name.
func (r Ribs) String() string { return [...]string{"strips", "stick"}[r] }

const (
	laneFoot = 1.5 // under the last of them, mm
	laneAir  = 1.5 // by which its edge reaches past its last words, mm
	laneOff  = 1.5 // by which joints keep off a mark, mm: nearer it goes with the cut, or is taken for it
	laneTold = 150 // how far from the middle a lane's own words may reach, mm; no joint cuts them
)

// RibStick draws half of every rib on one stick, x from the ribs' common middle out to the
// blank's end. Each lane is marked from its upper edge. The lanes stand in the order of
// work, midship on top, so that they are used and cut off from there; ribs change little
// from one to the next, and a wrong mark shows as a line that is not fair across lanes.
func RibStick(b *bend.Report, units measure.System) layout.Drawing {
	d := layout.Drawing{Name: "ribs", Title: "Rib stick", Stacked: true,
		Make: "half of every rib, turn over at 0; a lane each, marked along its upper edge, cut off when done; B bend begins or ends, S stringer; shoulder: saw nothing there; all in " + figuresIn(units)}
	alike, y, block, end := slackAlike(b, units), 0.0, 0.0, 0.0
	if alike != nil {
		d.Make += "; " + strings.Join(alike, ", ")
	}
	for _, g := range b.Frame.RibGroups {
		told := wayOf(b, g, units)
		if alike == nil {
			told = append(told, slackOf(b, g, units)...)
		}
		if block-y > blockHigh {
			y -= bandHigh
			block = y
		}
		y -= ribLane(&d, g, told, y, units)
		d.KeepUp = inBlocks(d.KeepUp, block, y)
		end = math.Max(end, g.Rib.Blank/2)
	}
	d.Whole = append(d.Whole, layout.Span{From: -3, To: laneTold + 1})
	d.Straight(layout.Center, 0, laneRow, 0, y)
	d.Write(1.2, 1.2, small, layout.Left, "0, middle of all ribs")
	d.Straight(layout.Tick, 0, y, end+3, y)
	tape(&d, units, 0, end, y)
	return d
}

// Lanes stand in blocks that any paper holds, with a blank band between two of them: a
// joint goes along its middle, so that its crosses lie on no words.
const (
	blockHigh = 140.0 // after so much, mm, the next lane begins a block
	bandHigh  = 13.0
)

// inBlocks adds to what should stay whole the lane that ends at y: it grows the block that
// began at top, and a joint's crosses keep off it.
func inBlocks(all []layout.Span, top, y float64) []layout.Span {
	const clear = bandHigh/2 - 0.5
	if n := len(all); n > 0 && all[n-1].To == top+clear {
		all = all[:n-1]
	}
	return append(all, layout.Span{From: y - clear, To: top + clear})
}

// figuresIn says in what the figures of a stick are.
func figuresIn(units measure.System) string {
	if units == measure.Imperial {
		return "inches (mm)"
	}
	return "mm"
}

// figure letters a place on a stick, whose unit stands in its heading.
func figure(units measure.System, mm float64) string {
	if units == measure.Imperial {
		return strings.TrimSuffix(measure.Sixteenths(mm), " in") + " (" + measure.MM(mm, 1) + ")"
	}
	return measure.MM(mm, 1)
}

// ribLane draws the lane of a group of ribs under an edge and returns its height, mm.
func ribLane(d *layout.Drawing, g frame.Group, told []string, top float64, units measure.System) float64 {
	r := g.Rib
	names := lettering.Safe(strings.Join(g.Names, " "))
	var l hanging
	l.marks(r, names, units)
	l.stack()
	d.Straight(layout.Mark, 0, top, l.reach()+laneAir, top)
	rowAt := func(row int) float64 { return top - laneRow*float64(row+1) + 0.1 }
	for _, m := range l.all {
		d.Straight(m.pen, m.x, top, m.x, rowAt(m.row))
		align, at := layout.Left, m.x+labelOff
		if m.before {
			align, at = layout.Right, m.x-labelOff
		}
		d.Write(at, rowAt(m.row), small, align, m.words)
		from, to := m.covers()
		d.Keep = append(d.Keep, layout.Span{From: from - 2, To: to + 2})
		d.Whole = append(d.Whole, layout.Span{From: m.x - laneOff, To: m.x + laneOff})
	}
	d.Write(1.5, top-1.2-name, name, layout.Left, names)
	from := 1.5 + lettering.Width(names, name) + 3
	high := laneRow*float64(l.tell(d, told, from, rowAt)) + laneFoot
	return high
}

// wayOf says how many ribs of a group are made, how long, and how they are bent.
func wayOf(b *bend.Report, g frame.Group, units measure.System) []string {
	r := g.Rib
	out := []string{fmt.Sprintf("make %d, blank %s", len(g.Names), units.Fine(r.Blank))}
	then := "radius "
	for i, a := range r.Section.Half {
		if a.Radius > 0 {
			out, then = append(out, then+units.Fine(a.Radius)+form(b, r, i, units)), "then "
		}
	}
	if widths := setTo(b, g, units); widths != "" {
		out = append(out, widths)
	}
	return out
}

// slackOf says how true the marks of a group must be.
func slackOf(b *bend.Report, g frame.Group, units measure.System) []string {
	var out []string
	if slack := within(marks.BilgeSlack(g.Rib), units); slack != "" {
		out = append(out, "bends"+slack)
	}
	if slack := within(marks.ShoulderSlack(b.Frame), units); slack != "" {
		out = append(out, "shoulder"+slack)
	}
	return out
}

// slackAlike says the same where it holds for all groups, to be said once; nil where it
// does not.
func slackAlike(b *bend.Report, units measure.System) []string {
	all := b.Frame.RibGroups
	first := slackOf(b, all[0], units)
	for _, g := range all[1:] {
		if !slices.Equal(slackOf(b, g, units), first) {
			return nil
		}
	}
	return first
}

// hanging are the marks of one lane with their words, each beside its mark.
type hanging struct{ all []hung }

type hung struct {
	x, wide float64
	pen     layout.Pen
	words   string
	row     int  // 0 is the highest; the mark hangs down to it
	before  bool // the words stand on the mark's side of the middle
}

// covers is the stretch that a mark and its words take.
func (m hung) covers() (from, to float64) {
	if m.before {
		return m.x - labelOff - m.wide, m.x
	}
	return m.x, m.x + labelOff + m.wide
}

// reach is how far out the marks and their words reach, mm: so far goes the lane's edge, that
// no words stand under the lane before.
func (l *hanging) reach() float64 {
	out := 0.0
	for _, m := range l.all {
		_, to := m.covers()
		out = math.Max(out, to)
	}
	return out
}

func (l *hanging) add(pen layout.Pen, x float64, words string) {
	words = lettering.Safe(words)
	l.all = append(l.all, hung{x: x, wide: lettering.Width(words, small), pen: pen, words: words})
}

// marks notes every mark of half a rib with its number.
//
// Where the lane's own words do not reach, marks of stringers and the shoulder carry the
// ribs' names, so that every piece of the stick has them.
func (l *hanging) marks(r frame.Rib, names string, units measure.System) {
	mark := func(pen layout.Pen, x float64, words string) { l.add(pen, x, words+" "+figure(units, x)) }
	named := func(pen layout.Pen, x float64, words string) {
		if x > laneTold {
			words = names + " " + words
		}
		mark(pen, x, words)
	}
	for _, at := range r.BendMarks {
		mark(layout.Mark, at, "B")
	}
	for i, at := range r.StringerMarks {
		named(layout.Mark, at, fmt.Sprintf("S%d", i+1))
	}
	shoulder := r.Length / 2
	named(layout.Cut, shoulder, "shoulder")
	mark(layout.Cut, shoulder+r.Tenon, "tenon")
	mark(layout.Mark, r.Blank/2, "end")
	sort.SliceStable(l.all, func(i, j int) bool { return l.all[j].x < l.all[i].x })
}

// stack gives every label, from the outermost in, the highest row in which it meets no
// other label and no mark.
func (l *hanging) stack() {
	for i := range l.all {
		m := &l.all[i]
		for m.row = 0; !l.fits(i) && m.row < len(l.all); m.row++ {
			if m.before = true; l.fits(i) {
				break
			}
			m.before = false
		}
	}
}

// fits reports whether mark i, as it is, is clear of the marks farther out. Words on the
// inner side must reach over no mark at all.
func (l *hanging) fits(i int) bool {
	m := l.all[i]
	from, to := m.covers()
	for k, o := range l.all {
		if k == i || k > i && !m.before {
			continue
		}
		if k > i {
			if o.x > from-labelOff {
				return false
			}
			continue
		}
		low, high := o.covers()
		if o.before {
			high -= labelOff
		} else {
			low += labelOff
		}
		sameRow := o.row == m.row && low < to+labelGap && high > from-labelGap
		overMark := o.row >= m.row && o.x > from-labelOff && o.x < to+labelOff
		throughWords := m.row > o.row && m.x > low-labelOff/2 && m.x < high+labelOff/2
		if sameRow || overMark || throughWords {
			return false
		}
	}
	return true
}

// tell letters sentences in rows between a place and the first mark, as many on a row as
// fit, and returns how many rows the lane takes, two at least: the name is as high.
func (l *hanging) tell(d *layout.Drawing, sentences []string, from float64, rowAt func(int) float64) int {
	rows := 2
	for _, m := range l.all {
		rows = max(rows, m.row+1)
	}
	end := func(row int) float64 {
		to := float64(laneTold)
		for _, m := range l.all {
			if low, _ := m.covers(); m.row >= row {
				to = math.Min(to, low-labelGap)
			}
		}
		return to
	}
	row, at := 0, from
	for _, words := range sentences {
		words = lettering.Safe(words)
		wide := lettering.Width(words, small)
		for at+wide > end(row) && row < rows+len(sentences) {
			row++
			if at = from; row > 1 {
				at = 1.5
			}
		}
		d.Write(at, rowAt(row), small, layout.Left, words)
		at += wide + labelGap
	}
	return max(rows, row+1)
}
