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
	long     bool // cut as long as can be, not evenly
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
	return map[Way][]bool{Best: {true, false}, Lying: {true}, Standing: {false}}[w]
}

func bestLaid(set Set, sheet paper.Sheet, u measure.System) plan {
	var best plan
	for _, long := range []bool{false, true} {
		p := plan{sheet: sheet, room: roomOf(sheet), units: u, drawings: set.Drawings, long: long}
		for i := range set.Drawings {
			p.pieces = append(p.pieces, fitted(&set.Drawings[i], p.room, long, u)...)
		}
		for _, order := range orders(p.pieces) {
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
		p.lay(order, free)
		_, now := p.cover(set)
		if slices.EqualFunc(now, free, slices.Equal) {
			return p
		}
		free = now
	}
	// It swings to and fro: keep the first sheets for the words alone.
	for n := len(free); ; n++ {
		p.lay(order, make([][]geometry.Box, n))
		if fronts, _ := p.cover(set); len(fronts) <= n {
			return p
		}
	}
}

// lay lays the pieces on first sheets that have these boxes left, and on more.
func (p *plan) lay(order []int, free [][]geometry.Box) {
	k := packer{room: p.room, free: slices.Clone(free)} // a copy, which packing changes
	p.spots = make([]spot, len(p.pieces))
	for _, i := range order {
		p.spots[i] = k.lay(p.pieces[i].size(p.units, p.room.W()))
	}
	p.count, p.fronts = len(k.free), len(free)
	p.sortSheets()
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
		wide, _ := k.size(p.units, p.room.W())
		end := p.spots[i].at.X + wide - p.sheet.Area.Min.X
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

// pieceGap is left between pieces on one sheet, mm: room for scissors.
const pieceGap = 2.5

// spot is where a piece lies: its frame's lower left corner on a sheet.
type spot struct {
	sheet int
	at    geometry.Point
}

// packer lays boxes on sheets. Of each sheet it knows the largest free boxes,
// which overlap each other: what one box takes is cut out of all of them.
// (Maximal rectangles, first fit over the sheets, best short side within one;
// J. Jylanki, A Thousand Ways to Pack the Bin, 2010.)
type packer struct {
	room geometry.Box     // of an empty sheet
	free [][]geometry.Box // by sheet
}

func (k *packer) lay(w, h float64) spot {
	for i := range k.free {
		if at, ok := best(k.free[i], w, h); ok {
			return k.take(i, at, w, h)
		}
	}
	k.free = append(k.free, []geometry.Box{k.room})
	return k.take(len(k.free)-1, geometry.Point{X: k.room.Min.X, Y: k.room.Max.Y}, w, h)
}

// best finds the free box that the piece leaves the least strip of, and in it
// the upper left corner.
func best(free []geometry.Box, w, h float64) (geometry.Point, bool) {
	var at geometry.Point
	least := math.Inf(1)
	for _, f := range free {
		dx, dy := f.W()-w, f.H()-h
		if dx < -closeEnough || dy < -closeEnough {
			continue
		}
		if left := min(dx, dy); left < least-closeEnough {
			least, at = left, geometry.Point{X: f.Min.X, Y: f.Max.Y}
		}
	}
	return at, !math.IsInf(least, 1)
}

// take lays a piece with its upper left corner at the place.
func (k *packer) take(sheet int, at geometry.Point, w, h float64) spot {
	low := geometry.Point{X: at.X, Y: at.Y - h}
	gone := geometry.Box{
		Min: geometry.Point{X: low.X - pieceGap, Y: low.Y - pieceGap},
		Max: geometry.Point{X: at.X + w + pieceGap, Y: at.Y + pieceGap}}
	k.free[sheet] = without(k.free[sheet], gone)
	return spot{sheet, low}
}

// speck is the least side of a free box worth remembering, mm.
const speck = 8.0

// without cuts a box out of free boxes and drops those inside another.
func without(free []geometry.Box, gone geometry.Box) []geometry.Box {
	var out []geometry.Box
	for _, f := range free {
		if gone.Max.X <= f.Min.X || gone.Min.X >= f.Max.X || gone.Max.Y <= f.Min.Y || gone.Min.Y >= f.Max.Y {
			out = append(out, f)
			continue
		}
		parts := [4]geometry.Box{f, f, f, f}
		parts[0].Max.X, parts[1].Min.X = gone.Min.X, gone.Max.X
		parts[2].Max.Y, parts[3].Min.Y = gone.Min.Y, gone.Max.Y
		for _, p := range parts {
			if p.W() > speck && p.H() > speck {
				out = append(out, p)
			}
		}
	}
	return outermost(out)
}

// outermost drops boxes that lie in another one, and repeats.
func outermost(boxes []geometry.Box) []geometry.Box {
	var out []geometry.Box
	for i, b := range boxes {
		inside := slices.ContainsFunc(boxes[:i], func(o geometry.Box) bool { return o.Holds(b.Min) && o.Holds(b.Max) }) ||
			slices.ContainsFunc(boxes[i+1:], func(o geometry.Box) bool { return o != b && o.Holds(b.Min) && o.Holds(b.Max) })
		if !inside {
			out = append(out, b)
		}
	}
	return out
}

// orders lists the orders to lay the pieces in: as they are used at the bench, the tall
// ones first, and the wide ones first. What differs by less than a millimeter counts
// as equal, so that strips keep their order.
func orders(pieces []piece) [][]int {
	used := make([]int, len(pieces))
	for i := range used {
		used[i] = i
	}
	longer := func(a, b float64) int { return cmp.Compare(math.Round(b), math.Round(a)) }
	tall, wide := slices.Clone(used), slices.Clone(used)
	slices.SortStableFunc(tall, func(a, b int) int {
		p, q := pieces[a].frame, pieces[b].frame
		return cmp.Or(longer(p.H(), q.H()), longer(p.W(), q.W()))
	})
	slices.SortStableFunc(wide, func(a, b int) int {
		p, q := pieces[a].frame, pieces[b].frame
		return cmp.Or(longer(p.W(), q.W()), longer(p.H(), q.H()))
	})
	return [][]int{used, tall, wide}
}
