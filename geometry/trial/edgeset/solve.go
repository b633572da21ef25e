package edgeset

import (
	"slices"

	"ribwright/geometry"
)

// solve finds the movements at which the springs together store least: ok is false when
// something moves that nothing holds.
func (b *built) solve() (u []float64, ok bool) {
	first := slices.Grow(b.first[:0], b.unknowns)[:b.unknowns]
	for i := range first {
		first[i] = i
	}
	for _, s := range b.springs {
		for _, p := range s.on {
			for _, q := range s.on {
				first[p.of] = min(first[p.of], q.of)
			}
		}
	}
	k, u := b.stiff.Anew(first), make([]float64, b.unknowns)
	b.first, b.stiff = first, k
	for _, s := range b.springs {
		for _, p := range s.on {
			u[p.of] -= s.stiff * s.lack * p.by
			for _, q := range s.on {
				if q.of <= p.of {
					k.Add(p.of, q.of, s.stiff*p.by*q.by)
				}
			}
		}
	}
	if !k.Factor() {
		return nil, false
	}
	k.Solve(u)
	for _, v := range u {
		if !geometry.Finite(v) {
			return nil, false
		}
	}
	return u, true
}
