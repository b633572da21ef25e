package nest

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// How a first nest is built: the side of a cell, how many of them count as
// touching, and by which share of a cell stamps are drawn too small, because the
// parts are pushed apart afterwards.
const (
	cell    = 5.0 // mm
	touches = 4
	slack   = 0.3
)

// compass is how many angles a part may lie at whose grain does not matter.
const compass = 24

type job struct {
	shapes []shape   // near enough to search with
	exact  []shape   // to prove with
	long   []float64 // the longer side of each, longer still where the grain binds it
	turns  [][]float64
	loose  []bool
	area   float64 // of all, mm²
	gap    float64
	room   geometry.Point // what the parts may fill of a board, mm
	tries  int            // of a round
	stamps [][][2]stamp   // of each part at each turn: itself and its halo, drawn small
	bodies []body
}

// newJob prepares parts for a board whose grain runs at the given angle.
func newJob(parts []layout.Part, grain, gap float64, room geometry.Point) *job {
	j := &job{gap: gap, room: room}
	for _, p := range parts {
		s := newShape(p, rough)
		long, bound := math.Max(s.box.W(), s.box.H()), turnsOf(p, grain)
		if !p.Loose {
			long *= 1.5
		}
		j.shapes, j.exact, j.long = append(j.shapes, s), append(j.exact, newShape(p, chord)), append(j.long, long)
		j.turns, j.loose = append(j.turns, bound), append(j.loose, p.Loose)
		j.area += s.area()
	}
	return j
}

// turnsOf lists the angles a part may lie at: two along the grain, or all round.
func turnsOf(p layout.Part, grain float64) []float64 {
	if !p.Loose {
		return []float64{grain - p.Grain, grain - p.Grain + math.Pi}
	}
	out := make([]float64, compass)
	for k := range out {
		out[k] = 2 * math.Pi * float64(k) / compass
	}
	return out
}

// prepare draws the stamps and bodies that a search for a close nest needs.
func (j *job) prepare() {
	j.stamps = j.stampsWith(j.gap/2-slack*cell, 1)
	for i, s := range j.shapes {
		bound := j.turns[i]
		if j.loose[i] {
			bound = nil
		}
		j.bodies = append(j.bodies, newBody(s, j.gap+margin, bound))
	}
}

// stampsWith draws every part, grown by room, and its halo: at each turn that the
// grain allows, or at every so many of the compass where it does not matter.
func (j *job) stampsWith(room float64, every int) [][][2]stamp {
	out := make([][][2]stamp, len(j.shapes))
	for i, s := range j.shapes {
		out[i] = make([][2]stamp, len(j.turns[i]))
		for n, a := range j.turns[i] {
			if !j.loose[i] || n%every == 0 {
				t := s.mapped(geometry.Turn(a))
				out[i][n] = [2]stamp{newStamp(t, room, cell), newStamp(t, room+touches*cell, cell)}
			}
		}
	}
	return out
}

// bestTurn returns the turn and the place at which a part touches most, and by which
// share of its halo; a loose part is tried at every so many turns from the first. The
// share is below 0 when it fits nowhere.
func (j *job) bestTurn(l *layer, stamps [][2]stamp, i, first, every int) (turn int, where spot, most float64) {
	most = -1
	for t, s := range stamps {
		if j.loose[i] && t%every != first {
			continue
		}
		if at, share, ok := l.best(s[0], s[1], most); ok {
			turn, where, most = t, at, share
		}
	}
	return turn, where, most
}

// order sorts the parts by their length, shaken a little.
func (j *job) order(chance *rand.Rand, shake float64) []int {
	out, key := make([]int, len(j.shapes)), make([]float64, len(j.shapes))
	for i := range out {
		out[i], key[i] = i, j.long[i]*(1+shake*chance.NormFloat64())
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(key[b], key[a]) })
	return out
}

// first builds a nest in a rectangle of the given share of the parts' area; ok is
// false when too many find no place in it.
func (j *job) first(b *bench, share float64) (state, bool) {
	s := j.rectangle(b.chance, share)
	l := newLayer(int((s.w+j.gap)/cell), int((s.h+j.gap)/cell), touches)
	return s, j.insert(b, l, s, j.order(b.chance, 0.3))
}

// insert lays the parts, most of them in the order given, where they touch most;
// those that find no place lie where they overlap least. ok is false when these
// are more than a few.
func (j *job) insert(b *bench, l *layer, s state, rest []int) bool {
	few := max(2, len(j.shapes)/12)
	var lost []int
	choice, odd := 1+b.chance.IntN(3), b.chance.IntN(2)
	for len(rest) > 0 && len(lost) <= few {
		most, which, turn, where := -1.0, -1, 0, spot{}
		for k, i := range rest[:min(choice, len(rest))] {
			if t, at, share := j.bestTurn(l, j.stamps[i], i, odd, 2); share > most {
				most, which, turn, where = share, k, t, at
			}
		}
		if which < 0 {
			n := min(choice, len(rest))
			lost, rest = append(lost, rest[:n]...), rest[n:]
			continue
		}
		i := rest[which]
		rest = slices.Delete(rest, which, which+1)
		l.put(j.stamps[i][turn][0], j.stamps[i][turn][1], where)
		s.poses[i] = j.poseAt(i, j.turns[i][turn], where.corner(cell, -slack*cell))
	}
	if len(lost)+len(rest) > few {
		return false
	}
	w := newWeights(len(s.poses))
	for _, i := range lost {
		s.poses[i] = at(s.w/2, s.h/2, j.turns[i][0])
		b.seek(s, w, i, 8*places)
	}
	return true
}

// rectangle picks a rectangle of the given share of the parts' area that a board
// has room for.
func (j *job) rectangle(chance *rand.Rand, share float64) state {
	area := j.area * share
	w := math.Sqrt(area * math.Exp(chance.Float64()-0.5))
	w = math.Min(math.Max(w, area/j.room.Y), j.room.X)
	return state{w, math.Min(area/w, j.room.Y), make([]pose, len(j.shapes))}
}

// poseAt turns a part and lays the lower left corner of its box at a place.
func (j *job) poseAt(i int, turn float64, corner geometry.Point) pose {
	t := j.shapes[i].mapped(geometry.Turn(turn))
	mid := geometry.Turn(turn).Apply(j.shapes[i].box.Center())
	mid = mid.Sub(t.box.Min).Add(corner)
	return at(mid.X, mid.Y, turn)
}
