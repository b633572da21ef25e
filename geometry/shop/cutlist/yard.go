package cutlist

import (
	"cmp"
	"slices"
)

// soldLong are the lengths to ask for when no boards are named, 8 to 18 feet in even mm: of these the
// ones whose sound wood is no longer than the longest stick, and the one that gives it; all
// where it is 0. Common practice, no source.
func soldLong(longest float64) []float64 {
	usual := []float64{2440, 3050, 3660, 4270, 4880, 5490}
	most := longest + 2*Checked
	if longest == 0 || most >= usual[len(usual)-1] {
		return usual
	}
	short := slices.DeleteFunc(usual, func(long float64) bool { return long > most })
	if len(short) == 0 || short[len(short)-1] < most {
		short = append(short, most)
	}
	return short
}

// yard lists the sizes to ask for when none are named: of the usual lengths, 4 to 12
// inches wide, 1 to 2 inches thick, in even mm. Common practice, no source.
func yard(species string, longest float64) []Board {
	var out []Board
	for _, long := range soldLong(longest) {
		for _, wide := range []float64{100, 150, 200, 250, 300} {
			for _, thick := range []float64{25, 32, 38, 50} {
				out = append(out, Board{Species: species, Length: long, Width: wide, Thickness: thick, Asked: true})
			}
		}
	}
	return out
}

// fromYard takes one of the yard's sizes for all sticks of the wood.
func (t sawing) fromYard() result {
	var best result
	for _, size := range t.promising() {
		if r := t.saw([]Board{size}, size.Clear()); r.beats(best) {
			best = r
		}
	}
	best = t.roomier(best)
	t.askFor(&best)
	return best
}

// promising are the yard's sizes that do best by first-fit, as many as are searched. Sizes are
// tried from the one that can do best, until no other can do as well as those.
func (t sawing) promising() []Board {
	t.pack = firstFitOnly
	sizes := yard(t.species, t.longest)
	atBest, order := make([]score, len(sizes)), make([]int, len(sizes))
	var r result
	var pieces []Piece
	for i, b := range sizes {
		if i == 0 || b.Clear() != sizes[i-1].Clear() {
			r, pieces = t.split(b.Clear())
		}
		atBest[i], order[i] = t.atBest(b, len(r.Missing), pieces), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return atBest[a].compare(atBest[b]) })
	tried := make([]score, len(sizes))
	var best []int
	for _, i := range order {
		if len(best) == t.sizes && atBest[i].compare(tried[best[t.sizes-1]]) > 0 {
			break
		}
		tried[i] = t.saw([]Board{sizes[i]}, sizes[i].Clear()).score
		best = append(best, i)
		slices.SortFunc(best, func(a, b int) int { return cmp.Or(tried[a].compare(tried[b]), cmp.Compare(a, b)) })
		best = best[:min(len(best), t.sizes)]
	}
	var out []Board
	for _, i := range best {
		out = append(out, sizes[i])
	}
	return out
}

// atBest is what no sawing of pieces from boards of one size can beat; so many sticks are
// missing already.
func (t sawing) atBest(b Board, missing int, pieces []Piece) score {
	in, left := t.classes(b, pieces, false)
	out := score{missing: missing, boards: t.fewest(b, in)}
	out.cost = float64(out.boards) * b.Volume()
	gone := map[int]bool{}
	for _, p := range left {
		gone[p.Stick] = true
	}
	out.missing += len(gone)
	for _, c := range in {
		for _, p := range c.pieces {
			if p.Number > 1 && !gone[p.Stick] {
				out.joints++
			}
		}
	}
	return out
}
