package cutlist

import (
	"slices"
	"sort"
)

// The reach of the search: fills tried for one bin, bins filled with one number of choices
// kept (or, where there are many, as often as the bins that are aimed at), and classes of
// size looked at in all. Enough for the published instances of the tests in a tenth of a
// second, and what bounds the time for a thousand items.
const (
	mostFills  = 1000
	mostFilled = 1000
	againFill  = 2
	mostLooks  = 40e6
)

// kept is how many choices for a bin are kept for going back on, in turn: few reach
// far back, many look about near the end.
func kept() []int { return []int{2, 3, 4, 8, 16, 40} }

type search struct {
	room   int
	bound  int
	size   []int   // of each class, falling
	items  [][]int // numbers of the items of each class
	left   []int   // how many of each class are not yet in a bin
	total  int     // of what is left
	last   int     // no class after it has any left
	filled int
	looks  int
	keep   int
	target int    // bins that a solution may take
	picked []fill // one a bin

	// While a bin is filled:
	current fill
	fills   int      // tried
	best    []choice // of them, as many as are kept
}

// fill is what lies in a bin: the class of each item.
type fill []int32

type choice struct {
	fill
	waste int
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
	return s
}

// fewer looks for packings of fewer and fewer bins and returns the best, nil when
// none takes fewer than have.
func (s *search) fewer(have int) [][]int {
	var out [][]int
	for s.target = have - 1; s.target >= s.bound; s.target-- {
		if !s.succeeds() {
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

// succeeds looks for a packing in the target with more and more choices kept.
func (s *search) succeeds() bool {
	for _, s.keep = range kept() {
		s.filled, s.picked = 0, nil
		if s.dive(0) {
			return true
		}
	}
	return false
}

// put gives the items of a fill back, or takes them with way -1.
func (s *search) put(f fill, way int) {
	for _, k := range f {
		s.left[k] += way
		s.total += way * s.size[k]
	}
}

// dive fills the bin with the given number and all after it.
func (s *search) dive(bin int) bool {
	if s.total == 0 {
		return true
	}
	if s.filled++; s.filled > max(mostFilled, againFill*s.target) || s.looks > mostLooks || s.total > (s.target-bin)*s.room {
		return false
	}
	for _, f := range s.choices() {
		s.put(f.fill, -1)
		s.picked = append(s.picked, f.fill)
		if s.dive(bin + 1) {
			return true
		}
		s.picked = s.picked[:len(s.picked)-1]
		s.put(f.fill, 1)
	}
	return false
}

// choices are the best fills that hold the longest item left.
func (s *search) choices() []choice {
	some := func(n int) bool { return n > 0 }
	first := slices.IndexFunc(s.left, some)
	for s.last = len(s.left) - 1; s.left[s.last] == 0; s.last-- {
	}
	s.looks += len(s.left)
	s.best, s.fills = nil, 0
	s.add(first, s.room)
	return s.best
}

// add puts one of class k into the current fill of a bin with so much room, goes on from
// there, and takes it out again.
func (s *search) add(k, room int) {
	s.left[k]--
	s.current = append(s.current, int32(k))
	s.extend(k, room-s.size[k])
	s.current = s.current[:len(s.current)-1]
	s.left[k]++
}

// enough reports whether no more fills are wanted for the bin: none beats the perfect ones.
func (s *search) enough() bool {
	return s.fills > mostFills || len(s.best) == s.keep && s.best[s.keep-1].waste == 0
}

// note keeps the current fill where it is one of the best; of equal ones the first found stays.
func (s *search) note(waste int) {
	s.fills++
	at := sort.Search(len(s.best), func(n int) bool { return s.best[n].waste > waste })
	if at == s.keep {
		return
	}
	if len(s.best) == s.keep {
		s.best = s.best[:s.keep-1]
	}
	s.best = slices.Insert(s.best, at, choice{slices.Clone(s.current), waste})
}

// extend adds items from class k on to the current fill and notes every fill to
// which nothing more can be added.
func (s *search) extend(k, room int) {
	full := true
	if room >= s.size[s.last] {
		if s.size[k] > room {
			k += sort.Search(s.last-k, func(n int) bool { return s.size[k+n] <= room })
		}
		for j := k; j <= s.last && !s.enough(); j++ {
			if s.looks++; s.left[j] > 0 {
				full = false
				s.add(j, room)
			}
		}
	}
	if full && !s.enough() {
		s.note(room)
	}
}

func (s *search) packing() [][]int {
	next := make([]int, len(s.items))
	var out [][]int
	for _, f := range s.picked {
		var bin []int
		for _, k := range f {
			bin = append(bin, s.items[k][next[k]])
			next[k]++
		}
		out = append(out, bin)
	}
	return out
}
