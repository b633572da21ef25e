package cutlist

import (
	"cmp"
	"slices"
)

// Packing is which items lie in which bin, by their numbers.
type Packing struct {
	Bins  [][]int
	Bound int // no packing takes fewer bins
}

// hundredths is the whole number of hundredths of a millimetre that holds a
// length; up so that what fits by the numbers fits on the bench.
func hundredths(mm float64, up bool) int {
	const speck = 1e-4 // of a hundredth: rounding in the sums before
	v := mm * 100
	n := int(v)
	if up && v-float64(n) > speck {
		n++
	}
	if !up && float64(n)+1-v <= speck {
		n++
	}
	return n
}

// Pack lays lengths, mm, into as few bins of the given capacity as it finds, with
// gap mm between neighbours in a bin: pieces along a board, or rips across it.
//
// How: first-fit decreasing gives a packing; then bins are filled one after the
// other, each with the longest item left and the best company for it, going back
// on choices within a fixed number of steps. It stops at the bound of Martello and
// Toth, where nothing better exists. The same input gives the same packing.
//
// Requires: every length above 0 and at most the capacity.
// Returns: never more bins than first-fit decreasing.
// Source: S. Martello and P. Toth, Knapsack Problems, 1990, ch. 8 (bound L2); bin
// after bin as in J. Gupta and J. Ho, Production Planning and Control 10 (1999).
func Pack(lengths []float64, capacity, gap float64) Packing {
	room := hundredths(capacity+gap, false)
	sizes := make([]int, len(lengths))
	order := make([]int, len(lengths))
	for i, l := range lengths {
		sizes[i], order[i] = hundredths(l+gap, true), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sizes[b], sizes[a]) })
	out := Packing{Bins: firstFit(sizes, order, room), Bound: boundL2(sizes, order, room)}
	if len(out.Bins) <= out.Bound {
		return out
	}
	s := newSearch(sizes, order, room, out.Bound)
	if bins := s.best(len(out.Bins)); bins != nil {
		out.Bins = bins
	}
	return out
}

// firstFit puts every item, in the given order, into the first bin it fits.
func firstFit(sizes, order []int, room int) [][]int {
	var bins [][]int
	var left []int
	for _, i := range order {
		at := slices.IndexFunc(left, func(l int) bool { return l >= sizes[i] })
		if at < 0 {
			at = len(bins)
			bins, left = append(bins, nil), append(left, room)
		}
		bins[at] = append(bins[at], i)
		left[at] -= sizes[i]
	}
	return bins
}

// boundL2 is the bound of Martello and Toth: items over room-k need a bin each,
// those over half of it too, and what they leave must hold the rest down to k.
func boundL2(sizes, order []int, room int) int {
	best := 0
	try := func(k int) {
		alone, half, left, rest := 0, 0, 0, 0
		for _, i := range order {
			switch v := sizes[i]; {
			case v > room-k:
				alone++
			case 2*v > room:
				half++
				left += room - v
			case v >= k:
				rest += v
			}
		}
		more := 0
		if rest > left {
			more = (rest - left + room - 1) / room
		}
		best = max(best, alone+half+more)
	}
	try(0)
	for _, i := range order {
		if 2*sizes[i] <= room {
			try(sizes[i])
		}
	}
	return best
}
