package nest

import "math/bits"

// levels is how many powers of two of cells a run is looked up in: up to 4096.
const levels = 12

// grid is the cells of one board; a set bit is taken. For every row it keeps the
// bits from which a run of 1, 2, 4... cells would meet a taken one.
type grid struct {
	wide, words int              // of a row: cells, and words with one that is never taken
	powers      [levels][]uint64 // row by row
	used        []bool           // which rows have a taken cell
	stale       []int            // rows whose powers are not in keeping with their cells
}

func newGrid(wide, high int) *grid {
	g := &grid{wide: wide, words: (wide+63)/64 + 1, used: make([]bool, high)}
	for k := range g.powers {
		if k == 0 || 1<<(k-1) < wide {
			g.powers[k] = make([]uint64, g.words*high)
		}
	}
	return g
}

// refresh brings the powers of all rows up to date.
func (g *grid) refresh() {
	for _, r := range g.stale {
		from, to := r*g.words, (r+1)*g.words
		for k := 1; k < levels && g.powers[k] != nil; k++ {
			src, dst := g.powers[k-1][from:to], g.powers[k][from:to]
			copy(dst, src)
			n := 1 << (k - 1)
			for i, w, b := 0, n/64, uint(n%64); w+i+1 < len(src); i++ {
				dst[i] |= src[w+i]>>b | src[w+i+1]<<(64-b) // a shift by 64 leaves nothing
			}
		}
	}
	g.stale = g.stale[:0]
}

// look is where a stamp asks the grid: in which of its rows, in which power, from which column
// on.
type look struct{ row, power, col int32 }

// stride is how far apart the rows of one share of the looks lie.
const stride = 8

// looked lists the looks at all cells of a stamp. The first are of rows far apart, because they
// tell soonest that there is no room at all.
func (s stamp) looked() stamp {
	s.looks = make([]look, 0, 2*len(s.runs))
	for _, first := range [stride]int{0, 4, 2, 6, 1, 5, 3, 7} {
		for r := first; r < len(s.rows); r += stride {
			for _, run := range s.rows[r] {
				k := bits.Len(uint(run.b-run.a)) - 1
				s.looks = append(s.looks, look{int32(r), int32(k), int32(run.a)})
				if last := run.b - 1<<k; last > run.a {
					s.looks = append(s.looks, look{int32(r), int32(k), int32(last)})
				}
			}
		}
	}
	return s
}

// blocked sets in bad the columns in which the stamp, its lowest row at y, would meet a taken
// cell, and those behind the last that leaves it room. It ends where all of them are set.
func (g *grid) blocked(s *stamp, y, room int, bad []uint64) {
	clear(bad)
	bad[len(bad)-1] = ^uint64(1) << uint(room%64)
	for _, q := range s.looks {
		r := y + int(q.row)
		if !g.used[r] {
			continue
		}
		from := r*g.words + int(q.col)/64
		src, b := g.powers[q.power][from:from+len(bad)+1], uint(q.col)%64
		low, all := src[0], ^uint64(0)
		for i, high := range src[1:] {
			bad[i] |= low>>b | high<<1<<(63-b)
			low, all = high, all&bad[i]
		}
		if all == ^uint64(0) {
			return
		}
	}
}

// take marks the cells of a stamp at (x, y).
func (g *grid) take(s stamp, x, y int) {
	for i, runs := range s.rows {
		row := g.powers[0][(y+i)*g.words:]
		for _, run := range runs {
			for c := x + run.a; c < x+run.b; c++ {
				row[c/64] |= 1 << uint(c%64)
			}
		}
		g.used[y+i] = true
		g.stale = append(g.stale, y+i)
	}
}
