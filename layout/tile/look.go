package tile

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/lettering"
)

// look is one way for a piece to stand on a sheet with its heading, in lines that are as
// long as a given width allows.
type look struct {
	wide, high float64 // of the box round both, mm
	taken      float64 // of the sheet's width: more where it leaves less than a stub
	lines      float64 // the most that a line of the heading may take, mm
	long       float64 // what its longest line takes, where it stands outside the piece, mm
	heads      heads
	at         geometry.Point // of a heading within: its lower left corner, in the drawing's coordinates
	turned     bool           // whether the piece lies turned
}

// heads says where a heading stands.
type heads int

const (
	over   heads = iota
	within       // where the pattern leaves that blank
	behind       // to the piece's right
	along        // along its side, read from the right: on the left, on the right where the left is cut, or over a piece that lies turned
)

// area is the room that a look takes, with the room for scissors.
func (l look) area() float64 { return (l.wide + pieceGap) * (l.high + pieceGap) }

// inner is the air round a heading within a piece, mm: it is not to be taken for words
// that belong to a line.
const inner = 2.0

// blankStep is how far apart places for a heading within a piece are tried, mm.
const blankStep = 3.0

// stub is a rest of the sheet's length that no piece is laid on, mm.
const stub = 45.0

// sized gives pieces the looks that they can have.
func (p plan) sized(pieces []piece) []piece {
	for i := range pieces {
		pieces[i].pattern = p.pattern(pieces[i].drawing)
		pieces[i].looks = p.looks(pieces[i])
	}
	return pieces
}

// looks lists how a piece can stand, the smallest first; each is lower or narrower than
// all before. A strip that leaves less than a stub of the sheet's length takes all of it,
// so that strips may change places.
func (p plan) looks(k piece) []look {
	if l, ok := p.known.within(k, p.units); ok {
		return p.taking(k, []look{l})
	}
	return p.taking(k, p.known.around(k, p.units, p.room.W()))
}

// taking settles how much of the sheet's width looks take, in a list of its own.
func (p plan) taking(k piece, out []look) []look {
	full, _ := p.roomOf(k.cutting)
	out = slices.Clone(out)
	for i, l := range out {
		if out[i].taken = l.wide; k.grid.rows() == 1 && k.grid.cols() > 1 && l.wide > full-stub && l.wide < full {
			out[i].taken = full
		}
	}
	return out
}

// around lists the looks with the heading outside the piece.
func (p piece) around(u measure.System, room float64) []look {
	says, headed := p.says(u), p.headings(u)
	title, which, do := lettering.Width(says[0], what), lettering.Width(says[1], small), lettering.Width(says[2], small)
	all := make([]look, 0, 30)
	for _, w := range []float64{p.frame.W(), p.frame.H() - p.cutTop(), title, which, title + between + which, title + 2*between + which + do, 60, 80, 110, room} {
		long, head := headed(w)
		short, first := long, head
		if p.cutLeft() > 0 {
			short, first = headed(w - p.cutLeft())
		}
		all = append(all, p.headedAt(over, w-p.cutLeft(), short, first), p.headedAt(along, w, long, head), p.headedAt(behind, w, long, head))
	}
	all = slices.DeleteFunc(all, func(l look) bool { return l.wide > math.Max(room, p.frame.W())+closeEnough })
	if whole := slices.DeleteFunc(slices.Clone(all), p.cutInto); len(whole) > 0 {
		all = whole
	}
	slices.SortStableFunc(all, func(a, b look) int { return cmp.Compare(math.Round(a.area()), math.Round(b.area())) })
	var out []look
	for _, l := range all {
		if !slices.ContainsFunc(out, func(o look) bool { return o.wide <= l.wide+closeEnough && o.high <= l.high+closeEnough }) {
			out = append(out, l)
		}
	}
	return out
}

// headedAt is the look with a heading of the given length and height at one side.
func (p piece) headedAt(where heads, lines, long, head float64) look {
	w, h := p.frame.W(), p.frame.H()
	l := look{lines: lines, long: long, heads: where}
	switch where {
	case over:
		l.wide, l.high = math.Max(w, p.cutLeft()+long), h+head
	case along:
		l.wide, l.high = w+head, math.Max(h, long)
	case behind:
		l.wide, l.high = w+inner+long, math.Max(h, head+p.cutTop())
	}
	return l
}

// cutInto reports whether the cut along the joint over a piece, led on past the piece, goes
// through or under its heading.
func (p piece) cutInto(l look) bool {
	top := p.cutTop()
	return top > 0 && (l.heads == over || l.heads == along && l.long > p.frame.H()-top+closeEnough)
}

// cutLeft is how far a piece reaches past the joint on its left, where it is cut, mm: a
// heading over it begins behind that.
func (p piece) cutLeft() float64 {
	return p.cell.Min.X - p.frame.Min.X
}

// cutTop is the same over the joint at its top, which is cut too.
func (p piece) cutTop() float64 { return p.frame.Max.Y - p.cell.Max.Y }

// headings returns how to ask for the length and the height of a piece's heading in lines as
// long as a width allows, where it stands in one line worked out once.
func (p piece) headings(u measure.System) func(wide float64) (long, high float64) {
	says := p.says(u)
	whole := says.whole()
	var long, high float64
	return func(wide float64) (float64, float64) {
		if wide < whole {
			return says.size(wide)
		}
		if high == 0 {
			long, high = says.size(whole)
		}
		return long, high
	}
}

// within finds a blank for the heading on a piece of a grid or a whole pattern, from its
// upper left corner on.
func (p piece) within(u measure.System, m *known) (look, bool) {
	type size struct{ lines, long, high float64 }
	var tries []size
	headed, room := p.headings(u), p.cell.Grow(-inner)
	for _, lines := range []float64{200, 110, 80, 60, 45} {
		s := size{lines: lines}
		s.long, s.high = headed(lines)
		again := len(tries) > 0 && tries[len(tries)-1].long == s.long && tries[len(tries)-1].high == s.high
		if s.long <= room.W()+closeEnough && s.high <= room.H()+closeEnough && !again {
			tries = append(tries, s)
		}
	}
	if len(tries) == 0 {
		return look{}, false // as on most strips
	}
	own, dressed := p.room(layout.Sheet{}), false
	for i, t := range p.grid.ink.texts {
		if t.box.Overlaps(p.frame) {
			own.Text(p.drawing.Texts[i])
		}
	}
	chart := own.Chart(p.cell)
	for _, s := range tries {
		for b := range chart.Level(s.long, s.high, blankStep, inner) {
			if !dressed { // slow to draw, and seldom asked for
				s := m.joined(p, u)
				own.Drawing(&layout.Drawing{Strokes: s.Strokes, Texts: s.Texts})
				chart, dressed = own.Chart(p.cell), true
				if !own.Clear(b, inner) {
					continue
				}
			}
			return look{wide: p.frame.W(), high: p.frame.H(), lines: s.lines, heads: within, at: b.At}, true
		}
	}
	return look{}, false
}

// allGoIn gives pieces the looks that they can have until one goes into a room in none of
// them; it reports whether all go in.
func (p plan) allGoIn(pieces []piece, w, h float64) bool {
	for i := range pieces {
		k := &p.sized(pieces[i : i+1])[0]
		if !slices.ContainsFunc(k.looks, func(l look) bool { return l.wide <= w+closeEnough && l.high <= h+closeEnough }) {
			return false
		}
	}
	return true
}

// headed letters a piece's heading in a look.
func (p piece) headed(s *layout.Sheet, u measure.System, l look) {
	texts, high := p.says(u).heading(l.lines)
	low, top := p.frame.Min, p.frame.Max
	var to geometry.Affine
	switch {
	case l.heads == within:
		to = geometry.Shift(l.at.X, l.at.Y)
	case l.heads == over:
		to = geometry.Shift(low.X+p.cutLeft(), top.Y)
	case l.heads == behind:
		to = geometry.Shift(top.X+inner, top.Y-p.cutTop()-high)
	case l.turned:
		to = geometry.Turn(-math.Pi / 2).Then(geometry.Shift(top.X, top.Y-p.cutTop()))
	case p.cutLeft() > 0:
		to = geometry.Turn(math.Pi / 2).Then(geometry.Shift(top.X+high, low.Y))
	default:
		to = geometry.Turn(math.Pi / 2).Then(geometry.Shift(low.X, low.Y))
	}
	for _, t := range texts {
		t.At, t.Angle = to.Apply(t.At), t.Angle+layout.TurnOf(to)
		s.Texts = append(s.Texts, t)
	}
}

// near reports whether two looks set a heading alike.
func (l look) near(m look) bool {
	return l.heads == m.heads && l.turned == m.turned && math.Abs(l.lines-m.lines) < closeEnough && l.at.Sub(m.at).Norm() < closeEnough
}

// like is the look of a piece that is nearest to that of its forerunner.
func (p piece) like(l look) look {
	best := p.looks[0]
	for _, m := range p.looks {
		if math.Abs(m.wide-l.wide) < math.Abs(best.wide-l.wide) {
			best = m
		}
	}
	return best
}
