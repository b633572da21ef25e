package cutlist

import (
	"cmp"
	"slices"
)

// Lot is so many boards of one size.
type Lot struct {
	Board Board
	Count int
}

// fromNamed saws all sticks of a wood from the builder's boards. Where they are short,
// what the boat needs comes before spare sticks, and what to buy is worked out. Boards
// of another wood are never looked at.
func (t sawing) fromNamed(boards []Board) result {
	best := t.ordered(boards)
	if len(best.Missing) > 0 {
		best = t.sparesLast(boards, best)
		best.Buy = t.lack(boards, best.Missing)
	}
	return best
}

// needed counts the missing sticks that are no spares.
func (t sawing) needed(r result) int {
	n := 0
	for _, m := range r.Missing {
		if !t.sticks[m.Stick].Spare {
			n++
		}
	}
	return n
}

// sparesLast leaves out spare sticks, the fewest, for which a stick that the boat needs
// would be without wood. all is the plan with all of them.
func (t sawing) sparesLast(boards []Board, all result) result {
	var must, spare []int
	for _, i := range t.mine {
		if t.sticks[i].Spare {
			spare = append(spare, i)
		} else {
			must = append(must, i)
		}
	}
	if len(spare) == 0 || len(must) == 0 {
		return all
	}
	first := t
	first.mine = must
	least := first.ordered(boards)
	if t.needed(all) <= len(least.Missing) {
		return all
	}
	best, kept := least, 0
	for n := len(spare) - 1; n > 0; n-- {
		first.mine = slices.Concat(must, spare[:n])
		slices.Sort(first.mine)
		if r := first.ordered(boards); first.needed(r) <= len(least.Missing) {
			best, kept = r, n
			break
		}
	}
	for _, i := range spare[kept:] {
		best.Missing = append(best.Missing, Missing{i, "gives way: the boards named go to what the boat needs before spares"})
	}
	slices.SortStableFunc(best.Missing, func(a, b Missing) int { return cmp.Compare(a.Stick, b.Stick) })
	return best
}

// lack returns the boards that would give the missing sticks: more of one of the sizes
// that the builder named, else of a usual size. None where no board gives any.
func (t sawing) lack(boards []Board, missing []Missing) []Lot {
	t.mine = nil
	for _, m := range missing {
		t.mine = append(t.mine, m.Stick)
	}
	slices.Sort(t.mine)
	var best result
	for _, b := range boards {
		b.Count, b.Price, b.Priced = 0, 0, false // the next one is bought, whatever this one cost
		if r := t.saw([]Board{b}, b.Clear()); r.beats(best) {
			best = r
		}
	}
	if len(best.Missing) > 0 {
		if r := t.fromYard(); len(r.Missing) < len(best.Missing) {
			best = r
		}
	}
	var out []Lot
	for _, s := range best.Boards {
		if len(s.Pieces()) == 0 {
			continue
		}
		if i := slices.IndexFunc(out, func(l Lot) bool { return l.Board == s.Board }); i >= 0 {
			out[i].Count++
		} else {
			out = append(out, Lot{s.Board, 1})
		}
	}
	return out
}
