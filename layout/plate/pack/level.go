package pack

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// How often parts are joined in couples, and these again, before the first nest, and the
// share of all steps that a search takes which lays couples. Our own choices.
const (
	levels = 2
	coarse = 7
)

// member is a part of a couple: which one of the finer search's, and how it lies about the
// couple's middle.
type member struct {
	part       int
	x, y, turn float64
}

// begin finds a first nest: with parts that lie close laid as one, as long as there are
// such and a nest is found, and otherwise of single parts.
func (s *search) begin(level, steps, until int) bool {
	if level > 0 {
		if u := s.coupled(); u != nil {
			ok := u.begin(level-1, steps, u.done+steps/coarse)
			if ok {
				u.explore(u.done + steps/coarse)
			}
			if s.done = u.done; ok && s.parted(u) {
				return true
			}
		}
	}
	return s.start(until)
}

// coupled is a search that lays couples as one part; nil when there are none.
func (s *search) coupled() *search {
	all := s.couples()
	if len(all) == 0 {
		return nil
	}
	u := &search{gap: s.gap, extra: s.extra, room: s.room, chance: s.chance, done: s.done}
	single := make([]bool, len(s.now.parts))
	for i := range single {
		single[i] = true
	}
	for _, c := range all {
		single[c.i], single[c.k] = false, false
		k, members := s.joined(c)
		u.kinds, u.members = append(u.kinds, k), append(u.members, members)
	}
	for i, p := range s.now.parts {
		if single[i] {
			u.kinds, u.members = append(u.kinds, s.kinds[p.kind]), append(u.members, []member{{part: i}})
		}
	}
	of := make([]int, len(u.kinds))
	for i := range of {
		of[i] = i
	}
	u.prepare(of)
	return u
}

// joined makes one kind of a couple. It may lie at the turns at which both parts may.
func (s *search) joined(c couple) (kind, []member) {
	a, b := c.first, c.second
	p, q := &s.kinds[a.kind], &s.kinds[b.kind]
	var one, other body
	one.lie(p.shape, a.angle, &s.done)
	other.lie(q.shape, b.angle, &s.done)
	pieces := append(one.polygons(0, 0), other.polygons(b.x, b.y)...)
	f, g := one.frame, other.frame.shifted(b.x, b.y)
	mid := geometry.Point{X: (min(f.x0, g.x0) + max(f.x1, g.x1)) / 2, Y: (min(f.y0, g.y0) + max(f.y1, g.y1)) / 2}
	var turns []float64
	for _, t := range p.turns {
		if by := t - a.angle; q.turn(b.angle+by) >= 0 {
			turns = append(turns, by)
		}
	}
	k := kind{area: p.area + q.area, axis: p.axis + a.angle, shape: newSolid(pieces, mid)}
	k.turnedTo(turns)
	return k, []member{{c.i, -mid.X, -mid.Y, a.angle}, {c.k, b.x - mid.X, b.y - mid.Y, b.angle}}
}

// turn is which of the kind's turns an angle is; -1 for none.
func (k *kind) turn(angle float64) int {
	const same = 1e-9 // what sums of angles are off by, and more
	return slices.IndexFunc(k.turns, func(t float64) bool { return math.Abs(math.Remainder(t-angle, 2*math.Pi)) < same })
}

// polygons are the pieces, the middle at (x, y).
func (s *solid) polygons(x, y float64) []polygon {
	var out []polygon
	all := s.points(x, y)
	for _, p := range s.pieces {
		out = append(out, all[p.from:p.to])
	}
	return out
}

// parted takes over the nest of a search that laid couples, and reports whether the parts
// lie apart.
func (s *search) parted(u *search) bool {
	s.now.w, s.now.h = u.best.w, u.best.h
	for i, p := range u.best.parts {
		for _, m := range u.members[i] {
			k, angle := s.now.parts[m.part].kind, p.angle+m.turn
			q := s.turned(k, s.kinds[k].turn(angle), angle)
			x, y := rotated(p.angle).at(m.x, m.y)
			if !s.moved(&q, p.x+x, p.y+y) {
				return false
			}
			s.now.parts[m.part] = q
		}
	}
	s.from.copied(&s.now)
	s.best.copied(&s.now)
	return s.total() == 0
}
