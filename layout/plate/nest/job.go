package nest

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/layout"
)

// How parts are laid once: the side of a cell, and how many of them count as touching.
const (
	cell    = 5.0 // mm
	touches = 4
)

// compass is how many angles a part may lie at whose grain does not matter.
const compass = 24

type job struct {
	shapes []shape   // near enough to lay on cells
	exact  []shape   // to prove with
	long   []float64 // the longer side of each, longer still where the grain binds it
	turns  [][]float64
	loose  []bool
	area   float64 // of all, mm²
	gap    float64
	room   geometry.Point // what the parts may fill of a board, mm
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

// stampsWith draws every part, grown by room, and its halo: at each turn that the
// grain allows, or at every so many of the compass where it does not matter.
func (j *job) stampsWith(room float64, every int) [][][2]stamp {
	var m stamper
	out := make([][][2]stamp, len(j.shapes))
	for i, s := range j.shapes {
		if k := slices.IndexFunc(j.shapes[:i], s.same); k >= 0 && j.loose[i] == j.loose[k] && slices.Equal(j.turns[i], j.turns[k]) {
			out[i] = out[k] // the other one of a pair
			continue
		}
		out[i] = make([][2]stamp, len(j.turns[i]))
		for n, a := range j.turns[i] {
			if !j.loose[i] || n%every == 0 {
				t := s.mapped(geometry.Turn(a))
				out[i][n] = [2]stamp{m.stamp(t, room, cell).looked(), m.stamp(t, room+touches*cell, cell)}
			}
		}
	}
	return out
}

// bestTurn returns the turn and the place at which a part touches most, and by which
// share of its halo; a loose part is tried at every so many turns. The share is below 0 when it fits nowhere.
func (j *job) bestTurn(l *layer, stamps [][2]stamp, i, every int) (turn int, where spot, most float64) {
	most = -1
	for t, s := range stamps {
		if j.loose[i] && t%every != 0 {
			continue
		}
		if at, share, ok := l.best(s[0], s[1], most); ok {
			turn, where, most = t, at, share
		}
	}
	return turn, where, most
}

// order sorts the parts by their length, the longest first.
func (j *job) order() []int {
	out := make([]int, len(j.shapes))
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(j.long[b], j.long[a]) })
	return out
}
