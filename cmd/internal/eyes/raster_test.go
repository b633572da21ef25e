package eyes

import (
	"encoding/binary"
	"math"
	"slices"

	"ribwright/render/rendertest"
)

// Raster is a picture of ink on the grid: 0 is bare paper, 255 black. Columns
// count to the right from near x = 0, rows down from near y = 0, ten to the millimetre,
// so rows above have negative numbers.
type Raster struct {
	Left, Top int // the first column and row
	W, H      int
	Ink       []uint8
}

// NewRaster returns bare paper: the dots that lie wholly in the box of mm.
func NewRaster(b rendertest.Box) *Raster {
	r := around(b)
	r.Ink = make([]uint8, r.W*r.H)
	return r
}

// around returns the place of a picture without the picture.
func around(b rendertest.Box) *Raster {
	// A box is written with four decimals: what reaches a dot to 1/1000 mm has it.
	const near = 0.01
	r := &Raster{Left: int(math.Ceil(colOf(b.X0) - near)), Top: int(math.Ceil(rowOf(b.Y1) - near))}
	r.W = max(0, int(math.Floor(colOf(b.X1)+near))-r.Left)
	r.H = max(0, int(math.Floor(rowOf(b.Y0)+near))-r.Top)
	return r
}

// inks are some dots of a row.
type inks []uint8

// row returns dots of a row of the picture, which must have them.
func (r *Raster) row(row, left, count int) inks { return r.Ink[(row-r.Top)*r.W+left-r.Left:][:count] }

// darken adds what light leaves dark: 0 black, 255 bare. Most paper is bare, so
// eight dots are looked at together.
func (k inks) darken(light []uint8) {
	for len(light) >= 8 && len(k) >= 8 {
		if binary.LittleEndian.Uint64(light) != math.MaxUint64 {
			for i, v := range light[:8] {
				k[i] = max(k[i], 255-v)
			}
		}
		k, light = k[8:], light[8:]
	}
	for i, v := range light {
		k[i] = max(k[i], 255-v)
	}
}

// At returns the ink of a dot; there is none beyond the edge.
func (r *Raster) At(col, row int) uint8 {
	col, row = col-r.Left, row-r.Top
	if col < 0 || row < 0 || col >= r.W || row >= r.H {
		return 0
	}
	return r.Ink[row*r.W+col]
}

// Between returns the ink at a place in mm, 0 to 1, blended from the four dots
// around it.
func (r *Raster) Between(p rendertest.Point) float64 {
	u, v := colOf(p.X)-0.5, rowOf(p.Y)-0.5
	col, row := math.Floor(u), math.Floor(v)
	fu, fv := u-col, v-row
	at := func(dc, dr int) float64 { return float64(r.At(int(col)+dc, int(row)+dr)) / 255 }
	return (at(0, 0)*(1-fu)+at(1, 0)*fu)*(1-fv) + (at(0, 1)*(1-fu)+at(1, 1)*fu)*fv
}

// Within returns the part of the picture that lies wholly in the box of mm.
func (r *Raster) Within(b rendertest.Box) *Raster {
	out := NewRaster(b.Meet(r.Box()))
	for row := out.Top; row < out.Top+out.H; row++ {
		copy(out.row(row, out.Left, out.W), r.row(row, out.Left, out.W))
	}
	return out
}

// Erase makes the part of the picture bare that lies in the box of mm.
func (r *Raster) Erase(b rendertest.Box) {
	both := b.Meet(r.Box())
	if both.Empty() {
		return
	}
	bare := around(both)
	for row := bare.Top; row < bare.Top+bare.H; row++ {
		clear(r.row(row, bare.Left, bare.W))
	}
}

// Darkest returns the most ink of any dot.
func (r *Raster) Darkest() uint8 {
	if len(r.Ink) == 0 {
		return 0
	}
	return slices.Max(r.Ink)
}

// Box returns the place of the picture in mm.
func (r *Raster) Box() rendertest.Box {
	return rendertest.Box{X0: gridX(float64(r.Left)), Y0: gridY(float64(r.Top + r.H)), X1: gridX(float64(r.Left + r.W)), Y1: gridY(float64(r.Top))}
}

// Inked returns the box around all dots that are not bare, in mm; it is empty
// when there are none.
func (r *Raster) Inked() rendertest.Box {
	b := rendertest.Nowhere()
	for i, ink := range r.Ink {
		if ink == 0 {
			continue
		}
		x, y := gridX(float64(r.Left+i%r.W)), gridY(float64(r.Top+i/r.W))
		b = rendertest.Box{X0: math.Min(b.X0, x), Y0: math.Min(b.Y0, y-1.0/perMM), X1: math.Max(b.X1, x+1.0/perMM), Y1: math.Max(b.Y1, y)}
	}
	return b
}

// fromMM takes mm to dots from the picture's upper left corner.
func (r *Raster) fromMM() Motion {
	return Motion{perMM, 0, 0, -perMM, colOf(0) - float64(r.Left), rowOf(0) - float64(r.Top)}
}
