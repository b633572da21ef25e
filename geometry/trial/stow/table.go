package stow

import "math"

// table holds a lower bound of the outside's underside on a grid, so that most
// places can be passed over without drawing a section.
type table struct {
	x0  float64
	nx  int
	ny  int
	low []float64 // by cell, +Inf where there is no boat
}

// The cell of the table, mm.
const (
	cellX = 12.0
	cellY = 6.0
)

func newTable(o *Outside) table {
	t := table{x0: o.Aft, nx: int((o.Fore-o.Aft)/cellX) + 1, ny: int(o.Half/cellY) + 2}
	t.low = make([]float64, t.nx*t.ny)
	for i := range t.low {
		t.low[i] = math.Inf(1)
	}
	// A row serves the cells that it, or the panels on either side of it, may reach.
	for k := 1; k+2 < len(o.rows); k++ {
		from, to := t.cell(o.rows[k].x), t.cell(o.rows[k+1].x)
		for _, r := range []row{o.rows[k], o.rows[k+1]} {
			t.add(r, from, to)
		}
	}
	return t
}

func (t *table) cell(x float64) int { return min(max(int((x-t.x0)/cellX), 0), t.nx-1) }

// add lowers the cells from one column to another to the underside of a row. The
// panel between two rows lies nowhere lower than the lower of them one cell
// farther in, because sections widen little from one row to the next.
func (t *table) add(r row, from, to int) {
	for j := range t.ny {
		z := math.Inf(1)
		lo, hi := float64(j-1)*cellY, float64(j+2)*cellY
		for i := 1; i < len(r.pts); i++ {
			a, b := r.pts[i-1], r.pts[i]
			if b.X < lo || a.X > hi {
				continue
			}
			at := func(y float64) float64 {
				y = min(max(y, a.X), b.X)
				if b.X == a.X {
					return min(a.Y, b.Y)
				}
				return a.Y + (b.Y-a.Y)*(y-a.X)/(b.X-a.X)
			}
			z = min(z, min(at(lo), at(hi)))
		}
		for c := from; c <= to; c++ {
			t.low[c*t.ny+j] = min(t.low[c*t.ny+j], z)
		}
	}
}

// lowest returns a height that no point of the underside at x between the
// half-breadths y0 < y1 lies below; +Inf where there is no boat.
func (t *table) lowest(x, y0, y1 float64) float64 {
	if x < t.x0-cellX || x > t.x0+float64(t.nx+1)*cellX {
		return math.Inf(1)
	}
	c, z := t.cell(x), math.Inf(1)
	for j := max(int(y0/cellY), 0); j <= int(y1/cellY) && j < t.ny; j++ {
		z = min(z, t.low[c*t.ny+j])
	}
	return z
}
