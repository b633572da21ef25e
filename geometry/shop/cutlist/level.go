package cutlist

import "slices"

// ample is what a strip may have to spare at its ends and wants no more, mm. Our own choice:
// few checks reach so much farther than is cut off anyway.
const ample = 100.0

// strip is a layer of a rip from which other pieces of the same section may be sawn as well.
type strip struct {
	kind
	layer *[]Piece
	room  float64 // between the checked ends
}

// kind is what strips have in common that may change pieces: the boards, and how sticks of which
// section lie in them.
type kind struct {
	board                    Board
	across, width, thickness float64
}

func (t sawing) spare(s strip) float64 {
	left := s.room
	for _, p := range *s.layer {
		left -= p.Length + t.kerf
	}
	return left
}

// level shares pieces out between the strips of a plan so that those with the least to spare
// have more: ends of boards are worse than is reckoned, here and there. Boards and rips stay.
//
// How: a strip with little hands a piece to another, or changes one with it, whichever
// leaves most in both; and so on as long as that helps.
func (t sawing) level(boards []Sawn) {
	var strips []strip
	for i := range boards {
		t.strips(boards[i].Board, boards[i].Rips, boards[i].Board.Clear(), &strips)
	}
	const mostRounds = 20
	for range mostRounds {
		helped := false
		for _, s := range strips {
			helped = t.relieve(s, strips) || helped
		}
		if !helped {
			return
		}
	}
}

// strips gathers the layers of rips whose pieces are all of one section. A layer before a rest
// keeps its pieces, for the rest begins where they end.
func (t sawing) strips(b Board, rips []RipCut, room float64, into *[]strip) {
	for i := range rips {
		r := &rips[i]
		if len(r.Rest) > 0 {
			t.strips(b, r.Rest, t.spare(strip{layer: &r.Layers[0], room: room}), into)
			continue
		}
		for k := range r.Layers {
			l := &r.Layers[k]
			first := t.sticks[(*l)[0].Stick]
			if !slices.ContainsFunc(*l, func(p Piece) bool {
				s := t.sticks[p.Stick]
				return s.Width != first.Width || s.Thickness != first.Thickness
			}) {
				*into = append(*into, strip{kind{b, r.Across, first.Width, first.Thickness}, l, room})
			}
		}
	}
}

// relieve gives a strip more to spare at the cost of another that has more, and reports whether
// it could.
func (t sawing) relieve(s strip, strips []strip) bool {
	const speck = 0.5
	had, most := t.spare(s), 0.0
	if had >= ample {
		return false
	}
	var best func()
	for _, o := range strips {
		has := t.spare(o)
		if o.layer == s.layer || o.kind != s.kind || has <= had+speck {
			continue
		}
		for i, p := range *s.layer {
			offer := func(by float64, swap func()) {
				if gain := min(had+by, has-by, ample) - had; gain > speck && gain > most {
					most, best = gain, swap
				}
			}
			if len(*s.layer) > 1 {
				offer(p.Length+t.kerf, func() { *s.layer = slices.Delete(slices.Clone(*s.layer), i, i+1); *o.layer = longestFirst(*o.layer, p) })
			}
			for k, q := range *o.layer {
				offer(p.Length-q.Length, func() {
					*s.layer = longestFirst(slices.Delete(slices.Clone(*s.layer), i, i+1), q)
					*o.layer = longestFirst(slices.Delete(slices.Clone(*o.layer), k, k+1), p)
				})
			}
		}
	}
	if best == nil {
		return false
	}
	best()
	return true
}

// longestFirst lays one more piece where it comes in turn.
func longestFirst(layer []Piece, p Piece) []Piece {
	at := slices.IndexFunc(layer, func(q Piece) bool { return q.Length < p.Length })
	if at < 0 {
		at = len(layer)
	}
	return slices.Insert(slices.Clone(layer), at, p)
}
