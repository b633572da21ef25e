package nest

import (
	"ribwright/geometry"
	"ribwright/layout"
	"ribwright/layout/plate/pack"
)

// few is up to how many parts of a board are laid by pushing their overlap out, with
// a search of so many steps a part and at least so many in all. More parts are laid by how much they touch: long hooks
// that lie in one another's hollows are found better so, as yet.
const (
	few   = 10
	steps = 150_000
	least = 600_000
	seed  = 1
)

// What that search knows of a part: how far its outline may lie inside the true edge, mm,
// and outside it, as a share of the gap, because fewer corners make a faster search; and
// what is kept over the gap for digits that are left out, mm. Our own choice.
const (
	inside   = 0.03
	outside  = 1.0 / 6
	rounding = 0.01
)

// apartFew searches for a small rectangle in which a few parts lie apart; ok is false when
// none was found.
func (j *job) apartFew(parts []layout.Part) ([]*geometry.Affine, bool) {
	n, ok := pack.Close(pack.Task{
		Parts: j.outlines(parts), Room: pack.Room{W: j.room.X - rim, H: j.room.Y - rim},
		Gap: j.gap + 2*inside + rounding, Tolerance: j.gap * outside, Steps: max(least, steps*len(parts)), Seed: seed,
	})
	if !ok {
		return nil, false
	}
	out, box := make([]*geometry.Affine, len(n.Spots)), geometry.EmptyBox()
	for i, s := range n.Spots {
		m := geometry.Turn(j.turns[i][0]).Then(s.Move())
		out[i] = &m
		box = box.Union(j.exact[i].mapped(m).box)
	}
	for _, m := range out {
		*m = m.Then(geometry.Shift(rim/2-box.Min.X, rim/2-box.Min.Y))
	}
	return out, j.lieApart(out)
}

// outlines are the parts as that search turns them: from the first angle that each may
// lie at.
func (j *job) outlines(parts []layout.Part) []pack.Part {
	out := make([]pack.Part, len(parts))
	for i, p := range parts {
		loops := newShape(p, inside).mapped(geometry.Turn(j.turns[i][0])).loops
		last, turns := len(loops)-1, make([]int, len(j.turns[i]))
		for k := range turns {
			turns[k] = k * pack.Compass / len(turns)
		}
		out[i] = pack.Part{Outer: loops[last], Holes: loops[:last], Turns: turns}
	}
	return out
}
