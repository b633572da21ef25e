package nest

import (
	"math/bits"
	"slices"

	"ribwright/geometry"
)

// spot is where a stamp lies on a grid, in cells.
type spot struct{ x, y int }

// layer builds a nest one part after the other, each where it touches most of
// what lies there already.
type layer struct {
	grid *grid
	near []int32 // row by row with a rim of pad cells, how many cells left of each lie near something
	sums []int32 // the same of all rows before each, and of all of them
	wide int     // of a row of them
	set  []bool  // which cells of a row that is put do
	pad  int
	bad  []uint64 // row by row, the columns in which a stamp cannot lie
}

// newLayer starts an empty board; halo is how many cells count as touching.
func newLayer(wide, high, halo int) *layer {
	l := &layer{grid: newGrid(wide, high), pad: halo + 1}
	l.wide = wide + 2*l.pad + 1
	l.near = make([]int32, l.wide*(high+2*l.pad))
	for y := range high + 2*l.pad {
		row := l.row(y)
		for x := 1; x < len(row); x++ {
			row[x] = row[x-1]
			if min(y, x-1, high+2*l.pad-1-y, wide+2*l.pad-x) < l.pad+halo {
				row[x]++ // beyond the rim, or close to it inside
			}
		}
	}
	l.sums = make([]int32, len(l.near)+l.wide)
	l.sum(0)
	return l
}

// sum sums the rows up from one on.
func (l *layer) sum(from int) {
	for at := from * l.wide; at < len(l.near); at += l.wide {
		row, here, next := l.near[at:at+l.wide], l.sums[at:at+l.wide], l.sums[at+l.wide:at+2*l.wide]
		for x, n := range row {
			next[x] = here[x] + n
		}
	}
}

// row is one of near.
func (l *layer) row(y int) []int32 { return l.near[y*l.wide : (y+1)*l.wide] }

// best returns where the stamp touches most with its halo, as a share of the
// halo above the least that is worth anything; ok is false when it fits nowhere so.
func (l *layer) best(s, halo stamp, least float64) (at spot, share float64, ok bool) {
	room, rows := l.grid.wide-s.wide, len(l.grid.used)-len(s.rows)
	if room < 0 || rows < 0 {
		return at, 0, false
	}
	words := room/64 + 1 // of the columns in which it has room
	l.bad = slices.Grow(l.bad[:0], (rows+1)*words)[:(rows+1)*words]
	l.grid.refresh()
	for y := 0; y <= rows; y++ {
		l.grid.blocked(&s, y, room, l.bad[y*words:(y+1)*words])
	}
	most := halo.below(least)
	none := most
	for y := 0; y <= rows; y++ {
		for w := range words {
			for free := l.rim(y, w, rows, room); free != 0; free &= free - 1 {
				x := w*64 + bits.TrailingZeros64(free)
				if sum := l.touch(&halo, x, y, most); sum > most {
					most, at = sum, spot{x, y}
				}
			}
		}
	}
	return at, float64(most) / float64(halo.cells), most > none
}

// rim returns the free bits of a word that have a taken neighbor or lie at the
// edge: nothing touches elsewhere.
func (l *layer) rim(y, w, rows, room int) uint64 {
	words := room/64 + 1
	at := y*words + w
	b := l.bad[at]
	if y == 0 || y == rows {
		return ^b
	}
	edge := b<<1 | b>>1 | l.bad[at-words] | l.bad[at+words]
	if w == 0 {
		edge |= 1
	} else {
		edge |= l.bad[at-1] >> 63
	}
	if w+1 < words {
		edge |= l.bad[at+1] << 63
	} else {
		edge |= 1 << uint(room%64)
	}
	return ^b & edge
}

// touch counts the cells of a halo, its stamp at (x, y), that lie near something. It gives
// up where those that are left cannot make more than most.
func (l *layer) touch(halo *stamp, x, y int, most int32) int32 {
	at, last := (y+1)*l.wide+x+1, l.wide-1-(x+1)
	left := int32(0)
	for i := range halo.strips {
		left += l.atMost(&halo.strips[i], at, last)
	}
	sum := int32(0)
	for i := range halo.strips {
		if sum+left <= most {
			return most
		}
		k := &halo.strips[i]
		left -= l.atMost(k, at, last)
		for r := k.from; r < k.to; r++ {
			row := l.near[at+r*l.wide : at+r*l.wide+last+1]
			for _, run := range halo.runs[halo.first[r]:halo.first[r+1]] {
				sum += row[min(run.b, last)] - row[run.a]
			}
		}
	}
	return sum
}

// atMost is as many cells of a strip as can lie near something: no more than it has, nor more
// than do in the box round it. The strip's halo lies at a cell, and so many columns are right
// of that.
func (l *layer) atMost(k *strip, at, last int) int32 {
	a, b := at+k.a, at+min(k.b, last)
	low, high := k.from*l.wide, k.to*l.wide
	return min(k.cells, l.sums[b+high]-l.sums[a+high]-l.sums[b+low]+l.sums[a+low])
}

func (l *layer) put(s, halo stamp, at spot) {
	l.grid.take(s, at.x, at.y)
	last, high := l.wide-1, len(l.near)/l.wide
	for i, runs := range halo.rows {
		if at.y+i+1 >= high {
			break
		}
		row := l.row(at.y + i + 1)
		l.set = slices.Grow(l.set[:0], last)[:last]
		set := l.set
		for x := range set {
			set[x] = row[x+1] > row[x]
		}
		for _, r := range runs {
			for x := at.x + 1 + r.a; x < min(at.x+1+r.b, last); x++ {
				set[x] = true
			}
		}
		for x, on := range set {
			row[x+1] = row[x]
			if on {
				row[x+1]++
			}
		}
	}
	l.sum(at.y + 1)
}

// corner returns where on the board, in mm, the lower left corner of a shape
// lies whose stamp with the given room lies at a spot.
func (at spot) corner(cell, room float64) geometry.Point {
	return geometry.Point{X: float64(at.x)*cell + room, Y: float64(at.y)*cell + room}
}
