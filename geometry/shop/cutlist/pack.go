package cutlist

import (
	"cmp"
	"slices"
	"sort"
)

// Packing is which items lie in which bin, by their numbers.
type Packing struct {
	Bins  [][]int
	Bound int // no packing takes fewer bins
}

// Optimal reports whether it is known that no packing takes fewer bins.
func (p Packing) Optimal() bool { return len(p.Bins) <= p.Bound }

// hundredths is the whole number of hundredths of a millimeter that holds a
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
// gap mm between neighbors in a bin: pieces along a board, or rips across it.
//
// How: first-fit decreasing gives a packing; then bins are filled one after the
// other, each with the longest item left and the best company for it, going back
// on choices within a fixed number of steps, so that a thousand items take a fraction of
// a second. It stops at a bound, where nothing better exists. The same input gives the
// same packing.
// Requires: every length above 0 and at most the capacity.
// Returns: never more bins than first-fit decreasing.
// Source: S. Martello and P. Toth, Knapsack Problems, 1990, ch. 8 (bounds); bin
// after bin as in J. Gupta and J. Ho, Production Planning and Control 10 (1999).
func Pack(lengths []float64, capacity, gap float64) Packing {
	out, sizes, order := firstFitIn(lengths, capacity, gap)
	if out.Optimal() {
		return out
	}
	s := newSearch(sizes, order, hundredths(capacity+gap, false), out.Bound)
	if bins := s.fewer(len(out.Bins)); bins != nil {
		out.Bins = bins
	}
	return out
}

func firstFitOnly(lengths []float64, capacity, gap float64) Packing {
	out, _, _ := firstFitIn(lengths, capacity, gap)
	return out
}

// firstFitIn packs by first-fit decreasing; it returns the sizes with their gaps in
// hundredths, too, and their order, the largest first.
func firstFitIn(lengths []float64, capacity, gap float64) (out Packing, sizes, order []int) {
	if len(lengths) == 0 {
		return Packing{}, nil, nil // whatever the capacity
	}
	room := hundredths(capacity+gap, false)
	sizes, order = make([]int, len(lengths)), make([]int, len(lengths))
	for i, l := range lengths {
		sizes[i], order[i] = min(room, hundredths(l+gap, true)), i // one that fills a bin fits by a speck
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sizes[b], sizes[a]) })
	return Packing{Bins: firstFit(sizes, order, room), Bound: bound(sizes, order, room)}, sizes, order
}

// firstFit lays each item into the first bin with room. A tree over the bins holds the most
// room in each of its parts, so that the first one is found without looking at all.
func firstFit(sizes, order []int, room int) [][]int {
	leaves := 1
	for leaves < len(order) {
		leaves *= 2
	}
	most := make([]int, 2*leaves) // the children of k are 2k and 2k+1
	for k := range most {
		most[k] = room
	}
	var bins [][]int
	for _, i := range order {
		k := 1
		for k < leaves {
			if k *= 2; most[k] < sizes[i] {
				k++
			}
		}
		if at := k - leaves; at == len(bins) {
			bins = append(bins, nil)
		}
		bins[k-leaves] = append(bins[k-leaves], i)
		for most[k] -= sizes[i]; k > 1; k /= 2 {
			most[k/2] = max(most[k], most[k^1])
		}
	}
	return bins
}

// bound is the larger of two: that of Martello and Toth (items over room-k need a bin each,
// those over half of it too, and what they leave must hold the rest down to k), and that of
// counts: of items over a (k+1)th of the room a bin holds k.
func bound(sizes, order []int, room int) int {
	sums := make([]int, len(order)+1) // of the largest ones
	for n, i := range order {
		sums[n+1] = sums[n] + sizes[i]
	}
	over := func(v int) int { return sort.Search(len(order), func(n int) bool { return sizes[order[n]] <= v }) }
	halves, best := over(room/2), 0
	for n := halves; n <= len(order); n++ {
		k := 0
		if n < len(order) {
			k = sizes[order[n]]
		}
		if n > halves && n < len(order) && k == sizes[order[n-1]] {
			continue
		}
		alone := over(room - k)
		left, rest := (halves-alone)*room-(sums[halves]-sums[alone]), sums[over(k-1)]-sums[halves]
		best = max(best, halves+max(0, (rest-left+room-1)/room))
	}
	const mostShared = 50 // items a bin
	for k := 1; k <= mostShared; k++ {
		best = max(best, (over(room/(k+1))+k-1)/k)
	}
	return best
}
