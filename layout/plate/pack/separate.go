package pack

import (
	"math"
	"slices"
)

// separate pushes overlap out of the state and lets parts that still overlap look for a
// better place, so many a round, until none is left or until it has not become less for
// some rounds, some times. It reports whether none is left.
func (s *search) separate(rounds, strikes, seekers, until int) bool {
	s.even()
	least := s.total()
	if least == 0 {
		return true
	}
	s.least.copied(&s.now)
	for range strikes {
		before, idle := least, 0
		for idle < rounds && s.done < until {
			if s.relax() {
				return true
			}
			s.total()
			s.round(seekers)
			sum := s.overlap()
			if sum == 0 {
				return true
			}
			s.weigh()
			if idle++; sum < least {
				if sum < 0.98*least {
					idle = 0
				}
				least = sum
				s.least.copied(&s.now)
			}
		}
		if least > 0.98*before || s.done >= until {
			break
		}
		s.now.copied(&s.least)
		s.total()
	}
	s.now.copied(&s.least)
	return false
}

// round lets parts that overlap look for a better place, in random order.
func (s *search) round(seekers int) {
	n := len(s.now.parts)
	s.order = s.order[:0]
	for i := range n {
		if slices.ContainsFunc(s.depths[i*n:(i+1)*n], func(d float64) bool { return d > 0 }) {
			s.order = append(s.order, i)
		}
	}
	s.chance.Shuffle(len(s.order), func(i, k int) { s.order[i], s.order[k] = s.order[k], s.order[i] })
	for _, i := range s.order[:min(seekers, len(s.order))] {
		s.seek(i)
	}
}

// How weights of pairs change after a round: those that overlap grow by at least and at
// most so much, the others shrink. From the published search.
const (
	growsLeast, growsMost = 1.2, 2.0
	fades                 = 0.95
	mostWeight            = 1e100
)

// weigh makes pairs that still overlap count more: that lifts the search out of pits.
func (s *search) weigh() {
	deepest, heaviest := slices.Max(s.depths), 0.0
	for k, d := range s.depths {
		if d > 0 {
			s.weight[k] *= growsLeast + (growsMost-growsLeast)*d/deepest
		} else {
			s.weight[k] = math.Max(1, s.weight[k]*fades)
		}
		heaviest = math.Max(heaviest, s.weight[k])
	}
	if heaviest > mostWeight {
		for k := range s.weight {
			s.weight[k] = math.Max(1, s.weight[k]/mostWeight)
		}
	}
}
