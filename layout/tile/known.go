package tile

import (
	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// known remembers what is asked for again in several ways to cut a set and to lay its sheets.
// A nil one remembers nothing, and works it out.
type known struct {
	inks    map[*layout.Drawing]ink
	blanks  map[dressing]*look // where headings go on pieces; nil where they go nowhere
	dressed map[dressing]layout.Sheet
	arounds map[framing][]look
}

func newKnown() *known {
	return &known{map[*layout.Drawing]ink{}, map[dressing]*look{}, map[dressing]layout.Sheet{}, map[framing][]look{}}
}

// dressing is all that a piece's heading and what it is dressed with depend on.
type dressing struct {
	drawing     *layout.Drawing
	cell, frame geometry.Box
	which       string
	joints      [4]side
	lowest      bool
}

func (p piece) dressing(u measure.System) dressing {
	out := dressing{drawing: p.drawing, cell: p.cell, frame: p.frame, which: p.which(u), lowest: p.row == p.grid.rows()-1}
	copy(out.joints[:], p.sides())
	return out
}

// framing is all that the looks of a piece with its heading outside depend on.
type framing struct {
	says                              says
	wide, high, cutLeft, cutTop, room float64
}

// ink is where a drawing has lines or letters.
func (m *known) ink(d *layout.Drawing) ink {
	if m == nil {
		return inkOf(d)
	}
	k, has := m.inks[d]
	if !has {
		k = inkOf(d)
		m.inks[d] = k
	}
	return k
}

// within finds a blank for the heading on a piece.
func (m *known) within(p piece, u measure.System) (look, bool) {
	if m == nil {
		return p.within(u, nil)
	}
	key := p.dressing(u)
	l, has := m.blanks[key]
	if !has {
		if found, ok := p.within(u, m); ok {
			l = &found
		}
		m.blanks[key] = l
	}
	if l == nil {
		return look{}, false
	}
	return *l, true
}

// joined draws what a piece is dressed with but for its heading; more may be added to it.
func (m *known) joined(p piece, u measure.System) layout.Sheet {
	if m == nil {
		return p.joined(u)
	}
	key := p.dressing(u)
	s, has := m.dressed[key]
	if !has {
		s = p.joined(u)
		s.Strokes, s.Texts = s.Strokes[:len(s.Strokes):len(s.Strokes)], s.Texts[:len(s.Texts):len(s.Texts)]
		m.dressed[key] = s
	}
	return s
}

// around lists the looks of a piece with its heading outside; nobody may change the list.
func (m *known) around(p piece, u measure.System, room float64) []look {
	if m == nil {
		return p.around(u, room)
	}
	key := framing{p.says(u), p.frame.W(), p.frame.H(), p.cutLeft(), p.cutTop(), room}
	out, has := m.arounds[key]
	if !has {
		out = p.around(u, room)
		m.arounds[key] = out
	}
	return out
}
