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
	wide int     // of a row of them
	set  []bool  // which cells of a row that is put do
	pad  int
	bad  [][]uint64
}

// newLayer starts an empty board; halo is how many cells count as touching.
func newLayer(wide, high, halo int) *layer {
	g := &grid{wide: wide, high: high, words: (wide + 63) / 64, rows: make([][levels][]uint64, high), fresh: make([]bool, high)}
	l := &layer{grid: g, pad: halo + 1}
	l.bad = make([][]uint64, high)
	for y := range l.bad {
		l.bad[y] = make([]uint64, l.grid.words)
	}
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
	return l
}

// row is one of near.
func (l *layer) row(y int) []int32 { return l.near[y*l.wide : (y+1)*l.wide] }

// best returns where the stamp touches most with its halo, as a share of the
// halo above the least that is worth anything; ok is false when it fits nowhere so.
func (l *layer) best(s, halo stamp, least float64) (at spot, share float64, ok bool) {
	room, rows := l.grid.wide-s.wide, l.grid.high-len(s.rows)
	if room < 0 || rows < 0 {
		return at, 0, false
	}
	for y := 0; y <= rows; y++ {
		l.grid.blocked(s, y, l.bad[y])
	}
	most := halo.below(least)
	none := most
	for y := 0; y <= rows; y++ {
		for w := range l.bad[y] {
			for free := l.rim(y, w, rows, room); free != 0; free &= free - 1 {
				x := w*64 + bits.TrailingZeros64(free)
				if x > room {
					break
				}
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
	row := l.bad[y]
	b := row[w]
	if y == 0 || y == rows {
		return ^b
	}
	edge := b<<1 | b>>1 | l.bad[y-1][w] | l.bad[y+1][w]
	if w == 0 {
		edge |= 1
	} else {
		edge |= row[w-1] >> 63
	}
	if w+1 < len(row) {
		edge |= row[w+1] << 63
	}
	if room/64 == w {
		edge |= 1 << uint(room%64)
	}
	return ^b & edge
}

// touch counts the cells of a halo, its stamp at (x, y), that lie near something. It gives
// up where those that are left cannot make more than most.
func (l *layer) touch(halo *stamp, x, y int, most int32) int32 {
	sum := int32(0)
	at, last := (y+1)*l.wide+x+1, (y+2)*l.wide-1
	for i, left := range halo.left {
		if sum+left <= most {
			return most
		}
		for _, r := range halo.runs[halo.first[i]:halo.first[i+1]] {
			sum += l.near[min(at+r.b, last)] - l.near[at+r.a]
		}
		at, last = at+l.wide, last+l.wide
	}
	return sum
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
}

// corner returns where on the board, in mm, the lower left corner of a shape
// lies whose stamp with the given room lies at a spot.
func (at spot) corner(cell, room float64) geometry.Point {
	return geometry.Point{X: float64(at.x)*cell + room, Y: float64(at.y)*cell + room}
}

// levels is how many powers of two of cells a run is looked up in: up to 4096.
const levels = 12

// grid is the cells of one board; a set bit is taken. For every row it keeps the
// bits from which a run of 1, 2, 4... cells would meet a taken one.
type grid struct {
	wide, high, words int
	rows              [][levels][]uint64
	fresh             []bool // the powers of the row are in keeping with its bits
}

// shifted ors src, moved n places down, into dst.
func shifted(dst, src []uint64, n int) {
	w, b := n/64, uint(n%64)
	if w >= len(src) {
		return
	}
	src = src[w:]
	dst = dst[:len(src)]
	last := len(src) - 1
	for i, v := range src[:last] {
		dst[i] |= v>>b | src[i+1]<<(64-b) // a shift by 64 leaves nothing
	}
	dst[last] |= src[last] >> b
}

// powers brings a row's powers up to date; the first is nil in an empty row.
func (g *grid) powers(r int) *[levels][]uint64 {
	p := &g.rows[r]
	if g.fresh[r] || p[0] == nil {
		return p
	}
	for k := 1; k < levels && 1<<(k-1) < g.wide; k++ {
		if p[k] == nil {
			p[k] = make([]uint64, g.words)
		}
		copy(p[k], p[k-1])
		shifted(p[k], p[k-1], 1<<(k-1))
	}
	g.fresh[r] = true
	return p
}

// blocked sets in bad the columns in which the stamp, its lowest row at y, would
// meet a taken cell. It looks at rows far apart first, because they tell soonest that
// there is no room at all.
func (g *grid) blocked(s stamp, y int, bad []uint64) {
	clear(bad)
	const apart = 8
	for _, first := range [apart]int{0, 4, 2, 6, 1, 5, 3, 7} {
		for i := first; i < len(s.rows); i += apart {
			p := g.powers(y + i)
			if p[0] == nil {
				continue
			}
			for _, run := range s.rows[i] {
				k := bits.Len(uint(run.b-run.a)) - 1
				shifted(bad, p[k], run.a)
				if last := run.b - 1<<k; last > run.a {
					shifted(bad, p[k], last)
				}
			}
		}
		if full(bad, g.wide-s.wide) {
			return
		}
	}
}

// full reports whether every bit up to and with the given one is set.
func full(bad []uint64, last int) bool {
	for i, w := range bad {
		if w != ^uint64(0) {
			return i*64+bits.TrailingZeros64(^w) > last
		}
	}
	return true
}

// take marks the cells of a stamp at (x, y).
func (g *grid) take(s stamp, x, y int) {
	for i, spans := range s.rows {
		row := &g.rows[y+i]
		if row[0] == nil {
			row[0] = make([]uint64, g.words)
		}
		for _, run := range spans {
			for c := x + run.a; c < x+run.b; c++ {
				row[0][c/64] |= 1 << uint(c%64)
			}
		}
		g.fresh[y+i] = false
	}
}
