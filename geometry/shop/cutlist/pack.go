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
// on choices within a fixed number of steps. It stops at the bound of Martello and
// Toth, where nothing better exists. The same input gives the same packing.
// Requires: every length above 0 and at most the capacity.
// Returns: never more bins than first-fit decreasing.
// Source: S. Martello and P. Toth, Knapsack Problems, 1990, ch. 8 (bound L2); bin
// after bin as in J. Gupta and J. Ho, Production Planning and Control 10 (1999).
func Pack(lengths []float64, capacity, gap float64) Packing {
	out, sizes, order := firstFitIn(lengths, capacity, gap)
	if len(out.Bins) <= out.Bound {
		return out
	}
	s := newSearch(sizes, order, hundredths(capacity+gap, false), out.Bound)
	if bins := s.best(len(out.Bins)); bins != nil {
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
	room := hundredths(capacity+gap, false)
	sizes, order = make([]int, len(lengths)), make([]int, len(lengths))
	for i, l := range lengths {
		sizes[i], order[i] = hundredths(l+gap, true), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sizes[b], sizes[a]) })
	return Packing{Bins: firstFit(sizes, order, room), Bound: boundL2(sizes, order, room)}, sizes, order
}

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

// The reach of the search: fills tried for one bin, choices kept for going back
// on, and bins filled in all. Enough for the published instances of the tests in
// well under a second.
const (
	mostFills  = 1000
	mostFilled = 1000
)

// kept is how many choices for a bin are kept for going back on, in turn: few reach
// far back, many look about near the end.
func kept() []int { return []int{2, 3, 4, 8, 16, 40} }

type search struct {
	room    int
	bound   int
	size    []int   // of each class, falling
	items   [][]int // numbers of the items of each class
	left    []int   // how many of each class are not yet in a bin
	total   int     // of what is left
	filled  int
	keep    int
	target  int // bins that a solution may take
	picked  [][]int
	fills   int
	current []int
}

func newSearch(sizes, order []int, room, bound int) *search {
	s := &search{room: room, bound: bound}
	for _, i := range order {
		if n := len(s.size); n == 0 || s.size[n-1] != sizes[i] {
			s.size, s.items = append(s.size, sizes[i]), append(s.items, nil)
		}
		n := len(s.size) - 1
		s.items[n] = append(s.items[n], i)
		s.total += sizes[i]
	}
	for _, class := range s.items {
		s.left = append(s.left, len(class))
	}
	s.current = make([]int, len(s.size))
	return s
}

// best looks for packings of fewer and fewer bins and returns the best, nil when
// none takes fewer than have.
func (s *search) best(have int) [][]int {
	var out [][]int
	for s.target = have - 1; s.target >= s.bound; s.target-- {
		if !s.found() {
			return out
		}
		out = s.packing()
		for _, f := range s.picked {
			s.put(f, 1)
		}
		s.target = len(out)
	}
	return out
}

// found looks for a packing in the target with more and more choices kept.
func (s *search) found() bool {
	for _, s.keep = range kept() {
		s.filled, s.picked = 0, nil
		if s.dive(0) {
			return true
		}
	}
	return false
}

// put gives the items of a fill back, or takes them with way -1.
func (s *search) put(fill []int, way int) {
	for k, n := range fill {
		s.left[k] += way * n
		s.total += way * n * s.size[k]
	}
}

// dive fills the bin with the given number and all after it.
func (s *search) dive(bin int) bool {
	if s.total == 0 {
		return true
	}
	if s.filled++; s.filled > mostFilled || s.total > (s.target-bin)*s.room {
		return false
	}
	for _, f := range s.choices() {
		s.put(f, -1)
		s.picked = append(s.picked, f)
		if s.dive(bin + 1) {
			return true
		}
		s.picked = s.picked[:len(s.picked)-1]
		s.put(f, 1)
	}
	return false
}

// choices are the best fills that hold the longest item left.
func (s *search) choices() [][]int {
	first := slices.IndexFunc(s.left, func(n int) bool { return n > 0 })
	var found []choice
	s.fills = 0
	s.left[first]--
	s.current[first]++
	s.extend(first, s.room-s.size[first], &found)
	s.current[first]--
	s.left[first]++
	slices.SortStableFunc(found, func(a, b choice) int { return cmp.Compare(a.waste, b.waste) })
	var out [][]int
	for _, f := range found[:min(len(found), s.keep)] {
		out = append(out, f.fill)
	}
	return out
}

type choice struct {
	fill  []int
	waste int
}

// extend adds items from class k on to the current fill and notes every fill to
// which nothing more can be added.
func (s *search) extend(k, room int, found *[]choice) {
	if s.fills > mostFills {
		return
	}
	full := true
	for j := k; j < len(s.size); j++ {
		if s.left[j] == 0 || s.size[j] > room {
			continue
		}
		full = false
		s.left[j]--
		s.current[j]++
		s.extend(j, room-s.size[j], found)
		s.current[j]--
		s.left[j]++
		if s.fills > mostFills {
			return
		}
	}
	if full {
		s.fills++
		*found = append(*found, choice{slices.Clone(s.current), room})
	}
}

func (s *search) packing() [][]int {
	next := make([]int, len(s.items))
	var out [][]int
	for _, f := range s.picked {
		var bin []int
		for k, n := range f {
			bin = append(bin, s.items[k][next[k]:next[k]+n]...)
			next[k] += n
		}
		out = append(out, bin)
	}
	return out
}
