package pack

import (
	"math"
	"math/rand/v2"
	"slices"
)

// lying is a part as it lies: what its box fills, and its spot.
type lying struct {
	frame
	x, y       float64
	kind, turn int
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

func (s *state) nest() Nest {
	out := Nest{W: s.w, H: s.h, Spots: make([]Spot, len(s.parts))}
	for i, p := range s.parts {
		out.Spots[i] = Spot{p.x, p.y, p.turn}
	}
	return out
}

// search is one run. It takes what it needs at the start and asks for no memory after,
// but for planes at first sight.
type search struct {
	kinds  []kind
	nofits []*nofit // of kind a, kind b >= a, and the turn from a to b
	gap    float64
	room   Room
	area   float64 // of all parts, mm2
	chance *rand.Rand
	done   int // steps

	now    state
	best   state     // that nothing overlaps in
	least  state     // of the least overlap in the rectangle of now
	depths []float64 // of pairs, as they lie
	weight []float64 // of pairs
	order  []int
}

// newSearch prepares a search. Its steps count work: a cost, a pair of parts whose boxes
// meet, and the pairs of their pieces.
func newSearch(t Task) *search {
	s := &search{gap: t.Gap, room: t.Room, chance: rand.New(rand.NewPCG(t.Seed, 1))}
	of := sorted(t.Parts, &s.kinds, t.Gap)
	n := len(t.Parts)
	s.nofits = make([]*nofit, len(s.kinds)*len(s.kinds)*Compass)
	s.depths, s.weight = make([]float64, n*n), make([]float64, n*n)
	for _, k := range of {
		s.area += s.kinds[k].area
		s.now.parts = append(s.now.parts, lying{kind: k, turn: s.kinds[k].turns[0]})
	}
	s.order = make([]int, 0, n)
	return s
}

// sorted makes the kinds that the parts are of, and returns the kind of each.
func sorted(parts []Part, kinds *[]kind, gap float64) []int {
	out := make([]int, len(parts))
	for i, p := range parts {
		out[i] = -1
		for k := range i {
			if same(p, parts[k]) {
				out[i] = out[k]
				break
			}
		}
		if out[i] < 0 {
			out[i] = len(*kinds)
			*kinds = append(*kinds, newKind(p, gap))
		}
	}
	return out
}

func same(p, q Part) bool {
	return slices.Equal(p.Outer, q.Outer) && slices.Equal(p.Turns, q.Turns) && slices.EqualFunc(p.Holes, q.Holes, slices.Equal)
}

func newKind(p Part, gap float64) kind {
	k := kind{turns: p.Turns}
	k.pieces = convex(p.Outer, p.Holes)
	for _, q := range k.pieces {
		k.area += doubled(q) / 2
	}
	for _, t := range p.Turns {
		k.at[t] = framed(turnedPiece(p.Outer, t))
	}
	return k
}

// nofit is the no-fit shape of two kinds, made when it is first needed.
func (s *search) nofit(a, b, turn int) *nofit {
	f := &s.nofits[(a*len(s.kinds)+b)*Compass+turn]
	if *f == nil {
		*f = newNofit(&s.kinds[a], &s.kinds[b], turn, s.gap)
	}
	return *f
}

// depth is how deep two parts lie in one another.
func (s *search) depth(p, q *lying) float64 {
	if p.kind > q.kind {
		p, q = q, p
	}
	turn := q.turn - p.turn
	if turn < 0 {
		turn += Compass
	}
	f := s.nofit(p.kind, q.kind, turn)
	r := &turned[p.turn]
	x, y := q.x-p.x, q.y-p.y
	s.done += 2
	// The way as the first part sees it.
	return f.depth(&s.kinds[p.kind], &s.kinds[q.kind], turn, s.gap, float64(r.cos*x)+float64(r.sin*y), float64(r.cos*y)-float64(r.sin*x), &s.done)
}

// cost is what part i would weigh, lying so: the depths times the weights. At limit or
// over it, it may stop short.
func (s *search) cost(i int, p *lying, limit float64) float64 {
	weights := s.weight[i*len(s.now.parts):]
	x0, y0, x1, y1 := p.x0-s.gap, p.y0-s.gap, p.x1+s.gap, p.y1+s.gap
	total := 0.0
	s.done += 4
	for j := range s.now.parts {
		q := &s.now.parts[j]
		if q.x0 >= x1 || q.x1 <= x0 || q.y0 >= y1 || q.y1 <= y0 || j == i {
			continue
		}
		if d := s.depth(p, q); d > 0 {
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
	near := frame{p.x0 - s.gap, p.y0 - s.gap, p.x1 + s.gap, p.y1 + s.gap}
	for j := range s.now.parts {
		if j == i {
			continue
		}
		q, d := &s.now.parts[j], 0.0
		if q.x0 < near.x1 && q.x1 > near.x0 && q.y0 < near.y1 && q.y1 > near.y0 {
			d = s.depth(p, q)
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

// share is how many times the parts' own area a state takes.
func (s *search) share(q *state) float64 { return float64(q.w*q.h) / s.area }

// laid puts a part at a turn with its box's lower left corner at a place, moved into the
// rectangle; ok is false when it has no room there at this turn.
func (s *search) laid(kind, turn int, x, y float64) (lying, bool) {
	f := s.kinds[kind].at[turn]
	if f.x1-f.x0 > s.now.w || f.y1-f.y0 > s.now.h {
		return lying{}, false
	}
	x = math.Min(math.Max(x, 0), s.now.w-(f.x1-f.x0)) - f.x0
	y = math.Min(math.Max(y, 0), s.now.h-(f.y1-f.y0)) - f.y0
	return lying{f.shifted(x, y), x, y, kind, turn}, true
}
