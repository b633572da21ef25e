package report

import (
	"cmp"
	"math"
	"slices"
)

// sameStation is how near two stations are one, mm: no drawing tells them apart.
const sameStation = 1e-6

// Outward is the order of ribs at those stations, mm, from midship outward, the after one
// of two first.
func Outward(at []float64) []int {
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if far := math.Abs(at[a]) - math.Abs(at[b]); math.Abs(far) > sameStation {
			return cmp.Compare(far, 0)
		}
		return cmp.Compare(at[a], at[b])
	})
	return order
}

// Outward puts the rows of a table of ribs in the order in which ribs go into the boat,
// from midship outward, the after one of two first. Two that stand equally far from
// midship and have the same figures share a row, named "A5, F5". at are the stations of
// the rows, mm; a table that tells where a rib stands tells how far from midship, and the
// rib's name which way.
func (t Table) Outward(at []float64) Table {
	order := Outward(at)
	var rows [][]string
	for k, i := range order {
		row, last := slices.Clone(t.Rows[i]), len(rows)-1
		if k > 0 && math.Abs(at[i]+at[order[k-1]]) <= sameStation && slices.Equal(row[1:], rows[last][1:]) {
			rows[last][0] += ", " + row[0]
			continue
		}
		rows = append(rows, row)
	}
	t.Rows = rows
	return t
}
