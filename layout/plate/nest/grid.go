package nest

import "math/bits"

// levels is how many powers of two of cells a run is looked up in: up to 4096.
const levels = 12

// grid is the cells of one board; a set bit is taken. For every row it keeps the
// bits from which a run of 1, 2, 4... cells would meet a taken one.
type grid struct {
	wide, high, words int
	rows              [][levels][]uint64
	fresh             []bool // the powers of the row are in keeping with its bits
}

func newGrid(wide, high int) *grid {
	g := &grid{wide: wide, high: high, words: (wide + 63) / 64}
	g.rows, g.fresh = make([][levels][]uint64, high), make([]bool, high)
	return g
}

// shifted ors src, moved n places down, into dst.
func shifted(dst, src []uint64, n int) {
	w, b := n/64, uint(n%64)
	for i := 0; i+w < len(src); i++ {
		v := src[i+w] >> b
		if b > 0 && i+w+1 < len(src) {
			v |= src[i+w+1] << (64 - b)
		}
		dst[i] |= v
	}
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
// meet a taken cell.
func (g *grid) blocked(s stamp, y int, bad []uint64) {
	for i := range bad {
		bad[i] = 0
	}
	for i, spans := range s.rows {
		p := g.powers(y + i)
		if p[0] == nil {
			continue
		}
		for _, run := range spans {
			k := bits.Len(uint(run.b-run.a)) - 1
			shifted(bad, p[k], run.a)
			shifted(bad, p[k], run.b-1<<k)
		}
		if i%8 == 0 && full(bad, g.wide-s.wide) {
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
