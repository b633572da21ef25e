package cutlist

import (
	"cmp"
	"slices"
)

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

// search fills bin after bin; items of one size are one class.
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

// packing turns the fills into items.
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
