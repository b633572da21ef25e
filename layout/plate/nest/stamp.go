package nest

import (
	"math"
	"slices"

	"ribwright/geometry"
)

// span is a run of cells from a up to, not including, b.
type span struct{ a, b int }

// stamp is the cells that a shape grown by some room touches. Its cell (0, 0)
// has its lower left corner at the shape's own less the room.
type stamp struct {
	rows   [][]span
	wide   int
	cells  int     // in all
	runs   []span  // of all rows
	first  []int32 // of the runs of each row, and one more
	strips []strip
	looks  []look // at the cells, for a stamp that is laid
}

// stamper makes stamps. It keeps the room that it needs for one for the next.
type stamper struct {
	rows    [][]span
	crossed [][]float64
	wide    int
}

// strip is rows of a stamp that are looked at together.
type strip struct {
	from, to int // rows
	a, b     int // the columns that their runs lie in
	cells    int32
}

// stripRows is how many rows a strip has.
const stripRows = 16

// stamp lays the shape, grown by room, on cells of the given side.
func (m *stamper) stamp(s shape, room, cell float64) stamp {
	corner := s.box.Min.Sub(geometry.Point{X: room, Y: room})
	far := s.box.Max.Add(geometry.Point{X: room, Y: room}).Sub(corner)
	count := func(length float64) int { return int(math.Ceil(length/cell - 1e-9)) }
	m.wide = count(far.X)
	m.rows, m.crossed = emptied(m.rows, count(far.Y)), emptied(m.crossed, count(far.Y))
	s.edges(func(a, b geometry.Point) {
		k := newBand(a.Sub(corner), b.Sub(corner), room)
		lo := int(math.Floor((math.Min(k.a.Y, k.b.Y) - room) / cell))
		hi := int(math.Ceil((math.Max(k.a.Y, k.b.Y) + room) / cell))
		for r := max(0, lo); r < min(len(m.rows), hi); r++ {
			if x0, x1, ok := k.reach(float64(r)*cell, float64(r+1)*cell); ok {
				m.add(r, x0/cell, x1/cell)
			}
		}
	})
	m.fill(s, corner, cell)
	return m.counted()
}

// emptied is so many empty lists, in the room of old ones.
func emptied[T any](lists [][]T, n int) [][]T {
	lists = slices.Grow(lists[:0], n)[:n]
	for i := range lists {
		lists[i] = lists[i][:0]
	}
	return lists
}

// counted lists the runs and strips, and counts their cells.
func (m *stamper) counted() stamp {
	all := 0
	for r, row := range m.rows {
		m.rows[r] = merged(row)
		all += len(m.rows[r])
	}
	high := len(m.rows)
	s := stamp{wide: m.wide, rows: make([][]span, high), runs: make([]span, 0, all), first: make([]int32, 1, high+1)}
	for r, row := range m.rows {
		s.runs = append(s.runs, row...)
		s.rows[r] = s.runs[len(s.runs)-len(row):]
		s.first = append(s.first, int32(len(s.runs)))
		if r%stripRows == 0 {
			s.strips = append(s.strips, strip{from: r, a: s.wide})
		}
		k := &s.strips[len(s.strips)-1]
		k.to = r + 1
		for _, run := range row {
			k.a, k.b, k.cells = min(k.a, run.a), max(k.b, run.b), k.cells+int32(run.b-run.a)
			s.cells += run.b - run.a
		}
	}
	return s
}

// below is the largest number of cells that is no larger share of all than the given one.
func (s stamp) below(share float64) int32 {
	all := float64(s.cells)
	n := math.Floor(share * all)
	for (n+1)/all <= share {
		n++
	}
	for n/all > share {
		n--
	}
	return int32(n)
}

// add adds a run to a row; where it touches the one before, that one grows.
func (m *stamper) add(r int, x0, x1 float64) {
	a, b := max(int(math.Floor(x0+1e-9)), 0), min(int(math.Ceil(x1-1e-9)), m.wide)
	if a >= b {
		return
	}
	if n := len(m.rows[r]); n > 0 && a <= m.rows[r][n-1].b && b >= m.rows[r][n-1].a {
		last := &m.rows[r][n-1]
		last.a, last.b = min(last.a, a), max(last.b, b)
		return
	}
	m.rows[r] = append(m.rows[r], span{a, b})
}

// fill adds what lies between the edges in the middle of each row; the edges
// themselves are there already.
func (m *stamper) fill(of shape, corner geometry.Point, cell float64) {
	middle := func(r int) float64 { return corner.Y + (float64(r)+0.5)*cell }
	of.edges(func(p, q geometry.Point) {
		from := max(0, int((min(p.Y, q.Y)-corner.Y)/cell-0.5)-1)
		for r := from; r < len(m.rows) && middle(r) <= max(p.Y, q.Y); r++ {
			if y := middle(r); (p.Y <= y) != (q.Y <= y) {
				m.crossed[r] = append(m.crossed[r], (p.X+(q.X-p.X)*(y-p.Y)/(q.Y-p.Y)-corner.X)/cell)
			}
		}
	})
	for r, xs := range m.crossed {
		slices.Sort(xs)
		for i := 1; i < len(xs); i += 2 {
			m.add(r, xs[i-1], xs[i])
		}
	}
}

// merged joins spans that touch, in place.
func merged(in []span) []span {
	slices.SortStableFunc(in, func(p, q span) int { return p.a - q.a })
	out := in[:min(1, len(in))]
	for _, s := range in[len(out):] {
		if last := &out[len(out)-1]; s.a <= last.b {
			last.b = max(last.b, s.b)
			continue
		}
		out = append(out, s)
	}
	return out
}

// band is everything within r of the straight piece a-b.
type band struct {
	a, b geometry.Point
	r    float64
	side geometry.Point // from the piece to the band's edge on its left
}

func newBand(a, b geometry.Point, r float64) band {
	return band{a, b, r, b.Sub(a).Unit().Left().Scale(r)}
}

// reach returns from where to where the band goes in x between the heights y0
// and y1; ok is false when it does not come there.
func (k *band) reach(y0, y1 float64) (x0, x1 float64, ok bool) {
	x0, x1 = math.Inf(1), math.Inf(-1)
	add := func(from, to float64) { x0, x1 = min(x0, from), max(x1, to) }
	within := func(y float64) bool { return y >= y0 && y <= y1 }
	for _, p := range [2]geometry.Point{k.a, k.b} {
		near := min(max(p.Y, y0), y1)
		if d := k.r*k.r - (near-p.Y)*(near-p.Y); d >= 0 {
			w := math.Sqrt(d)
			add(p.X-w, p.X+w)
		}
	}
	for _, s := range [2]geometry.Point{k.side, k.side.Scale(-1)} {
		p, q := k.a.Add(s), k.b.Add(s)
		for _, y := range [2]float64{y0, y1} {
			if p.Y != q.Y && (p.Y-y)*(q.Y-y) <= 0 {
				x := p.X + (q.X-p.X)*(y-p.Y)/(q.Y-p.Y)
				add(x, x)
			}
		}
		if within(p.Y) {
			add(p.X, p.X)
		}
		if within(q.Y) {
			add(q.X, q.X)
		}
	}
	return x0, x1, x0 <= x1
}
