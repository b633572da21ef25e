package tile

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/layout"
	"ribwright/layout/paper"
)

// plan is one way to lay everything: where each piece goes, and how many sheets
// it takes.
type plan struct {
	sheet    paper.Sheet
	room     geometry.Box
	units    measure.System
	drawings []layout.Drawing
	pieces   []piece
	spots    []spot
	count    int // of sheets, the first ones included
	fronts   int // sheets that the words at the beginning begin on
	other    Count
}

// beats reports whether a plan takes fewer sheets than another, or as many with
// fewer joints to tape. On a roll joints count first: long pieces are what a roll
// is for. Anything beats no plan at all.
func (p plan) beats(q plan) bool {
	if q.count == 0 {
		return true
	}
	sheets, joints := cmp.Compare(p.count, q.count), cmp.Compare(len(p.pieces), len(q.pieces))
	if p.sheet.Size.Roll {
		return cmp.Or(joints, sheets) < 0
	}
	return cmp.Or(sheets, joints) < 0
}

// bestPlan tries the ways a sheet can lie, two ways to cut and three orders
// to pack, and returns the plan that beats all; of equals the first, which cuts
// evenly and keeps pieces in order.
func bestPlan(set Set, o Options) (plan, error) {
	var best plan
	var first error
	for _, lying := range o.Way.Lying() {
		sheet, err := o.Paper.Sheet(lying)
		if err != nil {
			first = cmp.Or(first, err)
			continue
		}
		p := bestLaid(set, sheet, o.Units)
		if p.beats(best) {
			p, best = best, p
		}
		if p.count > 0 {
			best.other = Count{p.sheet.Way(), p.count, len(p.pieces)}
		}
	}
	if best.count == 0 {
		return best, first
	}
	return best, nil
}

// Lying returns the ways that come into question: true for lying.
func (w Way) Lying() []bool {
	switch w {
	case Lying:
		return []bool{true}
	case Standing:
		return []bool{false}
	}
	return []bool{true, false}
}

// bestLaid returns the best plan for paper that lies one way.
func bestLaid(set Set, sheet paper.Sheet, u measure.System) plan {
	var best plan
	for _, long := range []bool{false, true} {
		p := plan{sheet: sheet, room: roomOf(sheet), units: u, drawings: set.Drawings}
		for i := range set.Drawings {
			p.pieces = append(p.pieces, cut(&set.Drawings[i], p.room.W(), p.room.H()-captionHigh, long)...)
		}
		for _, order := range [][]int{inOrder(p.pieces), tallFirst(p.pieces), wideFirst(p.pieces)} {
			if q := p.packed(set, order); q.beats(best) {
				best = q
			}
		}
	}
	return best
}

// settling is how often the first sheets are written to find their length: what
// they say of the sheets depends on where the patterns go, and that on them.
const settling = 4

// packed lays the pieces behind the words at the beginning.
func (p plan) packed(set Set, order []int) plan {
	var free [][]geometry.Box
	for range settling {
		p.spots, p.count = pack(p.pieces, order, p.room, clone(free))
		p.fronts = len(free)
		p.sortSheets()
		_, now := p.cover(set)
		if slices.EqualFunc(now, free, slices.Equal) {
			return p
		}
		free = now
	}
	// It swings to and fro: keep the first sheets for the words alone.
	for n := len(free); ; n++ {
		p.spots, p.count = pack(p.pieces, order, p.room, make([][]geometry.Box, n))
		p.fronts = n
		p.sortSheets()
		if fronts, _ := p.cover(set); len(fronts) <= n {
			return p
		}
	}
}

// clone copies free boxes, which packing changes.
func clone(free [][]geometry.Box) [][]geometry.Box {
	var out [][]geometry.Box
	for _, f := range free {
		out = append(out, slices.Clone(f))
	}
	return out
}

// sortSheets puts the sheets after the first ones in the order in which their
// patterns are used.
func (p *plan) sortSheets() {
	lowest := make([]int, p.count)
	order := make([]int, p.count)
	for i := range lowest {
		lowest[i], order[i] = math.MaxInt, i
	}
	for i, s := range p.spots {
		lowest[s.sheet] = min(lowest[s.sheet], i)
	}
	behind := order[p.fronts:]
	slices.SortStableFunc(behind, func(a, b int) int { return cmp.Compare(lowest[a], lowest[b]) })
	to := make([]int, p.count)
	for now, was := range order {
		to[was] = now
	}
	for i := range p.spots {
		p.spots[i].sheet = to[p.spots[i].sheet]
	}
}

// rollStep is what the length of a piece of roll is rounded up to, mm.
const rollStep = 10.0

// trimmed cuts a roll to the length that the patterns need, unless that costs a
// page more.
func (p plan) trimmed(set Set) plan {
	used := 0.0
	for i, k := range p.pieces {
		end := p.spots[i].at.X + k.wide(p.room.W()) - p.sheet.Area.Min.X
		if !p.sheet.Lying {
			end = p.sheet.Area.Max.Y - p.spots[i].at.Y
		}
		used = max(used, end)
	}
	setup, full := p.sheet.Setup, p.sheet.Area.W()
	if !p.sheet.Lying {
		full = p.sheet.Area.H()
	} else {
		used += columnWide + gap
	}
	spare := (full - used) / setup.Down.Factor()
	setup.Size.Down = max(setup.Size.Across, setup.Size.Down-rollStep*math.Floor(max(0, spare-footHigh-gap)/rollStep))
	sheet, err := setup.Sheet(p.sheet.Lying)
	if err != nil {
		return p
	}
	if q := bestLaid(set, sheet, p.units); q.count <= p.count {
		q.other = p.other
		return q
	}
	return p
}
