package tile

import (
	"slices"
	"sync"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
)

// remembered is what was worked out once, by all that it depends on. Where several ask at the
// same time, one of them works it out and the others wait for it.
type remembered[K comparable, V any] struct {
	lock sync.Mutex
	all  map[K]func() V
}

// of returns what is remembered, and works it out first where nobody has.
func (r *remembered[K, V]) of(key K, work func() V) V {
	r.lock.Lock()
	get, has := r.all[key]
	if !has {
		if r.all == nil {
			r.all = map[K]func() V{}
		}
		get = sync.OnceValue(work)
		r.all[key] = get
	}
	r.lock.Unlock()
	return get()
}

// known remembers what is asked for again in several ways to cut a set and to lay its sheets.
// A nil one remembers nothing, and works it out.
type known struct {
	inks    remembered[*layout.Drawing, ink]
	blanks  remembered[dressing, *look] // where headings go on pieces; nil where they go nowhere
	dressed remembered[dressing, layout.Sheet]
	arounds remembered[framing, []look]
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
	return m.inks.of(d, func() ink { return inkOf(d) })
}

// within finds a blank for the heading on a piece.
func (m *known) within(p piece, u measure.System) (look, bool) {
	if m == nil {
		return p.within(u, nil)
	}
	l := m.blanks.of(p.dressing(u), func() *look {
		if l, ok := p.within(u, m); ok {
			return &l
		}
		return nil
	})
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
	return m.dressed.of(p.dressing(u), func() layout.Sheet {
		s := p.joined(u)
		s.Strokes, s.Texts = slices.Clip(s.Strokes), slices.Clip(s.Texts)
		return s
	})
}

// around lists the looks of a piece with its heading outside; nobody may change the list.
func (m *known) around(p piece, u measure.System, room float64) []look {
	if m == nil {
		return p.around(u, room)
	}
	key := framing{p.says(u), p.frame.W(), p.frame.H(), p.cutLeft(), p.cutTop(), room}
	return m.arounds.of(key, func() []look { return p.around(u, room) })
}
