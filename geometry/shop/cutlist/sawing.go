package cutlist

import (
	"cmp"
	"fmt"
	"slices"
)

type sawing struct {
	species string
	sticks  []Stick
	mine    []int // numbers of the sticks of this wood
	kerf    float64
	pack    packer
	longest float64 // of the sticks that a yard gives, mm; 0 for any
	roomy   bool    // scarfed sticks leave some of each board to spare where they can
	sizes   int     // how many of the yard's, the best by first-fit, are searched in full
}

type result struct {
	Wood
	cuttings map[int]Cutting
	kinds    []Board // that it is sawn from, in their order
	long     float64 // the stock that its sticks are scarfed for
	score
}

// score is how well a plan does.
type score struct {
	missing int // sticks without wood
	astray  int // sticks whose faces do not come out as they should
	joints  int
	cost    float64
	boards  int
}

// beats reports whether a result is to be preferred; anything is to none.
func (r result) beats(o result) bool { return o.cuttings == nil || r.compare(o.score) < 0 }

// compare prefers fewer sticks without wood, then fewer whose rings lie the wrong way,
// then fewer scarfs, then less cost, then fewer boards.
func (s score) compare(o score) int {
	const same = 1e-9
	cost := 0
	if d := s.cost - o.cost; d > same*o.cost || d < -same*o.cost {
		cost = cmp.Compare(d, 0)
	}
	return cmp.Or(cmp.Compare(s.missing, o.missing), cmp.Compare(s.astray, o.astray), cmp.Compare(s.joints, o.joints), cost, cmp.Compare(s.boards, o.boards))
}

// ordered tries the orders in which the builder's boards can be used up, the lengths to
// scarf for, and where rings matter both ways to lay sticks: so that they lie as they
// should, and as it saves wood.
func (t sawing) ordered(boards []Board) result {
	var best result
	for _, asWanted := range t.ways(boards) {
		for _, order := range orders(len(boards)) {
			kinds := make([]Board, len(boards))
			for i, k := range order {
				kinds[i] = boards[k]
				kinds[i].asWanted = asWanted && kinds[i].Sawn != ""
			}
			for _, long := range lengths(boards) {
				if r := t.saw(kinds, long); r.beats(best) {
					best = r
				}
			}
		}
	}
	return t.roomier(best)
}

// roomier is a plan whose scarfed sticks are made of pieces that leave some of each board to
// spare, where it is as good.
func (t sawing) roomier(r result) result {
	if t.roomy = true; r.joints > 0 {
		if other := t.saw(r.kinds, r.long); other.compare(r.score) <= 0 {
			return other
		}
	}
	return r
}

// outlay is what boards cost: by price where every kind has one, else by the volume of
// those that must be paid for.
func outlay(kinds []Board, boards []Sawn) float64 {
	price, volume := 0.0, 0.0
	for _, b := range boards {
		price += b.Board.Price
		if !b.Board.Owned() {
			volume += b.Board.Volume()
		}
	}
	if slices.ContainsFunc(kinds, func(b Board) bool { return !b.Priced }) {
		return volume
	}
	return price
}

// split cuts all sticks for stock of the given length, scarfed where they are longer.
func (t sawing) split(long float64) (r result, pieces []Piece) {
	r = result{Wood: Wood{Species: t.species}, cuttings: make(map[int]Cutting, len(t.mine))}
	m := maker{t.sticks, map[string][]Joint{}, t.roomy}
	for _, i := range t.mine {
		c, err := m.split(i, long)
		if err != nil {
			r.Missing = append(r.Missing, Missing{i, err.Error()})
			continue
		}
		r.cuttings[i] = c
		pieces = append(pieces, c.Pieces...)
	}
	return r, pieces
}

// saw makes all sticks from boards used up in their order, scarfed for stock of
// the given length.
func (t sawing) saw(kinds []Board, long float64) result {
	r, pieces := t.split(long)
	r.kinds, r.long = kinds, long
	for _, k := range kinds {
		var boards []Sawn
		boards, pieces = t.cut(k, pieces)
		r.Boards = append(r.Boards, boards...)
		for _, b := range boards {
			r.Bought += b.Board.Volume()
		}
	}
	r.cost = outlay(kinds, r.Boards)
	r.without(pieces, kinds, t)
	r.prune()
	for _, i := range t.mine {
		for _, p := range r.cuttings[i].Pieces {
			r.Sawn += p.Length * t.sticks[i].Width * t.sticks[i].Thickness
		}
		r.joints += len(r.cuttings[i].Joints)
	}
	r.Least = t.least(r.Wood, r.cuttings)
	r.missing, r.astray, r.boards = len(r.Missing), t.astray(r.Boards), len(r.Boards)
	slices.SortStableFunc(r.Missing, func(a, b Missing) int { return cmp.Compare(a.Stick, b.Stick) })
	return r
}

// without notes the sticks of which a piece found no board.
func (r *result) without(pieces []Piece, kinds []Board, t sawing) {
	seen := map[int]bool{}
	for _, p := range pieces {
		if seen[p.Stick] {
			continue
		}
		seen[p.Stick] = true
		s := t.sticks[p.Stick]
		any := "board named"
		if kinds[0].Asked {
			any = "board of a usual size"
		}
		why := fmt.Sprintf("is %.1f x %.1f mm, and no %s is wide and thick enough", s.Width, s.Thickness, any)
		for _, k := range kinds {
			if _, _, ok := k.lie(s, t.kerf); ok && k.Clear() < p.Length {
				why = fmt.Sprintf("needs a piece of %.0f mm, and no %s that is wide and thick enough is so long", p.Length, any)
			}
		}
		for _, k := range kinds {
			if _, _, ok := k.lie(s, t.kerf); ok && k.Clear() >= p.Length {
				why = "finds no room: the boards named are used up"
			}
		}
		r.Missing = append(r.Missing, Missing{p.Stick, why})
	}
}

// prune takes what was sawn of sticks that cannot be completed off the boards.
func (r *result) prune() {
	if len(r.Missing) == 0 {
		return
	}
	for _, m := range r.Missing {
		delete(r.cuttings, m.Stick)
	}
	gone := func(p Piece) bool { _, whole := r.cuttings[p.Stick]; return !whole }
	for i := range r.Boards {
		r.Boards[i].Rips = pruned(r.Boards[i].Rips, gone)
	}
}

func pruned(rips []RipCut, gone func(Piece) bool) []RipCut {
	var out []RipCut
	for _, c := range rips {
		kept := RipCut{Across: c.Across, Rest: pruned(c.Rest, gone)}
		for _, l := range c.Layers {
			if l = slices.DeleteFunc(slices.Clone(l), gone); len(l) > 0 {
				kept.Layers = append(kept.Layers, l)
			}
		}
		if len(kept.Layers) > 0 {
			out = append(out, kept)
		}
	}
	return out
}

// orders lists the orders of n things, all of them up to four, else each first in
// turn.
func orders(n int) [][]int {
	var out [][]int
	if n > 4 {
		all := make([]int, n)
		for i := range all {
			all[i] = i
		}
		for first := range n {
			out = append(out, slices.Concat([]int{first}, all[:first], all[first+1:]))
		}
		return out
	}
	var grow func(done []int)
	grow = func(done []int) {
		if len(done) == n {
			out = append(out, slices.Clone(done))
			return
		}
		for i := range n {
			if !slices.Contains(done, i) {
				grow(append(done, i))
			}
		}
	}
	grow(nil)
	return out
}

func lengths(boards []Board) []float64 {
	var out []float64
	for _, b := range boards {
		out = append(out, b.Clear())
	}
	slices.SortStableFunc(out, func(a, b float64) int { return cmp.Compare(b, a) })
	return slices.Compact(out)
}
