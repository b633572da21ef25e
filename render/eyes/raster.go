package eyes

import (
	"math"

	"ribwright/render/rendertest"
)

// Raster is a picture of ink on the grid: 0 is bare paper, 255 black. Columns
// count to the right from x = 0, rows down from y = 0, ten to the millimetre,
// so rows above y = 0 have negative numbers.
type Raster struct {
	Left, Top int // the first column and row
	W, H      int
	Ink       []uint8
}

// NewRaster returns bare paper: the dots that lie wholly in the box of mm.
func NewRaster(b rendertest.Box) *Raster {
	// A box is written with four decimals: what reaches a dot to 1/1000 mm has it.
	const near = 0.01
	r := &Raster{Left: int(math.Ceil(b.X0*perMM - near)), Top: int(math.Ceil(-b.Y1*perMM - near))}
	r.W = int(math.Floor(b.X1*perMM+near)) - r.Left
	r.H = int(math.Floor(-b.Y0*perMM+near)) - r.Top
	r.Ink = make([]uint8, r.W*r.H)
	return r
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
	u, v := p.X*perMM-0.5, -p.Y*perMM-0.5
	col, row := math.Floor(u), math.Floor(v)
	fu, fv := u-col, v-row
	at := func(dc, dr int) float64 { return float64(r.At(int(col)+dc, int(row)+dr)) / 255 }
	return (at(0, 0)*(1-fu)+at(1, 0)*fu)*(1-fv) + (at(0, 1)*(1-fu)+at(1, 1)*fu)*fv
}

// Paste adds what another picture holds; where both do the darker counts.
func (r *Raster) Paste(o *Raster) {
	left, right := max(r.Left, o.Left), min(r.Left+r.W, o.Left+o.W)
	if left >= right {
		return
	}
	for row := max(r.Top, o.Top); row < min(r.Top+r.H, o.Top+o.H); row++ {
		mine := r.Ink[(row-r.Top)*r.W+left-r.Left:][:right-left]
		for i, ink := range o.Ink[(row-o.Top)*o.W+left-o.Left:][:right-left] {
			if ink > mine[i] {
				mine[i] = ink
			}
		}
	}
}

// Within returns the part of the picture that lies wholly in the box of mm.
func (r *Raster) Within(b rendertest.Box) *Raster {
	out := NewRaster(b)
	out.Paste(r)
	return out
}

// Box returns the place of the picture in mm.
func (r *Raster) Box() rendertest.Box {
	return rendertest.Box{X0: float64(r.Left) / perMM, Y0: -float64(r.Top+r.H) / perMM, X1: float64(r.Left+r.W) / perMM, Y1: -float64(r.Top) / perMM}
}

// Inked returns the box around all dots that are not bare, in mm; it is empty
// when there are none.
func (r *Raster) Inked() rendertest.Box {
	b := rendertest.Nowhere()
	for i, ink := range r.Ink {
		if ink == 0 {
			continue
		}
		x, y := float64(r.Left+i%r.W)/perMM, -float64(r.Top+i/r.W)/perMM
		b = rendertest.Box{X0: math.Min(b.X0, x), Y0: math.Min(b.Y0, y-1.0/perMM), X1: math.Max(b.X1, x+1.0/perMM), Y1: math.Max(b.Y1, y)}
	}
	return b
}

// fromMM takes mm to dots from the picture's upper left corner.
func (r *Raster) fromMM() Motion {
	return Motion{perMM, 0, 0, -perMM, -float64(r.Left), -float64(r.Top)}
}
