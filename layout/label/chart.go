package label

import (
	"iter"
	"math"
	"math/bits"

	"ribwright/geometry"
)

// surely is how deep a place must be covered to be passed over without a closer look, mm: far
// more than sums are rounded by, and far less than a pen's width.
const surely = 1e-6

// Chart is a ground seen in squares of a millimeter within a box. It knows of squares on which
// something lies, but not of all of them.
type Chart struct {
	ground *Ground
	box    geometry.Box
	long   int      // words of a row
	rows   []uint64 // a bit a square, from the lower left corner on
}

// Chart draws the chart of what lies on the ground within a box.
func (g *Ground) Chart(box geometry.Box) Chart {
	c := Chart{ground: g, box: box}
	if box.Empty() {
		return c
	}
	c.long = int(box.W())/64 + 1
	c.rows = make([]uint64, c.long*(int(box.H())+1))
	for l := range g.lines() {
		c.line(l.from, l.to)
	}
	for _, w := range g.words {
		if w.box.Overlaps(box) {
			k := w.Corners()
			n := math.Ceil(w.High - w.Low)
			for i := range int(n) + 1 {
				t := float64(i) / max(n, 1)
				c.line(k[0].Lerp(k[3], t), k[1].Lerp(k[2], t))
			}
		}
	}
	return c
}

// line notes squares that a straight line leads over, one a millimeter.
func (c *Chart) line(p, q geometry.Point) {
	const most = 1e4
	n := math.Ceil(min(max(math.Abs(q.X-p.X), math.Abs(q.Y-p.Y)), most))
	steps := max(n, 1)
	for i := range int(n) + 1 {
		if at := p.Lerp(q, float64(i)/steps); c.box.Holds(at) {
			col, row := int(at.X-c.box.Min.X), int(at.Y-c.box.Min.Y)
			c.rows[row*c.long+col/64] |= 1 << (col % 64)
		}
	}
}

// Level yields the level blocks of a size that stand in the box, so far off its edges and
// clear of the ground (mm), at places a step apart, row after row from above and each from
// the left. They are those that Clear finds one by one; what is drawn on the ground meanwhile
// counts from the next block on.
func (c Chart) Level(wide, high, step, off float64) iter.Seq[Block] {
	return func(yield func(Block) bool) {
		in, covered := c.box.Grow(-off), make([]uint64, c.long)
		for y := in.Max.Y - high; y >= in.Min.Y; y -= step {
			c.cover(covered, y-off, y+high+off)
			for x := in.Min.X; x+wide <= in.Max.X; x += step {
				if past := c.past(covered, x-off, x+wide+off); past > x-off {
					for past > x+step-off {
						x += step
					}
					continue
				}
				b := Block{At: geometry.Point{X: x, Y: y}, Wide: wide, High: high}
				if c.ground.Clear(b, off) && !yield(b) {
					return
				}
			}
		}
	}
}

// whole are the squares that lie whole in a stretch from an edge of the box on.
func whole(from, to float64) (first, end int) {
	return int(math.Ceil(from + surely)), int(math.Floor(to - surely))
}

// cover notes what is covered in the rows that lie whole between two heights.
func (c Chart) cover(out []uint64, low, high float64) {
	clear(out)
	first, end := whole(low-c.box.Min.Y, high-c.box.Min.Y)
	for row := max(first, 0); row < end; row++ {
		for i, set := range c.rows[row*c.long : (row+1)*c.long] {
			out[i] |= set
		}
	}
}

// past is up to where no stretch may begin to lie clear of what is covered in another; without
// end to the left where nothing is.
func (c Chart) past(covered []uint64, from, to float64) float64 {
	first, end := whole(from-c.box.Min.X, to-c.box.Min.X)
	for col := end - 1; col >= max(first, 0); col-- {
		set := covered[col/64] << (63 - col%64)
		if set == 0 {
			col -= col % 64
			continue
		}
		if col -= bits.LeadingZeros64(set); col >= first {
			return c.box.Min.X + float64(col) - surely
		}
	}
	return math.Inf(-1)
}
