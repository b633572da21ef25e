package eyes

import (
	"fmt"
	"math"

	"ribwright/render/rendertest"
)

// dark is the ink from which a dot counts as dark.
const dark = 128

// farthest is how far a dark dot is looked for, dots.
const farthest = 20

// Difference is how far the dark dots of one picture lie from those of another.
type Difference struct {
	Dark  int     // dark dots looked up
	Off   int     // of these, the ones with no dark dot near enough
	Worst float64 // largest distance to the nearest dark dot, dots; Inf beyond 2 mm
	Where rendertest.Point
}

// String tells it in a line.
func (d Difference) String() string {
	return fmt.Sprintf("%d of %d dark dots lie too far off; the worst by %.1f, at %.1f %.1f mm", d.Off, d.Dark, d.Worst, d.Where.X, d.Where.Y)
}

// Join takes another difference in.
func (d *Difference) Join(o Difference) {
	d.Dark += o.Dark
	d.Off += o.Off
	if o.Worst > d.Worst {
		d.Worst, d.Where = o.Worst, o.Where
	}
}

// Astray looks up every dark dot of a in b, and counts those that lie more than
// the given number of dots from a dark one.
func Astray(a, b *Raster, may float64) Difference {
	var d Difference
	for i, ink := range a.Ink {
		if ink < dark {
			continue
		}
		d.Dark++
		col, row := a.Left+i%a.W, a.Top+i/a.W
		off := b.toDark(col, row)
		if off > may {
			d.Off++
		}
		if off > d.Worst {
			d.Worst, d.Where = off, rendertest.Point{X: gridX(float64(col) + 0.5), Y: gridY(float64(row) + 0.5)}
		}
	}
	return d
}

// toDark returns the distance from a dot to the nearest dark one, dots.
func (r *Raster) toDark(col, row int) float64 {
	if r.At(col, row) >= dark {
		return 0
	}
	best := math.Inf(1)
	for reach := 1; reach <= farthest && float64(reach) <= best; reach++ {
		for k := -reach; k <= reach; k++ {
			for _, at := range [][2]int{{k, -reach}, {k, reach}, {-reach, k}, {reach, k}} {
				if r.At(col+at[0], row+at[1]) >= dark {
					best = math.Min(best, math.Hypot(float64(at[0]), float64(at[1])))
				}
			}
		}
	}
	return best
}

// block is the side of the squares whose ink is weighed, dots.
const block = 40

// Heavier weighs the ink of both pictures in every square of 4 mm that a shows
// whole, and returns the largest difference as a share of what b holds, and
// where. A line drawn twice over at one place has the same dark dots, but its
// soft edges are darker, here or with both moved by half a dot: by 7 % of the line's ink
// or more, whatever its place on the grid. It only tells something where lines agree to a few hundredths of a
// dot: moved further, ink passes from square to square.
func Heavier(a, b *Raster) (float64, rendertest.Point) {
	worst, where := 0.0, rendertest.Point{}
	for top := a.Top; top+block <= a.Top+a.H; top += block {
		for left := a.Left; left+block <= a.Left+a.W; left += block {
			wa, wb := a.weigh(left, top), b.weigh(left, top)
			// Of a line along its edge a square holds a sliver, which says nothing: less
			// than the thinnest line, of one dot.
			if wb < block*255*9/10 {
				continue
			}
			if share := math.Abs(float64(wa-wb)) / float64(wb); share > worst {
				worst, where = share, rendertest.Point{X: gridX(float64(left)), Y: gridY(float64(top))}
			}
		}
	}
	return worst, where
}

// weigh sums up the ink of one square.
func (r *Raster) weigh(left, top int) int {
	sum := 0
	for row := top; row < top+block; row++ {
		for col := left; col < left+block; col++ {
			sum += int(r.At(col, row))
		}
	}
	return sum
}

// Weight sums up all ink of a picture, in dots of full black.
func (r *Raster) Weight() float64 {
	sum := 0
	for _, ink := range r.Ink {
		sum += int(ink)
	}
	return float64(sum) / 255
}
