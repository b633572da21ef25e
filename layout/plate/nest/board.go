package nest

import (
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// board lays what one sheet has room for and returns the parts that are left.
func (o Options) board(parts []layout.Part) (laid []layout.Placed, rest []layout.Part) {
	j := newJob(parts, o.Stock.Grain(), o.Gap, o.room())
	if !o.Quick && len(parts) > 1 && j.area*tightest < j.room.X*j.room.Y {
		if moves, ok := j.closest(parts); ok {
			return o.placed(parts, moves), nil
		}
	}
	moves := j.fill()
	laid = o.placed(parts, moves)
	for i, m := range moves {
		if m == nil {
			rest = append(rest, parts[i])
		}
	}
	return laid, rest
}

// placed joins parts with their moves, of which nil leaves a part out, moved in by
// the gap from the sheet's corner.
func (o Options) placed(parts []layout.Part, moves []*geometry.Affine) []layout.Placed {
	var out []layout.Placed
	for i, m := range moves {
		if m != nil {
			out = append(out, layout.Placed{Part: parts[i], Move: m.Then(geometry.Shift(o.Gap, o.Gap))})
		}
	}
	return out
}

// eighths is how many steps of the compass make an eighth of a turn: finer ones are
// not worth their time when parts are laid once.
const eighths = compass / 8

// fill lays the parts on whole cells, the longest first, without pushing: as many
// as a sheet takes, in the least of some rectangles that takes them all, or on the
// whole sheet. A part that is left out has nil.
func (j *job) fill() []*geometry.Affine {
	room := j.gap/2 + chord + rough
	sets := j.stampsWith(room, eighths)
	whole := j.room.X * j.room.Y / j.area
	for share := 2.4; ; share *= 1.3 {
		k := math.Sqrt(math.Min(1, share/whole))
		moves, all := j.fillIn(sets, room, geometry.Point{X: j.room.X * k, Y: j.room.Y * k}, share < whole)
		if all || share >= whole {
			if slices.ContainsFunc(moves, func(m *geometry.Affine) bool { return m != nil }) {
				return moves
			}
			return j.alone(moves)
		}
	}
}

// fillIn lays the parts in a rectangle; when it must take all of them, it gives up at the
// first that has no room.
func (j *job) fillIn(sets [][][2]stamp, room float64, size geometry.Point, must bool) (out []*geometry.Affine, all bool) {
	l := newLayer(int((size.X+j.gap)/cell), int((size.Y+j.gap)/cell), touches)
	out, all = make([]*geometry.Affine, len(sets)), true
	for _, i := range j.order() {
		turn, where, share := j.bestTurn(l, sets[i], i, eighths)
		if share < 0 {
			if all = false; must {
				return out, all
			}
			continue
		}
		l.put(sets[i][turn][0], sets[i][turn][1], where)
		m := j.cornered(i, j.turns[i][turn], where.corner(cell, room-j.gap/2))
		out[i] = &m
	}
	return out, all
}

// cornered turns a part and lays the lower left corner of its box at a place.
func (j *job) cornered(i int, turn float64, corner geometry.Point) geometry.Affine {
	box := j.exact[i].mapped(geometry.Turn(turn)).box
	return geometry.Turn(turn).Then(geometry.Shift(corner.X-box.Min.X, corner.Y-box.Min.Y))
}

// alone lays the longest part by itself in the corner: it is so large that whole
// cells have no room for it.
func (j *job) alone(out []*geometry.Affine) []*geometry.Affine {
	i := j.order()[0]
	for _, a := range j.turns[i] {
		b := j.exact[i].mapped(geometry.Turn(a)).box
		if b.W() <= j.room.X && b.H() <= j.room.Y {
			m := j.cornered(i, a, geometry.Point{})
			out[i] = &m
			return out
		}
	}
	panic("nest: a part that fits has no room")
}
