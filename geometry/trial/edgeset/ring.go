package edgeset

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry/equations"
)

// term is a share of one unknown.
type term struct {
	of int
	by float64
}

// sum is a movement as shares of unknowns; an empty one stands still.
type sum []term

// share is so many times a movement.
type share struct {
	of sum
	by float64
}

// plus adds shares of movements up.
func (b *built) plus(all ...share) sum {
	from := len(b.terms)
	for _, s := range all {
		for _, t := range s.of {
			b.terms = append(b.terms, term{t.of, t.by * s.by})
		}
	}
	return b.terms[from:len(b.terms):len(b.terms)]
}

func (s sum) at(u []float64) float64 {
	v := 0.0
	for _, t := range s {
		v += t.by * u[t.of]
	}
	return v
}

// node is a place of a chord with how it moves forward, up, and turns (bow up positive).
type node struct {
	x, z        float64
	on, up, way sum
}

// spring resists a movement beyond -lack: its energy is stiff (on + lack)²/2.
type spring struct {
	on          sum
	stiff, lack float64
}

// piece is a stick between two neighboring nodes of a chord: along, bent evenly, and
// bent both ways. The last two carry the mean of its end moments and half their
// difference.
type piece struct {
	along, even, skew spring
	length            float64
}

// built is a model as springs.
type built struct {
	gunwale, keel []node
	springs       []spring
	posts         []spring
	keels         []piece
	terms         []term // of all movements, so that each need not be made room for
	unknowns      int
	level         float64 // mm

	first []int             // room for the solver
	stiff equations.Profile // the same
}

// clear takes out all but where the nodes lie.
func (b *built) clear() {
	for _, nodes := range [][]node{b.gunwale, b.keel} {
		for i, n := range nodes {
			nodes[i] = node{x: n.x, z: n.z}
		}
	}
	b.springs, b.posts, b.keels, b.terms, b.unknowns = b.springs[:0], b.posts[:0], b.keels[:0], b.terms[:0], 0
}

func (b *built) next() sum {
	n := len(b.terms)
	b.terms = append(b.terms, term{b.unknowns, 1})
	b.unknowns++
	return b.terms[n : n+1 : n+1]
}

// join makes the nodes: the ends of both chords are carried by the stems, the keel at
// midship stands still and all others move freely. Unknowns follow each other from aft
// forward, so that the sums stay short.
func (b *built) join(h Held) {
	b.stem(&b.gunwale[0], &b.keel[0], h)
	inner := slices.Concat(pointers(b.gunwale[1:len(b.gunwale)-1]), pointers(b.keel[1:len(b.keel)-1]))
	slices.SortStableFunc(inner, func(p, q *node) int { return cmp.Compare(p.x, q.x) })
	ground, top := at(b.keel, 0), at(b.gunwale, 0)
	for _, n := range inner {
		if n == ground {
			continue
		}
		n.up, n.way = b.next(), b.next()
		if n != top || h.Feet { // with loose feet nothing else holds the gunwales along the boat
			n.on = b.next()
		}
	}
	b.stem(&b.gunwale[len(b.gunwale)-1], &b.keel[len(b.keel)-1], h)
}

func pointers(nodes []node) []*node {
	out := make([]*node, len(nodes))
	for i := range nodes {
		out[i] = &nodes[i]
	}
	return out
}

// at returns the node of a chord nearest to a station.
func at(nodes []node, x float64) *node {
	best := &nodes[0]
	for i := range nodes {
		if n := &nodes[i]; math.Abs(n.x-x) < math.Abs(best.x-x) {
			best = n
		}
	}
	return best
}

// stem joins the ends of both chords by a stiff piece that moves with the gunwales' end.
func (b *built) stem(head, foot *node, h Held) {
	head.on, head.up = b.next(), b.next()
	turn := b.next()
	head.way = turn
	if !h.Ends {
		head.way = b.next()
	}
	foot.up = b.plus(share{head.up, 1}, share{turn, foot.x - head.x})
	foot.on, foot.way = b.plus(share{head.on, 1}, share{turn, head.z - foot.z}), turn
	if !h.Feet {
		foot.on, foot.way = b.next(), b.next()
	}
}

// lay puts the sticks of a chord between its nodes.
//
// How: seen from its own two ends, a stick of length l is stretched by e, bent evenly by
// the difference p of its ends' turns and both ways by their sum less twice the turn of
// its chord, q; with k = E I/l its energy is
//
//	E A/l e²/2 + k p²/2 + 3 k q²/2
//
// and its end moments are k p ∓ 3 k q. Where it is bent by w more than it lies, p is
// counted from -w l.
func (b *built) lay(nodes []node, c Chord, wanted func(x float64) float64) {
	for i := 1; i < len(nodes); i++ {
		p, q := &nodes[i-1], &nodes[i]
		l := math.Hypot(q.x-p.x, q.z-p.z)
		cos, sin := (q.x-p.x)/l, (q.z-p.z)/l
		k := c.Bend / l
		s := piece{
			along:  spring{on: b.plus(share{q.on, cos}, share{p.on, -cos}, share{q.up, sin}, share{p.up, -sin}), stiff: c.Stretch / l},
			even:   spring{b.plus(share{q.way, 1}, share{p.way, -1}), k, wanted((p.x+q.x)/2) * l},
			skew:   spring{on: b.plus(share{p.way, 1}, share{q.way, 1}, share{q.up, -2 * cos / l}, share{p.up, 2 * cos / l}, share{q.on, 2 * sin / l}, share{p.on, -2 * sin / l}), stiff: 3 * k},
			length: l,
		}
		b.springs = append(b.springs, s.along, s.even, s.skew)
		if &nodes[0] == &b.keel[0] {
			b.keels = append(b.keels, s)
		}
	}
}

func (b *built) post(x, stiff float64) {
	s := spring{on: b.plus(share{at(b.gunwale, x).up, 1}, share{at(b.keel, x).up, -1}), stiff: stiff}
	b.springs, b.posts = append(b.springs, s), append(b.posts, s)
}

// read takes what is told from the movements. Heights are read with the keel set level.
func (b *built) read(u []float64) *Rest {
	keel := func(x float64) float64 { return at(b.keel, x).up.at(u) }
	tip := (keel(b.level) - keel(-b.level)) / (2 * b.level)
	rise := func(n node, mid *node) float64 { return n.up.at(u) - mid.up.at(u) - tip*n.x }
	top, low := at(b.gunwale, 0), at(b.keel, 0)
	out := &Rest{Depth: top.up.at(u) - low.up.at(u)}
	for i, k := range [2][2]int{{0, 0}, {len(b.gunwale) - 1, len(b.keel) - 1}} {
		out.Sheer[i], out.Rocker[i] = rise(b.gunwale[k[0]], top), rise(b.keel[k[1]], low)
	}
	for _, s := range b.posts {
		out.Pull = math.Max(out.Pull, s.stiff*s.on.at(u))
	}
	for _, s := range b.keels {
		p, q := s.even.stiff*s.even.on.at(u), s.skew.stiff*s.skew.on.at(u)
		out.Keel = math.Max(out.Keel, math.Abs(p)+math.Abs(q))
	}
	mid := b.keels[slices.IndexFunc(b.keel[1:], func(n node) bool { return n.x > 0 })]
	out.Thrust = -mid.along.stiff * mid.along.on.at(u)
	return out
}
