package tile

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// pieceGap is left between pieces on one sheet, mm: with the air round each there is room
// for scissors.
const pieceGap = 1.0

// spot is where a piece lies, and in which of its looks: the lower left corner on a sheet of
// the box round it and its heading. A turned piece is read from the sheet's right.
type spot struct {
	sheet  int
	at     geometry.Point
	turned bool
	look   look
}

// box is the room that a piece takes on its sheet, its heading included.
func (s spot) box() geometry.Box {
	w, h := s.look.wide, s.look.high
	if s.turned {
		w, h = h, w
	}
	return geometry.Box{Min: s.at, Max: s.at.Add(geometry.Point{X: w, Y: h})}
}

// toSheet brings a piece's pattern to the sheet. Its box is as long as its heading, where that
// is longer than the piece: a heading over a piece stands before it, one beside it begins
// level with the piece's first edge.
func (k piece) toSheet(s spot) geometry.Affine {
	before := 0.0
	if s.look.heads == over {
		before = s.look.high - k.frame.H()
	}
	if s.turned {
		quarter := geometry.Affine{B: 1, C: -1}
		return quarter.Then(geometry.Shift(s.at.X+before+k.frame.Max.Y, s.at.Y-k.frame.Min.X))
	}
	at := s.at
	switch s.look.heads {
	case along:
		if k.cutLeft() == 0 {
			at.X += s.look.wide - k.frame.W()
		}
	case behind:
		at.Y += s.look.high - k.frame.H()
	}
	return geometry.Shift(at.X-k.frame.Min.X, at.Y-k.frame.Min.Y)
}

// packer lays boxes on sheets. Of each sheet it knows the largest free boxes,
// which overlap each other: what one box takes is cut out of all of them.
// (Maximal rectangles, first fit over the sheets, best short side within one;
// J. Jylanki, A Thousand Ways to Pack the Bin, 2010.)
type packer struct {
	room  geometry.Box     // of an empty sheet
	empty []geometry.Box   // what is free on it
	free  [][]geometry.Box // by sheet
	reach int              // how many of the last sheets are looked through for room
	boxes []geometry.Box   // where lists of free boxes stand, one after the other
	spare []geometry.Box   // where they will stand next
	was   []change         // what sheets had free before a trial, in turn; nil where none is made
}

// begin makes a packer ready for a number of sheets of a plan with nothing on them.
func (k *packer) begin(p plan, sheets, reach int) {
	k.room, k.reach, k.boxes = p.room, reach, k.boxes[:0]
	k.empty = append(k.empty[:0], p.room)
	k.free = slices.Grow(k.free[:0], sheets)[:sheets]
	for n := range k.free {
		k.free[n] = k.empty
		if n < p.fronts {
			k.free[n] = p.blank(n)
		}
	}
}

// change is what a sheet had free.
type change struct {
	sheet int
	free  []geometry.Box
}

// set makes free of a sheet what it is given.
func (k *packer) set(sheet int, free []geometry.Box) {
	if k.was != nil {
		k.was = append(k.was, change{sheet, k.free[sheet]})
	}
	k.free[sheet] = free
}

// undo frees what sheets had free when was was emptied.
func (k *packer) undo() {
	for n := len(k.was) - 1; n >= 0; n-- {
		k.free[k.was[n].sheet] = k.was[n].free
	}
}

// gather brings the lists of free boxes that count still to the beginning of another slice where
// little room is left behind them, so that two slices serve for any number of trials.
func (k *packer) gather() {
	if cap(k.boxes)-len(k.boxes) > boxLot/4 {
		return
	}
	out := slices.Grow(k.spare[:0], cap(k.boxes))
	for n, free := range k.free {
		from := len(out)
		out = append(out, free...)
		k.free[n] = out[from:len(out):len(out)]
	}
	k.boxes, k.spare = out, k.boxes
}

// lay finds room for a piece, turned where that leaves less waste.
func (k *packer) lay(looks []look) spot {
	slim := slimmest(looks)
	for i := max(0, len(k.free)-k.reach); i < len(k.free); i++ {
		if f := best(k.free[i], looks, slim); f.found {
			return k.take(i, looks, f)
		}
	}
	last := len(k.free)
	k.free = append(k.free, k.empty)
	f := best(k.free[last], looks[:1], slim)
	if !f.found {
		if f = best(k.free[last], looks, slim); !f.found { // no room is large enough
			f.turned = looks[0].taken > k.room.W()+closeEnough || looks[0].high > k.room.H()+closeEnough
		}
	}
	return k.take(last, looks, f)
}

// fit is a look of a piece in a free box of a sheet, both by their numbers.
type fit struct {
	box, look     int
	turned, found bool
}

// slimmest is the least width or height of all looks: no look goes into a box that is slimmer.
func slimmest(looks []look) float64 {
	out := math.MaxFloat64
	for i := range looks {
		if l := &looks[i]; l.taken < out {
			out = l.taken
		}
		if l := &looks[i]; l.high < out {
			out = l.high
		}
	}
	return out
}

// best finds the look and the free box of which a piece leaves the least strip; slim is the
// slimmest of the looks. It is asked so often that it calls nothing.
func best(free []geometry.Box, looks []look, slim float64) (out fit) {
	least := math.MaxFloat64
	for i := range free {
		b := &free[i]
		w, h := b.Max.X-b.Min.X, b.Max.Y-b.Min.Y
		if w-slim < -closeEnough || h-slim < -closeEnough {
			continue // as most are
		}
		for j := range looks {
			wide, high := looks[j].taken, looks[j].high
			left, other := w-wide, h-high
			if other < left {
				left = other
			}
			if left >= -closeEnough && left < least-closeEnough {
				least, out = left, fit{i, j, false, true}
			}
			if left, other = w-high, h-wide; other < left {
				left = other
			}
			if left >= -closeEnough && left < least-closeEnough {
				least, out = left, fit{i, j, true, true}
			}
		}
	}
	return out
}

// take lays a piece in the upper left corner of a free box.
func (k *packer) take(sheet int, looks []look, f fit) spot {
	l, in := looks[f.look], k.free[sheet][f.box]
	w, h := l.taken, l.high
	if f.turned {
		w, h = h, w
	}
	s := spot{sheet: sheet, at: geometry.Point{X: in.Min.X, Y: in.Max.Y - h}, turned: f.turned, look: l}
	k.block(sheet, geometry.Box{Min: s.at, Max: s.at.Add(geometry.Point{X: w, Y: h})})
	return s
}

// block takes a box, with room for scissors round it, out of what is free.
func (k *packer) block(sheet int, b geometry.Box) {
	free := k.free[sheet]
	if most := 4 * len(free); cap(k.boxes)-len(k.boxes) < most {
		k.boxes = make([]geometry.Box, 0, max(boxLot, most))
	}
	out := without(k.boxes[len(k.boxes):], free, b.Grow(pieceGap))
	k.boxes = k.boxes[:len(k.boxes)+len(out)]
	k.set(sheet, out[:len(out):len(out)])
}

// boxLot is how many free boxes are made room for at a time.
const boxLot = 512

// speck is the least side of a free box worth remembering, mm.
const speck = 8.0

// without adds to out, which is empty, free boxes with one cut out of them, and drops those
// inside another. No free box may lie in another one.
func without(out, free []geometry.Box, gone geometry.Box) []geometry.Box {
	for i := range free {
		f := &free[i]
		if gone.Max.X <= f.Min.X || gone.Min.X >= f.Max.X || gone.Max.Y <= f.Min.Y || gone.Min.Y >= f.Max.Y {
			out = append(out, *f)
			continue
		}
		parts := [4]geometry.Box{*f, *f, *f, *f}
		parts[0].Max.X, parts[1].Min.X = gone.Min.X, gone.Max.X
		parts[2].Max.Y, parts[3].Min.Y = gone.Min.Y, gone.Max.Y
		for j := range parts {
			if p := &parts[j]; p.Max.X-p.Min.X > speck && p.Max.Y-p.Min.Y > speck {
				out = append(out, *p)
			}
		}
	}
	return outermost(out, gone)
}

// outermost drops boxes that lie in another one, and repeats, from the slice itself. Only a
// part of a box does, and a part reaches to what was cut out.
func outermost(boxes []geometry.Box, gone geometry.Box) []geometry.Box {
	out := boxes[:0]
	for i := range boxes {
		b := boxes[i]
		part := b.Max.X == gone.Min.X || b.Min.X == gone.Max.X || b.Max.Y == gone.Min.Y || b.Min.Y == gone.Max.Y
		if !part || !(lies(&b, out, true) || lies(&b, boxes[i+1:], false)) {
			out = append(out, b)
		}
	}
	return out
}

// lies reports whether a box lies in one of others; one that is equal counts where repeats do.
func lies(b *geometry.Box, others []geometry.Box, repeats bool) bool {
	for i := range others {
		o := &others[i]
		if o.Min.X <= b.Min.X && b.Max.X <= o.Max.X && o.Min.Y <= b.Min.Y && b.Max.Y <= o.Max.Y && (repeats || *o != *b) {
			return true
		}
	}
	return false
}
