package balance

import "math"

// reach is how far from the diagonal the stiffness of a beam goes: an element
// joins the offset and the turn of its two neighbouring nodes.
const reach = 4

// band is a symmetric matrix of which only the diagonal and the next reach-1
// places right of it are kept: band[i][k] is the entry in row i, column i+k.
type band [][reach]float64

func (b band) add(i, j int, v float64) {
	if i > j {
		i, j = j, i
	}
	b[i][j-i] += v
}

// pin holds the unknown i at zero: its row and column become those of the
// identity.
func (b band) pin(i int) {
	for k := 1; k < reach; k++ {
		b[i][k] = 0
		if i-k >= 0 {
			b[i-k][k] = 0
		}
	}
	b[i][0] = 1
}

// factor returns L and D of b = L D Lᵀ in one band, D on the diagonal; ok is
// false when b does not stand firm: a pivot is not above 0 beside its own
// stiffness.
//
// Source: Cholesky's method without roots, as in any text on matrices.
func (b band) factor() (f band, ok bool) {
	f = append(band(nil), b...)
	for i := range f {
		if !(f[i][0] > 1e-13*b[i][0]) || math.IsInf(f[i][0], 1) {
			return nil, false
		}
		for k := 1; k < reach && i+k < len(f); k++ {
			share := f[i][k] / f[i][0]
			for l := k; l < reach && i+l < len(f); l++ {
				f[i+k][l-k] -= share * f[i][l]
			}
		}
		for k := 1; k < reach; k++ {
			f[i][k] /= f[i][0]
		}
	}
	return f, true
}

// solve returns x of L D Lᵀ x = y for a factored band.
func (b band) solve(y []float64) []float64 {
	x := append([]float64(nil), y...)
	for i, row := range b {
		for k := 1; k < reach && i+k < len(b); k++ {
			x[i+k] -= row[k] * x[i]
		}
	}
	for i := len(b) - 1; i >= 0; i-- {
		x[i] /= b[i][0]
		for k := 1; k < reach && i+k < len(b); k++ {
			x[i] -= b[i][k] * x[i+k]
		}
	}
	return x
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
