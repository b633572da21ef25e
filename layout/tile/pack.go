package tile

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// pieceGap is left between pieces on one sheet, mm: with the air round each there is room
// for scissors.
const pieceGap = 1.0

// spot is where a piece lies: the lower left corner on a sheet of the box round it and its
// heading. A turned piece is read from the sheet's right.
type spot struct {
	sheet  int
	at     geometry.Point
	turned bool
}

// box is the room that a piece takes on its sheet, its heading included.
func (k piece) box(s spot) geometry.Box {
	w, h := k.wide, k.high
	if s.turned {
		w, h = h, w
	}
	return geometry.Box{Min: s.at, Max: s.at.Add(geometry.Point{X: w, Y: h})}
}

// toSheet brings a piece's pattern to the sheet.
func (k piece) toSheet(s spot) geometry.Affine {
	if !s.turned {
		return geometry.Shift(s.at.X-k.frame.Min.X, s.at.Y-k.frame.Min.Y)
	}
	quarter := geometry.Affine{B: 1, C: -1}
	return quarter.Then(geometry.Shift(s.at.X+k.high+k.frame.Min.Y, s.at.Y-k.frame.Min.X))
}

// packer lays boxes on sheets. Of each sheet it knows the largest free boxes,
// which overlap each other: what one box takes is cut out of all of them.
// (Maximal rectangles, first fit over the sheets, best short side within one;
// J. Jylanki, A Thousand Ways to Pack the Bin, 2010.)
type packer struct {
	room  geometry.Box     // of an empty sheet
	free  [][]geometry.Box // by sheet
	reach int              // how many of the last sheets are looked through for room
}

// lay finds room for a box, turned where that leaves less waste.
func (k *packer) lay(w, h float64) spot {
	for i := max(0, len(k.free)-k.reach); i < len(k.free); i++ {
		if at, turned, ok := best(k.free[i], w, h); ok {
			return k.take(i, at, w, h, turned)
		}
	}
	k.free = append(k.free, []geometry.Box{k.room})
	turned := w > k.room.W()+closeEnough || h > k.room.H()+closeEnough
	return k.take(len(k.free)-1, geometry.Point{X: k.room.Min.X, Y: k.room.Max.Y}, w, h, turned)
}

// best finds the free box that a piece leaves the least strip of, and in it
// the upper left corner.
func best(free []geometry.Box, w, h float64) (at geometry.Point, turned, found bool) {
	least := math.Inf(1)
	try := func(f geometry.Box, dx, dy float64, turn bool) {
		if dx < -closeEnough || dy < -closeEnough {
			return
		}
		if left := min(dx, dy); left < least-closeEnough {
			least, at, turned, found = left, geometry.Point{X: f.Min.X, Y: f.Max.Y}, turn, true
		}
	}
	for _, f := range free {
		try(f, f.W()-w, f.H()-h, false)
		try(f, f.W()-h, f.H()-w, true)
	}
	return at, turned, found
}

// take lays a piece with its upper left corner at the place.
func (k *packer) take(sheet int, at geometry.Point, w, h float64, turned bool) spot {
	if turned {
		w, h = h, w
	}
	low := geometry.Point{X: at.X, Y: at.Y - h}
	k.block(sheet, geometry.Box{Min: low, Max: at.Add(geometry.Point{X: w})})
	return spot{sheet, low, turned}
}

// block takes a box, with room for scissors round it, out of what is free.
func (k *packer) block(sheet int, b geometry.Box) {
	k.free[sheet] = without(k.free[sheet], b.Grow(pieceGap))
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
