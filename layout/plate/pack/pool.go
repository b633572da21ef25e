package pack

import (
	"math/rand/v2"
	"slices"
)

// pool is the best tries of one size that did not come apart, best first.
type pool struct {
	of    float64 // the area of the nest that they were made of, mm2
	tries []try
}

type try struct {
	state
	overlap float64
}

const mostTries = 8

func (p *pool) add(s *state, overlap float64) {
	at, _ := slices.BinarySearchFunc(p.tries, overlap, func(t try, o float64) int { return sign(t.overlap - o) })
	if at == mostTries {
		return
	}
	var t try
	t.copied(s)
	t.overlap = overlap
	p.tries = slices.Insert(p.tries[:min(len(p.tries), mostTries-1)], at, t)
}

// pick draws a try, the better the likelier.
func (p *pool) pick(chance *rand.Rand) *state {
	return &p.tries[min(chance.IntN(len(p.tries)), chance.IntN(len(p.tries)))].state
}
