package tile

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"ribwright/geometry"
)

// How often a few sheets are laid again, to empty one and to bring patterns together: what a
// boat's patterns gained in many times as many was nothing.
const (
	searches = 1000
	gathers  = 3000
)

// search empties a few sheets at a time and lays their pieces again, in turns that the
// dice give. What fills sheets less evenly than before is kept, until one of them is empty;
// then what brings the pieces of a pattern together.
// (A large neighborhood search: P. Shaw, Principles and Practice of Constraint Programming,
// 1998.)
type search struct {
	plan
	sheets packer
	dice   *rand.Rand
	on     []int          // the pieces that are laid again
	sizes  []float64      // of them, as the dice have it
	spared []spot         // where they lay
	picked []int          // the sheets that are laid again
	empty  []geometry.Box // what a sheet has free with nothing on it
	now    []float64      // the share of each sheet that pieces take
}

// searched is the plan on fewer sheets where those are found, else the plan as it is. The
// same plan always gives the same.
func (p plan) searched() plan {
	if p.count-p.fronts < 2 {
		return p
	}
	s := p.search()
	if s.fill(searches); s.count == p.count {
		return p
	}
	s.sortSheets()
	return s.plan
}

// fill lays a few sheets again so often, until one sheet less is out of the question.
func (s *search) fill(times int) {
	if s.count-s.fronts < 2 {
		return
	}
	floor, filled := s.fronts+s.leastFilled(), s.filled()
	better := func() bool {
		s.now = s.filledIn(s.now)
		return uneven(s.now) > uneven(filled)-1e-9
	}
	for n := 0; n < times && s.count > floor; n++ {
		if s.again(s.few(filled), better) {
			s.dropEmpty()
			filled = s.filledIn(filled)
		}
	}
}

// gathered is the plan with the pieces of a pattern on fewer sheets and in order, where the
// dice find that.
func (p plan) gathered() plan {
	if p.count-p.fronts < 2 {
		return p
	}
	s := p.search()
	filled, untidy := s.filled(), s.untidy()
	tidier := func() bool { return s.scattered() <= untidy && s.untidy() <= untidy }
	for range gathers {
		if s.again(s.few(filled), tidier) {
			filled, untidy = s.filledIn(filled), s.untidy()
		}
	}
	s.sortSheets()
	s.tidy()
	s.inOrder()
	return s.plan
}

func (p plan) search() search {
	s := search{plan: p, dice: rand.New(rand.NewPCG(1, 2)), empty: []geometry.Box{p.room}, sheets: packer{room: p.room, reach: math.MaxInt32, free: make([][]geometry.Box, p.count)}}
	s.spots = slices.Clone(p.spots)
	for n := range s.sheets.free {
		s.sheets.free[n] = s.empty
		if n < p.fronts {
			s.sheets.free[n] = p.blank(n)
		}
	}
	for _, t := range p.spots {
		if t.sheet >= 0 {
			s.sheets.block(t.sheet, t.box())
		}
	}
	return s
}

// leastFilled is a number of sheets that the pieces cannot be laid on fewer than.
func (p plan) leastFilled() int {
	sum := 0.0
	for _, k := range p.pieces {
		sum += k.looks[0].wide * k.looks[0].high
	}
	return int(math.Ceil(sum / (p.room.W() * p.room.H())))
}

// again lays the pieces of some sheets again, large ones sooner as a rule, and reports
// whether that is kept: where it takes no sheet more and is as good.
func (s *search) again(sheets []int, good func() bool) bool {
	turns := s.turns(sheets)
	boxes := s.sheets.boxes
	s.spared, s.sheets.was = s.spared[:0], s.sheets.was[:0]
	for _, n := range sheets {
		s.sheets.was = append(s.sheets.was, change{n, s.sheets.free[n]})
		s.sheets.free[n] = s.empty
	}
	more := false
	for _, i := range turns {
		s.spared = append(s.spared, s.spots[i])
		s.spots[i] = s.sheets.lay(s.pieces[i].looks)
		if more = s.spots[i].sheet >= s.count; more {
			break
		}
	}
	if !more && good() {
		return true
	}
	for n, t := range s.spared {
		s.spots[turns[n]] = t
	}
	s.sheets.undo(s.count)
	s.sheets.boxes = boxes
	return false
}

// turns lists the pieces of some sheets in the order to lay them.
func (s *search) turns(sheets []int) []int {
	s.on = s.on[:0]
	for i := range s.spots {
		if slices.Contains(sheets, s.spots[i].sheet) {
			s.on = append(s.on, i)
		}
	}
	return s.bySize(s.on)
}

// bySize orders pieces, large ones sooner as a rule.
func (s *search) bySize(pieces []int) []int {
	s.sizes = slices.Grow(s.sizes, len(s.pieces))[:len(s.pieces)]
	for _, i := range pieces {
		s.sizes[i] = s.pieces[i].looks[0].area() * (0.4 + s.dice.Float64())
	}
	slices.SortStableFunc(pieces, func(a, b int) int { return cmp.Compare(s.sizes[b], s.sizes[a]) })
	return pieces
}

// few picks two to four sheets, one of them with little on it.
func (s *search) few(filled []float64) []int {
	pick := func() int { return s.fronts + s.dice.IntN(s.count-s.fronts) }
	first := pick()
	for range 2 {
		if o := pick(); filled[o] < filled[first] {
			first = o
		}
	}
	s.picked = append(s.picked[:0], first)
	for range 1 + s.dice.IntN(3) {
		s.picked = append(s.picked, pick())
	}
	slices.Sort(s.picked)
	return slices.Compact(s.picked)
}

// filled is the share of each sheet that pieces take.
func (p *plan) filled() []float64 { return p.filledIn(nil) }

// filledIn is filled in a slice that serves again.
func (p *plan) filledIn(out []float64) []float64 {
	out = slices.Grow(out[:0], p.count)[:p.count]
	clear(out)
	for i := range p.spots {
		t := &p.spots[i]
		out[t.sheet] += t.look.area() / (p.room.W() * p.room.H())
	}
	return out
}

// uneven is the higher the nearer sheets are to one of them less.
func uneven(filled []float64) float64 {
	sum := 0.0
	for _, f := range filled {
		sum += f * f
	}
	return sum
}

// dropEmpty drops sheets that nothing lies on.
func (s *search) dropEmpty() {
	filled := s.filled()
	for n := s.count - 1; n >= s.fronts; n-- {
		if filled[n] > 0 {
			continue
		}
		s.sheets.free = slices.Delete(s.sheets.free, n, n+1)
		s.count--
		for i := range s.spots {
			if s.spots[i].sheet > n {
				s.spots[i].sheet--
			}
		}
	}
}
