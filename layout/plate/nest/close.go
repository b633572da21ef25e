package nest

import (
	"cmp"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/sidebyside"
	"ribwright/layout"
	"ribwright/layout/plate/pack"
)

// How long a close nest is searched for: so many steps for every two parts that may meet,
// and no more than so many for a board, shared by searches that are made side by side. The
// better of two short ones is as good as one that is twice as long.
const (
	steps    = 50_000
	most     = 32_000_000
	searches = 2
)

// tightest is the least share of its parts' area that a board must have, so that a close nest
// of all of them is searched for.
const tightest = 1.75

// What that search knows of a part: how far its outline may lie inside the true edge, mm,
// and outside it, as a share of the gap, because fewer corners make a faster search; and
// what is kept over the gap for digits that are left out, mm. Our own choice.
const (
	inside   = 0.03
	outside  = 1.0 / 4
	rounding = 0.01
)

// closest searches for a small rectangle in which all parts lie apart; ok is false when none
// was found.
func (j *job) closest(parts []layout.Part) ([]*geometry.Affine, bool) {
	all := searched(j.task(parts))
	if len(all) == 0 {
		return nil, false
	}
	n := slices.MinFunc(all, func(a, b pack.Nest) int { return cmp.Compare(a.W*a.H, b.W*b.H) })
	out, box := make([]*geometry.Affine, len(n.Spots)), geometry.EmptyBox()
	for i, s := range n.Spots {
		m := s.Move()
		out[i] = &m
		box = box.Union(j.exact[i].mapped(m).box)
	}
	for _, m := range out {
		*m = m.Then(geometry.Shift(rim/2-box.Min.X, rim/2-box.Min.Y))
	}
	return out, j.lieApart(out)
}

// task is what is searched for.
func (j *job) task(parts []layout.Part) pack.Task {
	return pack.Task{
		Parts: j.outlines(parts), Room: pack.Room{W: j.room.X - rim, H: j.room.Y - rim},
		Gap: j.gap + 2*inside + rounding, Tolerance: j.gap * outside, Steps: min(steps*len(parts)*len(parts), most) / searches,
	}
}

// searched are the nests that chance leads to in its ways.
func searched(t pack.Task) []pack.Nest {
	out := make([]pack.Nest, searches)
	sidebyside.Each(searches, func(i int) {
		t := t
		t.Seed = uint64(i) + 1
		out[i], _ = pack.Close(t) // none has no spots
	})
	return slices.DeleteFunc(out, func(n pack.Nest) bool { return len(n.Spots) == 0 })
}

// outlines are the parts as that search takes them.
func (j *job) outlines(parts []layout.Part) []pack.Part {
	out := make([]pack.Part, len(parts))
	for i, p := range parts {
		loops := newShape(p, inside).loops
		last := len(loops) - 1
		out[i] = pack.Part{Outer: loops[last], Holes: loops[:last]}
		if !p.Loose {
			out[i].Turns = j.turns[i]
		}
	}
	return out
}

// lieApart reports whether all parts, so moved, keep the gap and have room on the board, by
// true distances.
func (j *job) lieApart(moves []*geometry.Affine) bool {
	laid, all := make([]shape, len(moves)), geometry.EmptyBox()
	for i, m := range moves {
		laid[i] = j.exact[i].mapped(*m)
		all = all.Union(laid[i].box)
		for k := range i {
			if !apart(laid[i], laid[k], j.gap+2*chord+rounding) {
				return false
			}
		}
	}
	return all.W() <= j.room.X-rounding && all.H() <= j.room.Y-rounding
}
