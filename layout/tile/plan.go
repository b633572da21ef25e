package tile

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/measure"
	"ribwright/geometry/sidebyside"
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
	known    *known
	each     func(n int, work func(i int)) // does pieces of work, at the same time where cores are free
	pieces   []piece
	spots    []spot
	count    int // of sheets, the first ones included
	fronts   int // sheets that the words at the beginning are on
	other    Count
}

// JointPrice is what a joint costs, in sheets: about five minutes, and 0.3 mm that may
// slip. Our own choice.
const JointPrice = 0.5

// scatter is what it costs that a pattern lies on one sheet more, in sheets: so little
// that it never outweighs a sheet. Our own choice.
const scatter = 0.002

// price is what a plan costs, in sheets. On a roll only joints count, then pages: long
// pieces are what a roll is for.
func (p plan) price() float64 {
	return p.cost() + scatter*float64(p.scattered())
}

// cost is the price without what scattered patterns cost.
func (p plan) cost() float64 {
	sheets, joints := float64(p.count), JointPrice*float64(joined(p.pieces))
	if p.sheet.Size.Roll {
		joints *= 1000
	}
	return sheets + joints
}

// beats reports whether a plan costs less than another; anything beats no plan at all.
func (p plan) beats(q plan) bool {
	return q.count == 0 || p.price() < q.price()-1e-9
}

// joined counts the joints to tape between pieces.
func joined(pieces []piece) int {
	n := 0
	for i := range pieces {
		k := &pieces[i]
		for _, before := range [2]bool{k.grid.has(k.col-1, k.row), k.grid.has(k.col, k.row-1)} {
			if before {
				n++
			}
		}
	}
	return n
}

// scattered counts on how many sheets the patterns lie, each for itself; those of a family
// are one.
func (p *plan) scattered() int {
	var room [1024]bool
	n, seen := 0, slices.Grow(room[:0], len(p.drawings)*p.count)[:len(p.drawings)*p.count]
	for i := range p.pieces {
		if on := &seen[p.pieces[i].pattern*p.count+p.spots[i].sheet]; !*on {
			n, *on = n+1, true
		}
	}
	return n
}

// pattern returns the number of a drawing: that of the first of its family, or of its name.
func (p plan) pattern(d *layout.Drawing) int {
	return slices.IndexFunc(p.drawings, func(o layout.Drawing) bool {
		return cmp.Or(o.Family, o.Name) == cmp.Or(d.Family, d.Name)
	})
}

// bestPlan tries the ways a sheet can lie, the ways to cut and the orders to pack, and
// returns the plan that costs least; of equals the first, which cuts evenly and keeps
// pieces in order.
func bestPlan(set Set, o Options) (plan, error) {
	var sheets []paper.Sheet
	var first error
	for _, lying := range o.Way.Lying() {
		sheet, err := o.Paper.Sheet(lying)
		if err != nil {
			first = cmp.Or(first, err)
			continue
		}
		sheets = append(sheets, sheet)
	}
	p := plan{units: o.Units, drawings: set.Drawings, known: &known{}, each: sidebyside.Each}
	if o.Busy {
		p.each = sidebyside.OneByOne
	}
	switch all := p.laidOn(set, sheets); len(all) {
	case 0:
		return plan{}, first
	case 1:
		return all[0].gathered(), nil
	default:
		return cheaper(all[0], all[1]), nil
	}
}

// laidOn is the plan for each way that a sheet lies: every pattern is cut in the way of many
// that lets all of them lie best.
func (p plan) laidOn(set Set, sheets []paper.Sheet) []plan {
	out, ways := make([]plan, len(sheets)), make([][][]option, len(sheets))
	for i, sheet := range sheets {
		out[i] = p
		out[i].sheet, out[i].room = sheet, roomFor(set, sheet)
		ways[i] = make([][]option, len(set.Drawings))
	}
	p.each(len(set.Drawings), func(d int) {
		for i := range out {
			ways[i][d] = out[i].options(&set.Drawings[d])
		}
	})
	p.each(len(out), func(i int) { out[i] = out[i].begun(set, ways[i]).cutBetter(ways[i]).searched() })
	return out
}

// cheaper is the one of two plans that costs less once it is gathered, the first of equals. To
// gather is slow, and spared the one that is dearer even with nothing scattered.
func cheaper(first, second plan) plan {
	a, b := &first, &second
	if b.cost() < a.cost() {
		a, b = b, a
	}
	*a = a.gathered()
	if b.cost() < a.price() {
		*b = b.gathered()
	}
	if second.beats(first) {
		first, second = second, first
	}
	first.other = second.counted()
	return first
}

func (p plan) counted() Count {
	return Count{Way: p.sheet.Way(), Sheets: p.count, Pieces: len(p.pieces), Joints: joined(p.pieces)}
}

// Lying returns the ways that come into question: true for lying.
func (w Way) Lying() []bool {
	return map[Way][]bool{Best: {true, false}, Lying: {true}, Standing: {false}}[w]
}

// rollStep is what the length of a piece of roll is rounded up to, mm.
const rollStep = 10.0

// trimmed cuts a roll to the length that the patterns need, unless that costs a
// page more.
func (p plan) trimmed(set Set) plan {
	used := 0.0
	use := func(b geometry.Box) {
		end := b.Max.X - p.sheet.Area.Min.X
		if !p.sheet.Lying {
			end = p.sheet.Area.Max.Y - b.Min.Y
		}
		used = max(used, end)
	}
	for i := range p.pieces {
		use(p.spots[i].box())
	}
	if set.First != nil {
		use(frontOf(p.room))
	}
	setup, full := p.sheet.Setup, p.sheet.Area.W()
	if !p.sheet.Lying {
		full = p.sheet.Area.H()
	} else {
		used += columnWide + gap
	}
	spare := (full - used) / setup.Down.Factor()
	setup.Size.Down = max(setup.Size.Across, setup.Size.Down-rollStep*math.Floor(max(0, spare-footOf(set, p.sheet, most, most).high()-gap)/rollStep))
	sheet, err := setup.Sheet(p.sheet.Lying)
	if err != nil {
		return p
	}
	if q := p.laidOn(set, []paper.Sheet{sheet})[0].gathered(); q.count <= p.count {
		return q
	}
	return p
}

// packed lays the pieces behind the words at the beginning, in the best of many orders.
func (p plan) packed(set Set) plan {
	for p.fronts = p.leastFronts(set); ; p.fronts++ {
		best := p.bestOrder(set)
		if best.covers(set) <= best.fronts {
			return best
		}
	}
}

// madeRoom moves the pieces on by the sheets that the words at the beginning take more than
// was kept for them: where pieces changed places, the index may name more sheets.
func (p plan) madeRoom(set Set) plan {
	for {
		more := p.covers(set) - p.fronts
		if more <= 0 {
			return p
		}
		for i := range p.spots {
			if p.spots[i].sheet >= p.fronts {
				p.spots[i].sheet += more
			}
		}
		p.fronts, p.count = p.fronts+more, p.count+more
	}
}

// leastFronts is how many sheets the words at the beginning begin with.
func (p plan) leastFronts(set Set) int {
	if set.First == nil {
		return 0
	}
	return 1
}

// bestOrder packs the pieces in many orders, each sheet filled for itself or all of them
// together, and then what lies on the emptiest sheets first.
func (p plan) bestOrder(set Set) plan {
	var best plan
	var k packer
	const all = math.MaxInt32
	p.spots = make([]spot, len(p.pieces))
	lay := func(order []int, reach int) {
		p.lay(order, reach, &k)
		if p.beats(best) {
			kept := best.spots
			best = p
			best.spots = append(kept[:0], p.spots...)
		}
	}
	for _, order := range orders(p.pieces) {
		for _, reach := range []int{1, 2, all} {
			lay(order, reach)
		}
		for range refills {
			last := order
			if order = p.emptiestFirst(); slices.Equal(order, last) {
				break // it lay so already
			}
			lay(order, all)
		}
	}
	best.tidy()
	return best
}

// refills is how often the emptiest sheets are packed first.
const refills = 8

// lay lays the pieces behind the first sheets, with a packer that may have served before.
func (p *plan) lay(order []int, reach int, k *packer) {
	k.begin(*p, p.fronts, reach)
	for _, i := range order {
		p.spots[i] = k.lay(p.pieces[i].looks)
	}
	p.count = len(k.free)
	p.sortSheets()
}

// blank is what a sheet has free for patterns before any lies on it.
func (p plan) blank(sheet int) []geometry.Box {
	switch {
	case sheet >= p.fronts:
		return []geometry.Box{p.room}
	case sheet == 0:
		return without(nil, []geometry.Box{p.room}, frontOf(p.room).Grow(pieceGap))
	}
	return nil
}
