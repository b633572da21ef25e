package balance

import (
	"math"
	"slices"
)

// profile is a symmetric matrix of which every row is kept from its first entry that
// is not 0 to the diagonal: what a beam joins lies near the diagonal, but not equally
// near everywhere.
type profile struct {
	first []int // column of the first entry that is kept, in each row
	row   [][]float64
}

// newProfile returns one of nothing but zeros.
func newProfile(first []int) profile {
	size := 0
	for i, f := range first {
		size += i - f + 1
	}
	all := make([]float64, size)
	p := profile{first, make([][]float64, len(first))}
	for i, f := range first {
		p.row[i], all = all[:i-f+1:i-f+1], all[i-f+1:]
	}
	return p
}

func (p profile) clone() profile {
	out := newProfile(p.first)
	for i, r := range p.row {
		copy(out.row[i], r)
	}
	return out
}

func (p profile) add(i, j int, v float64) {
	if i < j {
		i, j = j, i
	}
	p.row[i][j-p.first[i]] += v
}

// pin holds the unknown i at zero: its row and column become those of the identity.
func (p profile) pin(i int) {
	clear(p.row[i])
	for r := i + 1; r < len(p.row); r++ {
		if p.first[r] <= i {
			p.row[r][i-p.first[r]] = 0
		}
	}
	p.row[i][i-p.first[i]] = 1
}

// factor turns p into L and D of p = L D Lᵀ, D on the diagonal; ok is false when p
// does not stand firm: a pivot is not above 0 beside its own stiffness.
//
// Source: Cholesky's method without roots, as in any text on matrices.
func (p profile) factor() (ok bool) {
	for i, row := range p.row {
		from, last := p.first[i], len(row)-1
		for j := from; j < i; j++ {
			other, at := p.row[j], p.first[j]
			k := max(from, at)
			row[j-from] -= dot(row[k-from:j-from], other[k-at:])
		}
		whole, pivot := row[last], row[last]
		for j := range last {
			share := row[j] / p.row[from+j][from+j-p.first[from+j]]
			pivot -= share * row[j]
			row[j] = share
		}
		if !(pivot > 1e-13*whole) || math.IsInf(pivot, 1) {
			return false
		}
		row[last] = pivot
	}
	return true
}

// dot sums the products of a with as many of b, two sums at a time, which do not wait
// for one another.
func dot(a, b []float64) float64 {
	even, odd := 0.0, 0.0
	b = b[:len(a)]
	i := 0
	for ; i+1 < len(a); i += 2 {
		even += a[i] * b[i]
		odd += a[i+1] * b[i+1]
	}
	if i < len(a) {
		even += a[i] * b[i]
	}
	return even + odd
}

// solve puts in the place of y the x of L D Lᵀ x = y, for a factored profile.
func (p profile) solve(x []float64) {
	from := 0 // nothing goes on before the first load
	for from < len(x) && x[from] == 0 {
		from++
	}
	for i := from; i < len(x); i++ {
		row := p.row[i]
		x[i] -= dot(row[:len(row)-1], x[p.first[i]:])
	}
	for i, row := range p.row {
		x[i] /= row[len(row)-1]
	}
	for i, row := range slices.Backward(p.row) {
		into, v := x[p.first[i]:i], x[i]
		row = row[:len(into)]
		for k, share := range row {
			into[k] -= share * v
		}
	}
}

// eliminate solves the square system a x = y by Gauss elimination with row
// exchange. It overwrites a and y and returns x in y; ok is false when a row is
// nothing but what the others say already.
func eliminate(a [][]float64, y []float64) (x []float64, ok bool) {
	most := 0.0
	for _, row := range a {
		for _, v := range row {
			most = math.Max(most, math.Abs(v))
		}
	}
	for i := range a {
		best := i
		for r := i + 1; r < len(a); r++ {
			if math.Abs(a[r][i]) > math.Abs(a[best][i]) {
				best = r
			}
		}
		if !(math.Abs(a[best][i]) > 1e-14*most) {
			return nil, false
		}
		a[i], a[best], y[i], y[best] = a[best], a[i], y[best], y[i]
		for r := i + 1; r < len(a); r++ {
			share := a[r][i] / a[i][i]
			if share == 0 {
				continue
			}
			for c := i; c < len(a); c++ {
				a[r][c] -= share * a[i][c]
			}
			y[r] -= share * y[i]
		}
	}
	for i := len(a) - 1; i >= 0; i-- {
		for c := i + 1; c < len(a); c++ {
			y[i] -= a[i][c] * y[c]
		}
		y[i] /= a[i][i]
	}
	return y, true
}
