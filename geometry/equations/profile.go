// Package equations solves systems of linear equations: those of frames and beams, which
// are symmetric and join what lies near, and small full ones.
package equations

import (
	"math"
	"slices"
)

// Profile is a symmetric matrix of which every row is kept from its first entry that
// is not 0 to the diagonal: what a beam joins lies near the diagonal, but not equally
// near everywhere.
type Profile struct {
	first    []int     // column of the first entry that is kept, in each row
	diagonal []int     // where each row ends in all
	all      []float64 // the rows, one after the other
}

// NewProfile returns one of nothing but zeros, each row kept from the column given: 0 to
// its own number.
func NewProfile(first []int) Profile { return Profile{}.Anew(first) }

// Anew is NewProfile in the room that p had, which is of no more use.
func (p Profile) Anew(first []int) Profile {
	size := 0
	for i, f := range first {
		size += i - f + 1
	}
	p = Profile{first, slices.Grow(p.diagonal[:0], len(first)), slices.Grow(p.all[:0], size)[:size]}
	clear(p.all)
	end := -1
	for i, f := range first {
		end += i - f + 1
		p.diagonal = append(p.diagonal, end)
	}
	return p
}

// Clone returns a copy with values of its own. Both know from one list where their rows
// lie, so neither may be made Anew.
func (p Profile) Clone() Profile { return Profile{p.first, p.diagonal, slices.Clone(p.all)} }

// Copy takes the entries of a profile of the same rows.
func (p Profile) Copy(from Profile) { copy(p.all, from.all) }

// Row is what is kept of row i, the diagonal last.
func (p Profile) Row(i int) []float64 {
	return p.all[p.diagonal[i]-i+p.first[i] : p.diagonal[i]+1]
}

// before is row i without the diagonal.
func (p Profile) before(i int) []float64 {
	end := p.diagonal[i]
	return p.all[end-i+p.first[i] : end]
}

// at is the entry (i, j), which is kept: j is not above i.
func (p Profile) at(i, j int) *float64 { return &p.all[p.diagonal[i]-i+j] }

// Add adds to the entries (i, j) and (j, i), which are one.
func (p Profile) Add(i, j int, v float64) {
	if i < j {
		i, j = j, i
	}
	*p.at(i, j) += v
}

// Pin holds the unknown i at zero: its row and column become those of the identity.
func (p Profile) Pin(i int) {
	clear(p.Row(i))
	for r := i + 1; r < len(p.first); r++ {
		if p.first[r] <= i {
			*p.at(r, i) = 0
		}
	}
	*p.at(i, i) = 1
}

// Factor turns p into L and D of p = L D Lᵀ, D on the diagonal; ok is false when p
// does not stand firm: a pivot is not above 0 beside its own stiffness.
//
// Source: Cholesky's method without roots, as in any text on matrices.
func (p Profile) Factor() (ok bool) {
	for i, from := range p.first {
		row := p.Row(i)
		last := len(row) - 1
		first, diagonal := p.first[from:], p.diagonal[from:]
		for j := range last {
			k, end := max(0, first[j]-from), diagonal[j]
			row[j] -= Dot(row[k:j], p.all[end-j+k:end])
		}
		whole, pivot := row[last], row[last]
		for j := range last {
			share := row[j] / p.all[diagonal[j]]
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

// Dot sums the products of a with as many of b, two sums at a time, which do not wait
// for one another.
func Dot(a, b []float64) float64 {
	even, odd := 0.0, 0.0
	b = b[:len(a)]
	i := 0
	for ; i < len(a)-1; i += 2 { // so written, the compiler sees that all indices are good
		even += a[i] * b[i]
		odd += a[i+1] * b[i+1]
	}
	if i < len(a) {
		even += a[i] * b[i]
	}
	return even + odd
}

// Solve puts in the place of y the x of L D Lᵀ x = y, for a factored profile.
func (p Profile) Solve(x []float64) {
	from := 0 // nothing goes on before the first load
	for from < len(x) && x[from] == 0 {
		from++
	}
	for i := from; i < len(x); i++ {
		x[i] -= Dot(p.before(i), x[p.first[i]:])
	}
	for i, end := range p.diagonal {
		x[i] /= p.all[end]
	}
	for i := len(x) - 1; i >= 0; i-- {
		into, v := x[p.first[i]:i], x[i]
		row := p.before(i)[:len(into)]
		for k, share := range row {
			into[k] -= share * v
		}
	}
}
