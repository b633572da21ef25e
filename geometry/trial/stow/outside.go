package stow

import (
	"errors"
	"math"
	"sort"

	"ribwright/geometry"
)

// Outside is the outer solid of a boat as it meets another on its way down:
// the cloth from the keel out to the gunwales, and straight up from its widest
// place, because what has passed on the way down has passed for good.
type Outside struct {
	Aft, Fore float64 // its ends, mm from midship
	Top       float64 // its highest point over the baseline, mm
	Half      float64 // its greatest half-breadth, mm

	parts []Part // under each piece of a section, from the keel out
	rows  []row
	table table
}

// row is the half section at one station. Rows have the same number of points.
type row struct {
	x     float64
	pts   []geometry.Point // x half-breadth, y height; neither half-breadth nor wall ever turns back
	boxes []extent         // around the panels to the next row
}

// Section is one half section of an outside, from the middle line out: x the
// half-breadth, y the height above the baseline, mm.
type Section struct {
	X    float64
	Half []geometry.Point
}

// wall is how high the swept sides are carried, mm: higher than any boat.
const wall = 4000

// NewOutside makes an outside from sections in order from aft forward, all with
// the same number of points, one part under each piece between two points.
// Two sections may stand at one station: a step.
//
// Errors: fewer than two sections, or sections that do not match.
func NewOutside(sections []Section, parts []Part) (*Outside, error) {
	if len(sections) < 2 {
		return nil, errors.New("an outside needs two sections or more")
	}
	first, last := sections[0], sections[len(sections)-1]
	o := &Outside{Aft: first.X, Fore: last.X, Top: math.Inf(-1), parts: append(append([]Part(nil), parts...), parts[len(parts)-1])}
	o.rows = append(o.rows, closing(first))
	for i, s := range sections {
		if len(s.Half) != len(parts)+1 || i > 0 && s.X < sections[i-1].X {
			return nil, errors.New("sections do not follow each other, or differ in their number of points")
		}
		for _, p := range s.Half {
			if !p.Finite() {
				return nil, errors.New("a section holds a point that is no place")
			}
			o.Top, o.Half = math.Max(o.Top, p.Y), math.Max(o.Half, p.X)
		}
		o.rows = append(o.rows, swept(s))
	}
	o.rows = append(o.rows, closing(last))
	for k := range len(o.rows) - 1 {
		r := &o.rows[k]
		r.boxes = make([]extent, len(parts)+1)
		for i := range r.boxes {
			r.boxes[i] = panelBox(*r, o.rows[k+1], i+1)
		}
	}
	o.table = newTable(o)
	return o, nil
}

// swept carries a section up from its widest place: from there on, and wherever
// it draws in on the way, it stands plumb.
func swept(s Section) row {
	r := row{x: s.X, pts: make([]geometry.Point, len(s.Half)+1)}
	most := 0.0
	for i, p := range s.Half {
		most = math.Max(most, p.X)
		r.pts[i] = geometry.Point{X: most, Y: p.Y}
	}
	r.pts[len(s.Half)] = geometry.Point{X: most, Y: wall}
	return r
}

// closing is the section drawn together on the middle line, which closes the end.
func closing(s Section) row {
	r := swept(s)
	for i := range r.pts {
		r.pts[i].X = 0
	}
	return r
}

// between returns the row before x and how far x lies on the way to the next,
// false outside the boat.
func (o *Outside) between(x float64) (int, float64, bool) {
	if x < o.Aft || x > o.Fore {
		return 0, 0, false
	}
	k := sort.Search(len(o.rows), func(i int) bool { return o.rows[i].x > x }) - 1
	k = min(max(k, 1), len(o.rows)-3) // the closing rows stand at the same stations
	span := o.rows[k+1].x - o.rows[k].x
	if span <= 0 {
		return k, 0, true
	}
	return k, (x - o.rows[k].x) / span, true
}

// slice returns the section at x, appended to buf[:0]; nil outside the boat.
func (o *Outside) slice(x float64, buf []geometry.Point) []geometry.Point {
	k, t, ok := o.between(x)
	if !ok {
		return nil
	}
	a, b := o.rows[k].pts, o.rows[k+1].pts
	buf = buf[:0]
	for i := range a {
		buf = append(buf, a[i].Lerp(b[i], t))
	}
	return buf
}

// under returns the lowest height of a section at the half-breadth y and the
// piece there; false beyond its widest.
func under(pts []geometry.Point, y float64) (float64, int, bool) {
	z, piece := math.Inf(1), -1
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		if y < a.X {
			break
		}
		if y > b.X {
			continue
		}
		if h := lower(a, b, y); h < z {
			z, piece = h, i-1
		}
	}
	return z, piece, piece >= 0
}

// lower is the height of the piece from a out to b at a half-breadth between theirs.
func lower(a, b geometry.Point, y float64) float64 {
	if b.X > a.X {
		return a.Y + (b.Y-a.Y)*(y-a.X)/(b.X-a.X)
	}
	return min(a.Y, b.Y)
}

// breadth returns the greatest half-breadth of a section at or below the height
// z and the piece there; false below the section.
func breadth(pts []geometry.Point, z float64) (float64, int, bool) {
	y, piece := -1.0, -1
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		at := -1.0
		switch {
		case b.Y <= z:
			at = b.X
		case a.Y <= z:
			at = a.X + (b.X-a.X)*(z-a.Y)/(b.Y-a.Y)
		}
		if at > y {
			y, piece = at, i-1
		}
	}
	return y, piece, piece >= 0
}

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
			z = min(z, lower(a, b, max(lo, a.X)), lower(a, b, min(hi, b.X)))
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
