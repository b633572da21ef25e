package stow

import (
	"cmp"
	"slices"
)

// Piles puts boats into few stacks: in each, every boat stands in the one before it, and there
// are Most at the most. A boat that neither takes another nor goes into one is a stack alone.
// Stacks come widest boat first; of boats as wide as each other the one given first.
//
// How: the widest boat first, each goes into the narrowest that stands uppermost and takes
// it. Fewer stacks may be possible.
func Piles(boats []*Boat, o Options) []*Stack {
	widest := slices.Clone(boats)
	slices.SortStableFunc(widest, func(a, b *Boat) int { return cmp.Compare(b.Outside.Half, a.Outside.Half) })
	n := newNester(widest, o)
	var out []*Stack
	var orders [][]int
	for i := range widest {
		at, with := len(out), (*Stack)(nil)
		for k, order := range orders {
			if len(order) == Most || with != nil && last(order) < last(orders[at]) {
				continue
			}
			if s := n.build(append(slices.Clone(order), i)); s.Nests {
				at, with = k, s
			}
		}
		if with == nil {
			out, orders = append(out, n.build([]int{i})), append(orders, []int{i})
			continue
		}
		out[at], orders[at] = with, append(orders[at], i)
	}
	return out
}

// last is the last of an order.
func last(order []int) int { return order[len(order)-1] }
