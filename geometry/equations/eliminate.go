package equations

import "math"

// Rows returns n rows of nothing but zeros, each so long, which lie in one room.
func Rows(n, long int) [][]float64 {
	all, out := make([]float64, n*long), make([][]float64, n)
	for i := range out {
		out[i], all = all[:long:long], all[long:]
	}
	return out
}

// Eliminate solves the square system a x = y by Gauss elimination with row
// exchange. It overwrites a and y and returns x in y; ok is false when a row is
// nothing but what the others say already.
func Eliminate(a [][]float64, y []float64) (x []float64, ok bool) {
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
