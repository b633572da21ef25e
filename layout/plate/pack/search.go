package pack

import (
	"math"
	"math/rand/v2"
	"slices"
)

// lying is a part as it lies: what its box fills, and its spot.
type lying struct {
	frame
	x, y       float64 // the middle
	angle      float64
	kind, turn int // which of the turns that it may lie at; -1 at any
}

// state is where all parts lie in a rectangle.
type state struct {
	w, h  float64
	parts []lying
}

func (s *state) copied(from *state) {
	s.w, s.h = from.w, from.h
	s.parts = append(s.parts[:0], from.parts...)
}

func (s *search) nest() Nest {
	out := Nest{W: s.best.w, H: s.best.h, Spots: make([]Spot, len(s.best.parts))}
	for i, p := range s.best.parts {
		mid := s.kinds[p.kind].mid
		x, y := rotated(p.angle).at(mid.X, mid.Y)
		out.Spots[i] = Spot{p.x - x, p.y - y, p.angle}
	}
	return out
}

// search is one run. It takes what it needs at the start and asks for no memory after.
type search struct {
	kinds   []kind
	members [][]member // of each part, in a search that lays couples
	gap     float64
	extra   float64 // how much farther apart than the gap parts are pushed, so that they come apart soon
	room    Room
	area    float64 // of all parts, with half the gap round them, mm2
	chance  *rand.Rand
	done    int     // steps
	hope    float64 // the overlap up to which parts that were laid anew are pushed apart
	across  bool    // whether the height is made smaller next, or the width

	now    state
	from   state     // that nothing overlaps in: the search goes on from it
	was    state     // what from was
	best   state     // the smallest that nothing overlaps in
	least  state     // of the least overlap in the rectangle of now
	depths []float64 // of pairs, as they lie
	weight []float64 // of pairs
	order  []int
	bodies []body // as they lie; of parts that may lie at any turn
	trial  body   // such a part as it is tried
	met    []meeting
	pushes []push
	links  []link
	gone   []float64 // how far each part was moved since the links were made
}

// body is a part at a turn.
type body struct {
	solid
	angle float64
}

// How much farther than the gap parts are pushed: a share of the gap or, where they may
// touch, of a mean part's size. Our own choice.
const (
	extraOfGap  = 0.1
	extraOfSize = 0.002
)

// newSearch prepares a search. Its steps count work: a cost, a pair of parts whose boxes
// meet, and the pairs of their pieces.
func newSearch(t Task) *search {
	s := &search{gap: t.Gap, room: t.Room, chance: rand.New(rand.NewPCG(t.Seed, 1))}
	s.prepare(t.sorted(&s.kinds))
	if s.extra = t.Gap * extraOfGap; t.Gap == 0 {
		s.extra = s.size() * extraOfSize
	}
	return s
}

// prepare makes a part of each of the kinds, and what a search needs for them.
func (s *search) prepare(of []int) {
	n := len(of)
	for _, k := range of {
		s.area += s.kinds[k].area
		p := lying{kind: k, turn: -1}
		if t := s.kinds[k].turns; len(t) > 0 {
			p.turn, p.angle = 0, t[0]
		}
		s.now.parts = append(s.now.parts, p)
	}
	s.hope = s.size()
	s.depths, s.weight = make([]float64, n*n), slices.Repeat([]float64{1}, n*n)
	s.order, s.bodies = make([]int, 0, n), make([]body, n)
	s.pushes, s.gone = make([]push, n), make([]float64, n)
}

// size is the side of a square as large as a mean part.
func (s *search) size() float64 { return math.Sqrt(s.area / float64(len(s.now.parts))) }

// cost is what part i would weigh, lying so: the depths times the weights. At limit or
// over it, it may stop short.
func (s *search) cost(i int, p *lying, limit float64) float64 {
	body, weights := s.solid(p), s.weight[i*len(s.now.parts):]
	total := 0.0
	s.done += 4
	for j := range s.now.parts {
		q := &s.now.parts[j]
		if j == i || !p.near(&q.frame, s.gap) {
			continue
		}
		if d := s.depth(body, s.body(j), q.x-p.x, q.y-p.y); d > 0 {
			if total += float64(weights[j] * d); total >= limit {
				return total
			}
		}
	}
	return total
}

// measure works out the depths of part i with all others, and what they come to.
func (s *search) measure(i int) {
	n := len(s.now.parts)
	p := &s.now.parts[i]
	for j := range s.now.parts {
		if j == i {
			continue
		}
		q, d := &s.now.parts[j], 0.0
		if p.near(&q.frame, s.gap) {
			d = s.depth(s.body(i), s.body(j), q.x-p.x, q.y-p.y)
		}
		s.depths[i*n+j], s.depths[j*n+i] = d, d
	}
}

// total measures all parts and returns the sum of all depths.
func (s *search) total() float64 {
	for i := range s.now.parts {
		s.measure(i)
	}
	return s.overlap()
}

func (s *search) overlap() float64 {
	sum := 0.0
	for _, d := range s.depths {
		sum += d
	}
	return sum / 2
}

// takes takes over the nest of a search with other outlines of the same parts, and reports
// whether they lie apart.
func (s *search) takes(from *search) bool {
	s.now.w, s.now.h = from.best.w, from.best.h
	for i, spot := range from.nest().Spots {
		p := from.best.parts[i]
		x, y := rotated(spot.Turn).at(s.kinds[p.kind].mid.X, s.kinds[p.kind].mid.Y)
		q := s.turned(p.kind, p.turn, p.angle)
		if !s.moved(&q, spot.X+x, spot.Y+y) {
			return false
		}
		s.now.parts[i] = q
	}
	s.from.copied(&s.now)
	return s.total() == 0
}
