package edgeset

import "math"

// solve finds the movements at which the springs together store least: ok is false when
// something moves that nothing holds.
//
// How: the springs' stiffness is summed and factored as L D Lᵀ, each row from its first
// entry on (Cholesky's method without roots, in an envelope; as in any text on matrices).
func (b *built) solve() (u []float64, ok bool) {
	n := b.unknowns
	k, u := make([][]float64, n), make([]float64, n)
	first, own := make([]int, n), make([]float64, n)
	for i := range k {
		k[i], first[i] = make([]float64, i+1), i
	}
	for _, s := range b.springs {
		for _, p := range s.on {
			u[p.of] -= s.stiff * s.lack * p.by
			for _, q := range s.on {
				if q.of <= p.of {
					k[p.of][q.of] += s.stiff * p.by * q.by
					first[p.of] = min(first[p.of], q.of)
				}
			}
		}
	}
	for i := range k {
		own[i] = k[i][i]
	}
	return u, factor(k, first, own) && substitute(k, first, u)
}

// factor leaves L below and D on the diagonal. A pivot that is lost in the rounding of
// its own stiffness holds nothing.
func factor(k [][]float64, first []int, own []float64) bool {
	const lost = 1e-13
	for i := range k {
		for j := first[i]; j < i; j++ {
			for l := max(first[i], first[j]); l < j; l++ {
				k[i][j] -= k[i][l] * k[j][l]
			}
		}
		for j := first[i]; j < i; j++ {
			share := k[i][j] / k[j][j]
			k[i][i] -= share * k[i][j]
			k[i][j] = share
		}
		if !(k[i][i] > lost*own[i]) || math.IsInf(k[i][i], 1) {
			return false
		}
	}
	return true
}

// substitute turns the loads u into movements.
func substitute(k [][]float64, first []int, u []float64) bool {
	for i := range k {
		for j := first[i]; j < i; j++ {
			u[i] -= k[i][j] * u[j]
		}
	}
	for i := range k {
		u[i] /= k[i][i]
	}
	for i := len(k) - 1; i >= 0; i-- {
		for j := first[i]; j < i; j++ {
			u[j] -= k[i][j] * u[i]
		}
	}
	for _, v := range u {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
