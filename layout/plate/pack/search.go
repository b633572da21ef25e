package pack

import (
	"math"
	"math/rand/v2"
	"slices"

	"ribwright/geometry"
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
	kinds []kind
	clashes
	gap    float64
	room   Room
	area   float64 // of all parts, with half the gap round them, mm2
	chance *rand.Rand
	done   int  // steps
	across bool // whether the height is made smaller next, or the width

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
	of := t.sorted(&s.kinds)
	n := len(t.Parts)
	s.clashes = newClashes(len(s.kinds))
	s.depths, s.weight = make([]float64, n*n), slices.Repeat([]float64{1}, n*n)
	for _, k := range of {
		s.area += s.kinds[k].area
		s.now.parts = append(s.now.parts, lying{kind: k, turn: s.kinds[k].turns[0]})
	}
	s.order = make([]int, 0, n)
	return s
}

// kind is what parts of the same shape share.
type kind struct {
	area   float64 // with half the gap round it, mm2
	pieces []polygon
	at     [Compass]frame   // round it, at each turn
	boxes  [Compass][]frame // round its pieces
	turns  []int
}

// sorted makes the kinds that the parts are of, and returns the kind of each.
func (t Task) sorted(kinds *[]kind) []int {
	out := make([]int, len(t.Parts))
	for i, p := range t.Parts {
		out[i] = -1
		for k := range i {
			if same(p, t.Parts[k]) {
				out[i] = out[k]
				break
			}
		}
		if out[i] < 0 {
			out[i] = len(*kinds)
			*kinds = append(*kinds, t.newKind(p))
		}
	}
	return out
}

func same(p, q Part) bool {
	return slices.Equal(p.Outer, q.Outer) && slices.Equal(p.Turns, q.Turns) && slices.EqualFunc(p.Holes, q.Holes, slices.Equal)
}

// newKind parts an outline into pieces. Holes in which nothing can lie count as full.
func (t Task) newKind(p Part) kind {
	k := kind{turns: p.Turns}
	outer := simple(p.Outer, false, t.Tolerance, t.Gap)
	var holes [][]geometry.Point
	for _, h := range p.Holes {
		if f := framed(h); min(f.x1-f.x0, f.y1-f.y0) > 2*t.Gap {
			holes = append(holes, simple(h, true, t.Tolerance, t.Gap))
		}
	}
	k.pieces = convex(outer, holes)
	k.area = areaOf(k.pieces)
	for i, q := range outer {
		k.area += length(outer[(i+1)%len(outer)].Sub(q)) * t.Gap / 2
	}
	for _, turn := range p.Turns {
		k.at[turn] = framed(turnedPiece(outer, turn))
		for _, q := range k.pieces {
			k.boxes[turn] = append(k.boxes[turn], framed(turnedPiece(q, turn)))
		}
	}
	return k
}

// depth is how deep two parts lie in one another: the most of all their convex pieces,
// each by how far it would have to be moved out of the other; 0 when they keep the gap.
func (s *search) depth(p, q *lying) float64 {
	if p.kind > q.kind {
		p, q = q, p
	}
	turn := q.turn - p.turn
	if turn < 0 {
		turn += Compass
	}
	one, other := &s.kinds[p.kind], &s.kinds[q.kind]
	first := s.clashes.of((p.kind*len(s.kinds)+q.kind)*Compass+turn, len(one.pieces)*len(other.pieces))
	// The way as the first part sees it.
	r := &turned[p.turn]
	x, y := q.x-p.x, q.y-p.y
	u, v := float64(r.cos*x)+float64(r.sin*y), float64(r.cos*y)-float64(r.sin*x)
	x0, y0, x1, y1 := q.x0-p.x-s.gap, q.y0-p.y-s.gap, q.x1-p.x+s.gap, q.y1-p.y+s.gap
	most := 0.0
	boxes := other.boxes[q.turn]
	s.done += 2 + len(one.pieces)/4
	for i := range one.boxes[p.turn] {
		b := &one.boxes[p.turn][i]
		if b.x0 >= x1 || b.x1 <= x0 || b.y0 >= y1 || b.y1 <= y0 {
			continue
		}
		bx0, by0, bx1, by1 := b.x0-x-s.gap, b.y0-y-s.gap, b.x1-x+s.gap, b.y1-y+s.gap
		s.done += 1 + len(boxes)/4
		for k := range boxes {
			c := &boxes[k]
			if c.x1 <= bx0 || c.x0 >= bx1 || c.y1 <= by0 || c.y0 >= by1 {
				continue
			}
			s.done++
			most += s.clash(first, p.kind, q.kind, turn, i, k).depth(u, v)
		}
	}
	return most
}

// clash is the no-fit shape of two pieces of two kinds.
func (s *search) clash(first int32, a, b, turn, i, k int) *clash {
	one, other := s.kinds[a].pieces, s.kinds[b].pieces
	id := &s.clashes.which[int(first)+i*len(other)+k]
	if *id == 0 {
		*id = int32(len(s.clashes.all))
		s.clashes.all = append(s.clashes.all, clash{planes: planesOf(one[i], other[k], turn, s.gap)})
		s.done += stepsOfClash
	}
	return &s.clashes.all[*id]
}

// stepsOfClash is how many steps the making of a clash counts for.
const stepsOfClash = 30

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
