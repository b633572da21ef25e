package schedule

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
)

// Plan says when each job begins.
type Plan struct {
	Starts []int
	End    int // when the last is done
	Bound  int // no plan is done before
}

// Find plans the jobs so that the last is done soon. It begins with those that are most
// pressing, justifies the plan to the right and to the left in turn, and then shakes it some
// times, keeping what is no worse; it ends early where a bound proves that nothing is better,
// or where all is done when that is soon enough. The same problem and number of tries give
// the same plan. Method: serial lists and forward-backward justification, R. Kolisch, S. Hartmann,
// European Journal of Operational Research 174, 2006 (from memory). Errors: what Check says.
func (p *Problem) Find(tries, enough int) (*Plan, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	_, latest, _ := p.Paths()
	s := newSearch(p)
	best := s.from(latest)
	bound, at, stale := p.Bound(), best, 0
	for range tries {
		if best.end <= max(bound, enough) {
			break
		}
		if stale++; stale > patience {
			at, stale = s.from(s.shaken(latest, p.Day.rounded(best.end)/2)), 0
		}
		if next := s.from(s.shaken(at.starts, 1+best.end>>s.rand.IntN(6))); next.end <= at.end {
			if next.end < at.end {
				stale = 0
			}
			at = next
		}
		if at.end < best.end {
			best = at
		}
	}
	if err := p.Sweep(best.starts); err != nil {
		return nil, fmt.Errorf("a plan that cannot be: %w", err)
	}
	return &Plan{best.starts, best.end, bound}, nil
}

// patience is after how many tries without a sooner end the search begins elsewhere.
const patience = 150

type search struct {
	p           *Problem
	turn, place []int // the jobs in turn, and the place of each there
	on, back    *table
	rand        *rand.Rand
}

type found struct {
	starts []int
	end    int
}

func newSearch(p *Problem) *search {
	s := &search{p: p, turn: p.inTurn(), on: newTable(p, false), back: newTable(p.backward(), false), rand: rand.New(rand.NewPCG(1, 1))}
	s.place = make([]int, len(s.turn))
	for k, i := range s.turn {
		s.place[i] = k
	}
	return s
}

// from plans the jobs in the order of some keys and justifies the plan as long as it gains.
func (s *search) from(keys []int) found {
	at := s.placed(s.inOrder(keys))
	for {
		next := s.justified(at)
		if next.end >= at.end {
			return at
		}
		at = next
	}
}

func (s *search) placed(order []int) found {
	starts := make([]int, len(order))
	return found{starts, s.on.place(order, starts, 0)}
}

// justified moves all jobs as late as they go, the last ones first, and then as soon as they
// go, the first ones first.
func (s *search) justified(f found) found {
	whole := s.p.Day.rounded(f.end)
	ends := make([]int, len(f.starts))
	for i, v := range f.starts {
		ends[i] = v + s.p.Jobs[i].Length
	}
	late := make([]int, len(ends))
	s.back.place(reversed(s.inOrder(ends)), late, whole-f.end)
	for i, v := range late {
		late[i] = whole - v - s.p.Jobs[i].Length
	}
	return s.placed(s.inOrder(late))
}

// inOrder lists the jobs by their keys, and in turn where these are equal. A job comes behind
// those it waits for whatever its key.
func (s *search) inOrder(keys []int) []int {
	k := slices.Clone(keys)
	for _, i := range s.turn {
		for _, a := range s.p.Jobs[i].After {
			k[i] = max(k[i], k[a.Job])
		}
	}
	out := slices.Clone(s.turn)
	slices.SortFunc(out, func(a, b int) int { return cmp.Or(cmp.Compare(k[a], k[b]), cmp.Compare(s.place[a], s.place[b])) })
	return out
}

// shaken moves each key by up to so much either way.
func (s *search) shaken(keys []int, by int) []int {
	out := slices.Clone(keys)
	for i := range out {
		out[i] += s.rand.IntN(2*by+1) - by
	}
	return out
}
