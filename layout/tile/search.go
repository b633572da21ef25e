package tile

import (
	"math"
	"math/rand/v2"
	"slices"
)

// How often a few sheets are laid again, to empty one and to bring patterns together: what a
// boat's patterns gained in many times as many was nothing. With half as many gathers a sixth
// more pieces lie before the one that comes before them, by 33 boats on letter and a4.
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
	seed   rand.PCG
	dice   *rand.Rand
	on     []int     // the pieces that are laid again
	sizes  []float64 // of them, as the dice have it
	spared []spot    // where they lay
	picked []int     // the sheets that are laid again
	now    []float64 // the share of each sheet that pieces take
	barred []bool    // by sheet and piece: what is known not to go on it
	states []state   // of each sheet, in a trial
}

// state is what a trial has done to a sheet.
type state int

const (
	left    state = iota // as it was: what does not go on it is worth remembering
	crowded              // with more on it: what did not go on it still does not
	emptied              // nothing is known of it
)

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
	s.forget()
	floor, filled := s.fronts+s.leastFilled(), s.filled()
	was := uneven(filled)
	better := func() bool {
		s.now = s.refilled(s.now, filled)
		return uneven(s.now) > was-1e-9
	}
	for n := 0; n < times && s.count > floor; n++ {
		if s.again(s.few(filled), better) {
			filled, s.now = s.dropEmpty(s.now), filled
			was = uneven(filled)
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
	s.forget()
	filled, untidy, now := s.filled(), s.untidy(), 0
	tidier := func() bool {
		if now = s.scattered(); now <= untidy {
			now += misplaced * s.disorder()
		}
		return now <= untidy
	}
	for range gathers {
		if s.again(s.few(filled), tidier) {
			filled, untidy = s.filledIn(filled), now
		}
	}
	s.sortSheets()
	s.tidy()
	s.inOrder()
	return s.plan
}

func (p plan) search() *search {
	s := &search{}
	p.spots = slices.Clone(p.spots)
	s.begin(p)
	return s
}

// begin makes a search ready for a plan, whose spots it will change; one with a negative
// sheet lies nowhere yet.
func (s *search) begin(p plan) {
	s.plan = p
	s.seed.Seed(1, 2)
	if s.dice == nil {
		s.dice = rand.New(&s.seed)
	}
	k := &s.sheets
	k.begin(p, p.count, math.MaxInt32)
	k.was = slices.Grow(k.was[:0], 1)
	for i := range p.spots {
		if t := &p.spots[i]; t.sheet >= 0 {
			k.block(t.sheet, t.box())
		}
	}
	s.barred = s.barred[:0]
}

// forget makes room to remember what goes on no sheet, and remembers nothing.
func (s *search) forget() {
	most := s.count * len(s.pieces)
	s.barred = slices.Grow(s.barred[:0], most)[:most]
	clear(s.barred)
	s.states = slices.Grow(s.states[:0], s.count)[:s.count]
	clear(s.states)
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
	s.sheets.gather()
	boxes := s.sheets.boxes
	s.spared, s.sheets.was = s.spared[:0], s.sheets.was[:0]
	for _, n := range sheets {
		s.sheets.set(n, s.sheets.empty)
		s.states[n] = emptied
	}
	turns := s.turns()
	more := false
	for _, i := range turns {
		s.spared = append(s.spared, s.spots[i])
		if more = !s.layOn(i); more {
			break
		}
	}
	kept := !more && good()
	for _, c := range s.sheets.was {
		s.states[c.sheet] = left
	}
	if kept {
		for _, n := range sheets {
			clear(s.barred[n*len(s.pieces) : (n+1)*len(s.pieces)])
		}
		return true
	}
	for n := range s.spared {
		s.spots[turns[n]] = s.spared[n]
	}
	s.sheets.undo()
	s.sheets.boxes = boxes
	return false
}

// layOn lays a piece on the first sheet with room for it; it reports whether there is one.
func (s *search) layOn(piece int) bool {
	looks := s.pieces[piece].looks
	slim := slimmest(looks)
	for n := range s.count {
		barred := &s.barred[n*len(s.pieces)+piece]
		if *barred && s.states[n] != emptied {
			continue
		}
		if f := best(s.sheets.free[n], looks, slim); f.found {
			s.spots[piece] = s.sheets.take(n, looks, f)
			if s.states[n] == left {
				s.states[n] = crowded
			}
			return true
		}
		if s.states[n] == left {
			*barred = true
		}
	}
	return false
}

// turns lists the pieces of emptied sheets in the order to lay them.
func (s *search) turns() []int {
	s.on = s.on[:0]
	for i := range s.spots {
		if s.states[s.spots[i].sheet] == emptied {
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
	for i := range pieces { // few: each is moved up past smaller ones
		for j := i; j > 0 && s.sizes[pieces[j]] > s.sizes[pieces[j-1]]; j-- {
			pieces[j], pieces[j-1] = pieces[j-1], pieces[j]
		}
	}
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
	all := p.room.W() * p.room.H()
	for i := range p.spots {
		t := &p.spots[i]
		out[t.sheet] += t.look.area() / all
	}
	return out
}

// refilled is filled in a trial, in a slice that serves again, from what it was before.
func (s *search) refilled(out, before []float64) []float64 {
	out = append(out[:0], before...)
	for n, state := range s.states[:s.count] {
		if state != left {
			out[n] = 0
		}
	}
	all := s.room.W() * s.room.H()
	for i := range s.spots {
		if t := &s.spots[i]; s.states[t.sheet] != left {
			out[t.sheet] += t.look.area() / all
		}
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

// dropEmpty drops sheets that nothing lies on; filled is the share that is taken of each, and
// what is left of it is returned.
func (s *search) dropEmpty(filled []float64) []float64 {
	for n := s.count - 1; n >= s.fronts; n-- {
		if filled[n] > 0 {
			continue
		}
		filled, s.sheets.free = slices.Delete(filled, n, n+1), slices.Delete(s.sheets.free, n, n+1)
		if len(s.barred) > 0 {
			s.barred = slices.Delete(s.barred, n*len(s.pieces), (n+1)*len(s.pieces))
		}
		s.count--
		for i := range s.spots {
			if s.spots[i].sheet > n {
				s.spots[i].sheet--
			}
		}
	}
	return filled
}
