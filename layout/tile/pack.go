package tile

import (
	"cmp"
	"math"
	"slices"

	"ribwright/geometry"
)

const (
	// captionHigh is the room for the line of lettering over a piece, mm.
	captionHigh = 4.4
	// pieceGap is left between pieces on one sheet, mm: room for scissors.
	pieceGap = 2.5
)

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

// pack lays the pieces in the given order, the first sheets having only the
// given free boxes left, and returns the spots in the order of the pieces with
// the number of sheets.
func pack(pieces []piece, order []int, room geometry.Box, fronts [][]geometry.Box) ([]spot, int) {
	k := packer{room: room, free: fronts}
	out := make([]spot, len(pieces))
	for _, i := range order {
		w, h := pieces[i].wide(room.W()), pieces[i].frame.H()+captionHigh
		out[i] = k.lay(w, h)
	}
	return out, len(k.free)
}

// lay takes the best free place of the first sheet that has one.
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

// inOrder keeps the pieces as they are used at the bench.
func inOrder(pieces []piece) []int {
	out := make([]int, len(pieces))
	for i := range out {
		out[i] = i
	}
	return out
}

// tallFirst lays the tall pieces first and the wide ones of them before the
// narrow.
func tallFirst(pieces []piece) []int {
	return sorted(pieces, func(p piece) (float64, float64) { return p.frame.H(), p.frame.W() })
}

// wideFirst lays the wide pieces first and the tall ones of them before the low.
func wideFirst(pieces []piece) []int {
	return sorted(pieces, func(p piece) (float64, float64) { return p.frame.W(), p.frame.H() })
}

// sorted orders pieces by two lengths, the long first; what differs by less than
// a millimetre counts as equal, so that strips keep their order.
func sorted(pieces []piece, by func(piece) (float64, float64)) []int {
	out := inOrder(pieces)
	slices.SortStableFunc(out, func(a, b int) int {
		a1, a2 := by(pieces[a])
		b1, b2 := by(pieces[b])
		return cmp.Or(cmp.Compare(math.Round(b1), math.Round(a1)), cmp.Compare(math.Round(b2), math.Round(a2)))
	})
	return out
}
