package cutlist

import (
	"cmp"
	"math"
	"slices"
)

// class is all pieces of one section, with how they lie in a board; or all shaped
// pieces, which are cut out of one wide rip end to end.
type class struct {
	shaped           bool
	width, thickness float64
	across           float64
	layers           int
	pieces           []Piece
}

// classes sorts pieces by their section, the widest rips first; those that do not
// go into the board are returned as they are. With together the shaped pieces make
// one class, as wide as the widest.
func (t sawing) classes(b Board, pieces []Piece, together bool) (in []class, out []Piece) {
	for _, p := range pieces {
		s := t.sticks[p.Stick]
		across, layers, ok := b.lie(s, t.kerf)
		if !ok || p.Length > b.Clear() {
			out = append(out, p)
			continue
		}
		shaped := together && s.shaped() && layers == 1
		i := slices.IndexFunc(in, func(c class) bool {
			return shaped && c.shaped || !shaped && !c.shaped && c.width == s.Width && c.thickness == s.Thickness
		})
		if i < 0 {
			i = len(in)
			in = append(in, class{shaped: shaped, width: s.Width, thickness: s.Thickness, across: across, layers: layers})
		}
		in[i].across = math.Max(in[i].across, across)
		in[i].pieces = append(in[i].pieces, p)
	}
	slices.SortStableFunc(in, func(a, b class) int { return cmp.Compare(b.across, a.across) })
	return in, out
}

// cut saws pieces from boards of one kind and returns what no board was left for.
// It takes the fewest boards of some ways, until none can take fewer: every rip the whole length
// of a board for one section, the ends of wide rips ripped once more, shaped pieces end to end.
func (t sawing) cut(b Board, pieces []Piece) ([]Sawn, []Piece) {
	in, left := t.classes(b, pieces, false)
	var plain []RipCut
	for _, c := range in {
		plain = append(plain, t.rip(b.Clear(), c)...)
	}
	out := t.boards(b, plain)
	least := t.fewest(b, in)
	for _, together := range []bool{false, true} {
		if len(out) <= least {
			break
		}
		if together {
			in, _ = t.classes(b, pieces, together)
		}
		if again := t.boards(b, t.thriftyRips(b, in)); len(again) < len(out) {
			out = again
		}
	}
	if b.Count == 0 || len(out) <= b.Count {
		return out, left
	}
	slices.SortStableFunc(out, func(x, y Sawn) int { return cmp.Compare(t.volume(y), t.volume(x)) })
	for _, s := range out[b.Count:] {
		left = append(left, s.Pieces()...)
	}
	return out[:b.Count], left
}

func (t sawing) boards(b Board, rips []RipCut) []Sawn {
	across := make([]float64, len(rips))
	for i, r := range rips {
		across[i] = r.Across
	}
	var out []Sawn
	for _, bin := range t.pack(across, b.Width, t.gap()).Bins {
		slices.Sort(bin)
		s := Sawn{Board: b}
		for _, i := range bin {
			s.Rips = append(s.Rips, rips[i])
		}
		out = append(out, s)
	}
	return out
}

// gap is what lies between two rips, mm.
func (t sawing) gap() float64 { return t.kerf + Dressing }

// thriftyRips rips the wide sections first and fills the ends that they leave with
// narrower ones.
func (t sawing) thriftyRips(b Board, in []class) []RipCut {
	rest := slices.Clone(in)
	var out []RipCut
	for i := range rest {
		for _, r := range t.rip(b.Clear(), rest[i]) {
			if rest[i].layers == 1 {
				left := b.Clear()
				for _, p := range r.Layers[0] {
					left -= p.Length + t.kerf
				}
				r.Rest = t.fill(r.Across, left, rest[i+1:])
			}
			out = append(out, r)
		}
	}
	return out
}

// fill rips an end of the given size and takes what it holds out of the classes.
func (t sawing) fill(wide, long float64, from []class) []RipCut {
	var out []RipCut
	for i := range from {
		c := &from[i]
		for c.across <= wide {
			short := class{across: c.across, layers: c.layers}
			var others []Piece
			for _, p := range c.pieces {
				if p.Length <= long {
					short.pieces = append(short.pieces, p)
				} else {
					others = append(others, p)
				}
			}
			rips := t.rip(long, short)
			if len(rips) == 0 {
				break
			}
			best := slices.MaxFunc(rips, func(a, b RipCut) int { return cmp.Compare(lengthOf(a), lengthOf(b)) })
			out = append(out, best)
			taken := best.Pieces()
			for _, p := range short.pieces {
				if !slices.Contains(taken, p) {
					others = append(others, p)
				}
			}
			c.pieces = others
			wide -= c.across + t.gap()
		}
	}
	return out
}

func lengthOf(r RipCut) float64 {
	sum := 0.0
	for _, p := range r.Pieces() {
		sum += p.Length
	}
	return sum
}

// rip lays the pieces of a class end to end in strips of a length, and so many
// strips as there are layers over each other.
func (t sawing) rip(long float64, c class) []RipCut {
	sizes := make([]float64, len(c.pieces))
	for i, p := range c.pieces {
		sizes[i] = p.Length
	}
	var out []RipCut
	for i, bin := range t.pack(sizes, long, t.kerf).Bins {
		if i%c.layers == 0 {
			out = append(out, RipCut{Across: c.across})
		}
		var l []Piece
		for _, k := range bin {
			l = append(l, c.pieces[k])
		}
		r := &out[len(out)-1]
		r.Layers = append(r.Layers, l)
	}
	return out
}

// volume is the wood of the pieces on a board, mm3.
func (t sawing) volume(s Sawn) float64 {
	sum := 0.0
	for _, p := range s.Pieces() {
		sum += p.Length * t.sticks[p.Stick].Width * t.sticks[p.Stick].Thickness
	}
	return sum
}

// least is the wood in whole boards that no plan can do without, mm3, for boards of
// one size: the ground that the pieces take up with their saw cuts over that of a
// board. For boards of several sizes it is the pieces alone.
func (t sawing) least(w Wood, cuttings map[int]Cutting) float64 {
	if len(w.Boards) == 0 {
		return 0
	}
	b := w.Boards[0].Board
	for _, s := range w.Boards {
		if s.Board != b {
			return w.Sawn
		}
	}
	var pieces []Piece
	for _, i := range t.mine {
		pieces = append(pieces, cuttings[i].Pieces...)
	}
	in, _ := t.classes(b, pieces, false)
	return float64(t.fewest(b, in)) * b.Volume()
}

// fewest is how many boards of one size no plan can do without: the ground that the pieces
// take up with their saw cuts over that of a board.
func (t sawing) fewest(b Board, in []class) int {
	ground := 0.0
	for _, c := range in {
		for _, p := range c.pieces {
			ground += (p.Length + t.kerf) * (c.across + t.gap()) / float64(c.layers)
		}
	}
	const speck = 1e-9
	return int(math.Ceil(ground/((b.Clear()+t.kerf)*(b.Width+t.gap())) - speck))
}
