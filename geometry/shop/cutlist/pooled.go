package cutlist

import (
	"cmp"
	"fmt"
	"slices"
)

// Pooled is the sawing of several boats from one pile of boards.
type Pooled struct {
	Plan           // of all their sticks; each mark has the boat's number in front, as 3:G1
	Owners []int   // of each stick: which boat it is of, 0 for the first
	Apart  []Apart // what each wood of the plan takes when every boat is sawn by itself
}

// Apart is a wood of boats that are sawn each by itself.
type Apart struct {
	Boards       int
	Bought, Sawn float64 // mm3
}

// Waste is the share of the boards that becomes sawdust and offcuts.
func (a Apart) Waste() float64 { return share(a.Bought-a.Sawn, a.Bought) }

// Pool saws the sticks of several plans from one pile. Every stick is in the pieces that its
// own plan cuts it into, so that each boat's own cut list holds. A wood of which some boat
// names its own boards is left as the boats saw it by themselves.
//
// How: the union of the plans to begin with; in its place the best of the yard's sizes for all
// pieces together, or its own sizes with what each takes packed anew, where that takes no
// more boards, no more wood, and lays no more sticks against their rings. Then the smallest board that holds
// what lies on it takes the place of each.
func Pool(plans []*Plan) *Pooled {
	out := &Pooled{}
	var woods []string
	apart := map[string][]Sawn{}
	for b, p := range plans {
		first := len(out.Sticks)
		out.Kerf = max(out.Kerf, p.Kerf)
		for i, s := range p.Sticks {
			s.Mark = fmt.Sprintf("%d:%s", b+1, s.Mark)
			c := Cutting{Pieces: slices.Clone(p.Cuttings[i].Pieces), Joints: p.Cuttings[i].Joints}
			shift(c.Pieces, first)
			out.Sticks, out.Cuttings, out.Owners = append(out.Sticks, s), append(out.Cuttings, c), append(out.Owners, b)
		}
		for _, w := range p.Woods {
			if !slices.Contains(woods, w.Species) {
				woods = append(woods, w.Species)
			}
			for _, s := range w.Boards {
				apart[w.Species] = append(apart[w.Species], Sawn{s.Board, shifted(s.Rips, first)})
			}
		}
	}
	for _, species := range woods {
		out.wood(species, apart[species])
	}
	out.lies()
	return out
}

// shift moves pieces to the numbers that their sticks have in the pool.
func shift(pieces []Piece, by int) {
	for i := range pieces {
		pieces[i].Stick += by
	}
}

func shifted(rips []RipCut, by int) []RipCut {
	var out []RipCut
	for _, r := range rips {
		moved := RipCut{Across: r.Across, Rest: shifted(r.Rest, by)}
		for _, l := range r.Layers {
			l = slices.Clone(l)
			shift(l, by)
			moved.Layers = append(moved.Layers, l)
		}
		out = append(out, moved)
	}
	return out
}

// wood pools one wood.
func (p *Pooled) wood(species string, apart []Sawn) {
	t := sawing{species: species, sticks: p.Sticks, kerf: p.Kerf, pack: Pack, sizes: searched}
	for _, s := range apart { // no longer than the builders, who may have said how long, asked for
		t.longest = max(t.longest, s.Board.Clear())
	}
	cuttings := map[int]Cutting{}
	for i, s := range p.Sticks {
		if s.Species == species && len(p.Cuttings[i].Pieces) > 0 {
			t.mine, cuttings[i] = append(t.mine, i), p.Cuttings[i]
		}
	}
	best := pile{boards: apart}.weighed(t)
	p.Apart = append(p.Apart, Apart{len(apart), best.bought, best.sawn})
	if !slices.ContainsFunc(apart, func(s Sawn) bool { return !s.Board.Asked }) {
		for _, other := range t.piles(best) {
			if other = other.weighed(t); other.saves(best) {
				best = other
			}
		}
		if other := t.smaller(best).weighed(t); other.saves(best) {
			best = other
		}
	}
	t.level(best.boards)
	w := Wood{Species: species, Boards: best.boards, Bought: best.bought, Sawn: best.sawn}
	w.Least = max(t.least(w, cuttings), t.leastOf(w.Boards))
	p.Woods = append(p.Woods, w)
}

// pile is a way to saw all pieces of one wood.
type pile struct {
	boards       []Sawn
	bought, sawn float64
	astray       int
}

func (p pile) weighed(t sawing) pile {
	p.bought, p.sawn = 0, 0
	for _, b := range p.boards {
		p.bought += b.Board.Volume()
		p.sawn += t.volume(b)
	}
	p.astray = t.astray(p.boards)
	return p
}

// saves reports whether a pile takes less wood than another, or as much in fewer boards, and
// nothing is the worse for it.
func (p pile) saves(o pile) bool {
	const speck = 1e-9
	if len(p.boards) == 0 || len(p.boards) > len(o.boards) || p.bought > o.bought*(1+speck) || p.astray > o.astray {
		return false
	}
	return p.bought < o.bought*(1-speck) || len(p.boards) < len(o.boards)
}

// piles are ways to saw what a pile holds anew: each of its sizes for what is sawn from it,
// and the best few of the yard's sizes for all, where rings matter sawn either way too.
func (t sawing) piles(from pile) []pile {
	var kinds []Board
	pieces := map[Board][]Piece{}
	var all []Piece
	for _, s := range from.boards {
		if len(pieces[s.Board]) == 0 {
			kinds = append(kinds, s.Board)
		}
		pieces[s.Board] = append(pieces[s.Board], s.Pieces()...)
		all = append(all, s.Pieces()...)
	}
	var same pile
	for _, b := range kinds {
		boards, _ := t.cut(b, pieces[b])
		same.boards = append(same.boards, boards...)
	}
	out := append([]pile{same}, t.ofOneSize(all, "")...)
	if slices.ContainsFunc(kinds, func(b Board) bool { return b.Sawn != "" }) {
		for _, way := range []Faces{FlatFaces, QuarterFaces} {
			out = append(out, t.ofOneSize(all, way)...)
		}
	}
	return out
}

// ofOneSize are the best few of the yard's sizes for all pieces: sawn as most sticks that mind want
// them, or one way and each stick laid for it.
func (t sawing) ofOneSize(pieces []Piece, way Faces) (out []pile) {
	quick := t
	quick.pack = firstFitOnly
	type tried struct {
		size   Board
		bought float64
	}
	var sizes []tried
	for _, b := range yard(t.species, t.longest) {
		b.Sawn, b.asWanted = way, way != ""
		if boards, left := quick.cut(b, pieces); len(left) == 0 {
			sizes = append(sizes, tried{b, float64(len(boards)) * b.Volume()})
		}
	}
	slices.SortStableFunc(sizes, func(a, b tried) int { return cmp.Compare(a.bought, b.bought) })
	for _, s := range sizes[:min(t.sizes, len(sizes))] {
		boards, _ := t.cut(s.size, pieces)
		if way == "" {
			r := result{Wood: Wood{Boards: boards}}
			t.askFor(&r)
			boards = r.Boards
		}
		for i := range boards {
			boards[i].Board.asWanted = false
		}
		out = append(out, pile{boards: boards})
	}
	return out
}

// leastOf is the wood that no plan can do without that saws the same pieces from boards of
// these sizes, mm3, parts of boards counted: the least that the ground of each piece with its
// saw cuts takes of any of them.
func (t sawing) leastOf(boards []Sawn) float64 {
	var kinds []Board
	for _, s := range boards {
		if !slices.Contains(kinds, s.Board) {
			kinds = append(kinds, s.Board)
		}
	}
	sum := 0.0
	for _, s := range boards {
		for _, c := range s.Pieces() {
			least := s.Board.Volume()
			for _, b := range kinds {
				if across, layers, ok := b.lie(t.sticks[c.Stick], t.kerf); ok && c.Length <= b.Clear() {
					least = min(least, b.Volume()*(c.Length+t.kerf)*(across+t.gap())/float64(layers)/((b.Clear()+t.kerf)*(b.Width+t.gap())))
				}
			}
			sum += least
		}
	}
	return sum
}

// smaller takes, in the place of each board, the smallest of the yard's that holds what lies on it.
func (t sawing) smaller(p pile) pile {
	out := pile{boards: slices.Clone(p.boards)}
	t.pack = firstFitOnly
	for i, s := range p.boards {
		for _, b := range yard(t.species, t.longest) {
			if b.Sawn = s.Board.Sawn; b.Volume() >= out.boards[i].Board.Volume() {
				continue
			}
			if boards, left := t.cut(b, s.Pieces()); len(left) == 0 && len(boards) == 1 && t.astray(boards) <= t.astray(out.boards[i:i+1]) {
				out.boards[i] = boards[0]
			}
		}
	}
	return out
}

// Optimal reports whether it is known that no plan buys less of the wood in whole boards of
// its size.
func (w Wood) Optimal() bool {
	const speck = 1e-9
	for _, b := range w.Boards {
		if b.Board != w.Boards[0].Board {
			return false
		}
	}
	return len(w.Boards) > 0 && w.Bought <= w.Least*(1+speck)
}
