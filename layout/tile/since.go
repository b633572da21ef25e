package tile

import (
	"math"
	"slices"

	"ribwright/layout"
)

// Since is a set laid over an older one that is printed already: what is equal keeps its
// code, its sheet and its place there.
type Since struct {
	Pieces  []Fate // of the new set, in its order
	Gone    []Fate // of the older set, that the new one has no more
	Kept    []int  // numbers of the sheets that are equal in ink but for the title block
	Reprint []int  // numbers of the sheets that are not; one left without any piece is in neither

	old, new plan
	was, now Set
}

// Was draws the sheets of the older set, which no answer about them needs.
func (s *Since) Was() Laid { return s.old.finish(s.was) }

// Now draws the sheets of the new set.
func (s *Since) Now() Laid { return s.new.finish(s.now) }

// Fate is what becomes of one piece.
type Fate struct {
	Pattern, Title string // name and title of its drawing
	Tile           string // its code; "" for a whole pattern
	Sheet          int    // number of the sheet that it lies on
	Same           bool   // equal in ink to the one that is printed
	Follows        bool   // a piece of the same pattern, title and code is printed
}

// LaySince lays a set over an older one. Joints of a pattern stay where they were as long
// as a piece of it stays equal by that. A changed piece takes the place of its
// forerunner where it goes in, or lies where room is left; the first sheets are
// always written anew. Where no piece is equal the set is laid as if it were alone.
//
// Returns: both sets, and what of the older one still holds.
// Errors: those of Lay, of either set.
func LaySince(was, now Set, o Options) (*Since, error) {
	for _, set := range []Set{was, now} {
		if err := set.check(); err != nil {
			return nil, err
		}
	}
	old, err := bestPlan(was, o)
	if err != nil {
		return nil, err
	}
	if o.Paper.Size.Roll {
		old = old.trimmed(was)
	}
	p, from, same, ok := old.followed(now)
	if !ok {
		if p, err = bestPlan(now, o); err != nil {
			return nil, err
		}
		if o.Paper.Size.Roll {
			p = p.trimmed(now)
		}
		from = old.forerunners(p.pieces)
		same = old.sameInk(p.pieces, from)
	}
	out := &Since{old: old, new: p, was: was, now: now}
	for i, k := range p.pieces {
		f := p.fate(i, same[i])
		f.Follows = from[i] >= 0 && k.drawing.Title == old.pieces[from[i]].drawing.Title
		out.Pieces = append(out.Pieces, f)
	}
	for j := range old.pieces {
		if !slices.Contains(from, j) {
			out.Gone = append(out.Gone, old.fate(j, false))
		}
	}
	out.sheets(old, p, from, same)
	return out, nil
}

func (p plan) fate(i int, same bool) Fate {
	k := p.pieces[i]
	return Fate{Pattern: k.drawing.Name, Title: k.drawing.Title, Tile: k.name(), Sheet: p.spots[i].sheet + 1, Same: same}
}

// sheets parts those that hold from those to print again.
func (s *Since) sheets(old, p plan, from []int, same []bool) {
	for n := range p.count {
		var mine, theirs []int
		for i := range p.pieces {
			if p.spots[i].sheet == n {
				mine = append(mine, i)
			}
		}
		for j := range old.pieces {
			if old.spots[j].sheet == n {
				theirs = append(theirs, j)
			}
		}
		equal := n >= p.fronts && n >= old.fronts && n < old.count && old.sheet == p.sheet && len(mine) == len(theirs)
		for k := 0; equal && k < len(mine); k++ {
			i, j := mine[k], theirs[k]
			equal = same[i] && from[i] == j && p.spots[i].near(old.spots[j]) && p.pieces[i].sameMap(old.pieces[j])
		}
		switch {
		case len(mine) == 0 && n >= p.fronts:
		case equal:
			s.Kept = append(s.Kept, n+1)
		default:
			s.Reprint = append(s.Reprint, n+1)
		}
	}
}

func (s spot) near(t spot) bool {
	return s.sheet == t.sheet && s.turned == t.turned && s.at.Sub(t.at).Norm() < closeEnough && s.look.near(t.look)
}

// sameMap reports whether the maps of both pieces' grids look alike.
func (p piece) sameMap(q piece) bool {
	g, h := p.grid, q.grid
	if g.rows() != h.rows() || g.cols() != h.cols() || p.col != q.col || p.row != q.row {
		return false
	}
	for row := range g.rows() {
		for col := range g.cols() {
			if g.has(col, row) != h.has(col, row) {
				return false
			}
		}
	}
	return true
}

// followed lays a set over an older plan. It returns which of the older pieces each is
// the follower of, -1 for none, and whether it is the same in ink; ok is false where nothing
// would keep its place.
func (p plan) followed(set Set) (out plan, from []int, same []bool, ok bool) {
	out = plan{sheet: p.sheet, room: p.room, units: p.units, drawings: set.Drawings, other: p.other, fronts: p.fronts, each: p.each}
	for i := range set.Drawings {
		out.pieces = append(out.pieces, p.recut(&set.Drawings[i])...)
	}
	from = p.forerunners(out.pieces)
	same = p.sameInk(out.pieces, from)
	return out, from, same, slices.Contains(same, true) && out.settleOver(p, set, from)
}

// sameInk reports which pieces are the same in ink as the older ones that they follow.
func (p plan) sameInk(pieces []piece, from []int) []bool {
	out := make([]bool, len(pieces))
	for i, k := range pieces {
		out[i] = from[i] >= 0 && k.sameInk(p.pieces[from[i]], p.units)
	}
	return out
}

// forerunners finds for each piece the older one of the same pattern and code.
func (p plan) forerunners(pieces []piece) []int {
	type code struct{ pattern, tile string }
	at := map[code]int{}
	for j, k := range p.pieces {
		at[code{k.drawing.Name, k.name()}] = j
	}
	out := make([]int, len(pieces))
	for i, k := range pieces {
		out[i] = -1
		if j, there := at[code{k.drawing.Name, k.name()}]; there {
			out[i] = j
		}
	}
	return out
}

// recut divides a drawing at the joints of its forerunner where that leaves a piece as it
// was, and anew where it does not.
func (p plan) recut(d *layout.Drawing) []piece {
	i := slices.IndexFunc(p.pieces, func(k piece) bool { return k.drawing.Name == d.Name })
	if i < 0 {
		return p.sure(p.options(d)[0]).pieces
	}
	was, b := p.pieces[i], d.Bounds().Grow(air)
	w, h := p.roomOf(was.cutting)
	anew := func() []piece { return p.fitted(cut(d, w, h, was.cutting)) }
	if was.grid.whole() {
		return anew()
	}
	x, okX := moved(was.grid.x, b.Min.X, b.Max.X, w, was.drawing.Whole, d.Whole)
	y, okY := moved(was.grid.y, b.Min.Y, b.Max.Y, h, nil, nil)
	if !okX || !okY {
		return anew()
	}
	out := cutAt(d, p.known.ink(d), was.cutting, x, y)
	if !p.allGoIn(out, w, h) {
		return anew()
	}
	from := p.forerunners(out)
	for j, k := range out {
		if from[j] >= 0 && k.sameInk(p.pieces[from[j]], p.units) {
			return out
		}
	}
	return anew()
}

// moved takes the joints of an older pattern over to ends that may lie elsewhere, unless
// a piece gets too long or too short by that, or a joint cuts deeper into what must stay
// whole.
func moved(was []float64, lo, hi, room float64, whole, wholeNow []layout.Span) ([]float64, bool) {
	out := slices.Clone(was)
	last := len(out) - 1
	out[0], out[last] = lo, hi
	for i := 1; i <= last; i++ {
		long, laps := out[i]-out[i-1], 0.0
		for _, at := range []int{i - 1, i} {
			if at > 0 && at < last {
				laps += lap
			}
		}
		if long+laps > room+closeEnough || last > 1 && long < room*shortest {
			return nil, false
		}
	}
	for _, x := range out[1:last] {
		before, _ := into(x, whole)
		if now, _ := into(x, wholeNow); now > before+closeEnough {
			return nil, false
		}
	}
	return out, true
}

// settleOver puts every piece in the place of its forerunner, where it goes in, and the
// rest where room is left behind the first sheets. It fails where those want more sheets
// than before, or fewer.
func (p *plan) settleOver(old plan, set Set, from []int) bool {
	var k packer
	k.begin(*p, old.count, math.MaxInt32)
	p.spots = make([]spot, len(p.pieces))
	p.count = p.fronts
	home := make([]bool, len(p.pieces)) // whether it takes its forerunner's place
	for i, f := range from {
		if f < 0 {
			continue
		}
		s := old.spots[f]
		was := s.box().Grow(closeEnough)
		s.look = p.pieces[i].like(s.look)
		b := s.box()
		if home[i] = was.Holds(b.Min) && was.Holds(b.Max); home[i] {
			k.block(s.sheet, b)
			p.spots[i] = s
		}
	}
	for i := range p.pieces {
		if !home[i] {
			p.spots[i] = k.lay(p.pieces[i].looks)
		}
		p.count = max(p.count, p.spots[i].sheet+1)
	}
	return p.covers(set) == p.fronts
}
