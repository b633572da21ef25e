package stow

import (
	"fmt"
	"math"
	"slices"
)

// Most is how many boats are put into an order: all orders are tried.
const Most = 6

// Stack is a fleet with every boat in the one before it.
type Stack struct {
	Boats  []*Boat
	Pairs  []*Pair // the second boat in the first, the third in the second ...
	Places []Place // of each boat in the axes of the first
	Out    [][]int // thwarts and seats that must come out, by boat
	Nests  bool    // every boat stands in the one before it

	Height        float64 // from the lowest cloth to the highest wood, mm
	Length, Width float64 // mm
	Mass          float64 // all boats empty, what is taken out included, kg
}

// TakenOut names the thwarts and seats that must come out of boat i of the stack.
func (s *Stack) TakenOut(i int) []string {
	out := []string{}
	for _, n := range s.Out[i] {
		out = append(out, looseOf(s.Boats[i].Frame)[n].name)
	}
	return out
}

// Nest finds the order in which boats go into one another: most of them
// standing on their pads first, then the lowest stack.
//
// Errors: fewer than two boats, or more than Most.
func Nest(boats []*Boat, o Options) (*Stack, error) {
	if len(boats) < 2 || len(boats) > Most {
		return nil, fmt.Errorf("%d boats; accepted: 2 to %d, for every order of them is tried", len(boats), Most)
	}
	n := newNester(boats, o)
	n.try(nil, 0, 0, 0)
	return n.build(n.best), nil
}

func inOrder(boats []*Boat, o Options) *Stack {
	var order []int
	for i := range boats {
		order = append(order, i)
	}
	return newNester(boats, o).build(order)
}

// nester tries orders.
type nester struct {
	boats []*Boat
	o     Options
	kind  []int // boats of one kind are one and the same
	pairs map[[2]int]*Pair

	best  []int
	wrong int     // pairs that do not nest in the best order
	high  float64 // its height
}

func newNester(boats []*Boat, o Options) *nester {
	n := &nester{boats: boats, o: o, pairs: map[[2]int]*Pair{}, wrong: len(boats), high: math.Inf(1)}
	for _, b := range boats {
		n.kind = append(n.kind, slices.IndexFunc(boats, func(first *Boat) bool { return first.like == b.like }))
	}
	return n
}

func (n *nester) pair(i, j int) *Pair {
	key := [2]int{n.kind[i], n.kind[j]}
	if n.pairs[key] == nil {
		n.pairs[key] = Fit(n.boats[i], n.boats[j], n.o)
	}
	return n.pairs[key]
}

// try puts each boat that is left on top of an order; z is where the last one's
// baseline lies, high the top of the stack, wrong how many do not nest.
func (n *nester) try(order []int, z, high float64, wrong int) {
	if wrong > n.wrong || wrong == n.wrong && high >= n.high-even {
		return
	}
	if len(order) == len(n.boats) {
		n.best, n.wrong, n.high = slices.Clone(order), wrong, high
		return
	}
	tried := map[int]bool{}
	for i, b := range n.boats {
		if slices.Contains(order, i) || tried[n.kind[i]] {
			continue
		}
		tried[n.kind[i]] = true
		at, bad := 0.0, wrong
		if len(order) > 0 {
			p := n.pair(order[len(order)-1], i)
			at = z + p.Place.Z
			if !p.Nests {
				bad++
			}
		}
		n.try(append(order, i), at, max(high, at+b.Outside.Top), bad)
	}
}

func (n *nester) build(order []int) *Stack {
	s := &Stack{Nests: true, Places: []Place{{}}, Out: make([][]int, len(order))}
	for k, i := range order {
		s.Boats = append(s.Boats, n.boats[i])
		if k > 0 {
			p := *n.pair(order[k-1], i)
			s.Pairs = append(s.Pairs, &p)
			s.add(k, &p, n.o)
		}
	}
	s.measure()
	return s
}

// add puts the k-th boat on its place, higher where a boat farther down is in
// its way.
func (s *Stack) add(k int, p *Pair, o Options) {
	at := s.Places[k-1].then(p.Place)
	s.Out[k-1] = p.Out
	for j := range k - 1 {
		sk := seeker{s.Boats[j].open(o), s.Boats[k].Outside, o.Pad}
		rel := s.Places[j].from(at)
		if !sk.roomy(rel) {
			bound := clearanceWithin(sk.in, sk.o, rel, o.Pad+1).Least()
			z := sk.rest(rel)
			lift := z - rel.Z
			at.Z += lift
			p.Place.Z += lift
			p.Nests, p.Bound, p.Short, p.Far = false, bound, lift, s.Boats[j]
		}
	}
	for j := range k - 1 {
		sk := seeker{nil, s.Boats[k].Outside, o.Pad}
		for i := range looseOf(s.Boats[j].Frame) {
			if sk.inTheWay(s.Boats[j], i, s.Places[j].from(at)) && !slices.Contains(s.Out[j], i) {
				s.Out[j] = append(s.Out[j], i)
			}
		}
	}
	s.Places = append(s.Places, at)
	s.Nests = s.Nests && p.Nests
}

func (s *Stack) measure() {
	aft, fore := math.Inf(1), math.Inf(-1)
	for i, b := range s.Boats {
		p := s.Places[i]
		a, f := p.X+p.way(b.Outside.Aft), p.X+p.way(b.Outside.Fore)
		aft, fore = min(aft, a, f), max(fore, a, f)
		s.Height = max(s.Height, p.Z+b.Outside.Top)
		s.Width = max(s.Width, 2*b.Outside.Half)
		s.Mass += b.Mass
	}
	s.Length = fore - aft
}
