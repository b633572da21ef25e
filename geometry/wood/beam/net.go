package beam

import (
	"math"
	"slices"

	"ribwright/geometry/equations"
)

// Opening is wood that is taken out of a stick's section: a rectangle, as the section
// through the middle of a round hole is one too. Across is measured from the middle of the
// stick's width, up from its underside, mm. What lies outside the stick counts for nothing.
type Opening struct{ From, To, Bottom, Top float64 }

// Net is the section of a rectangular stick with what is taken out of it.
type Net struct {
	width, height float64
	wood, gone    []Opening // rectangles that no seam and no edge of an opening runs through
}

// Opened takes openings, which may overlap, out of a stick width by height, mm. Seams are
// where its plies meet, off the middle of its width.
func Opened(width, height float64, seams []float64, out ...Opening) Net {
	n := Net{width: width, height: height}
	var acrossRoom, upRoom [16]float64 // for as many as mostly are
	across, up := append(append(acrossRoom[:0], seams...), -width/2, width/2), append(upRoom[:0], 0, height)
	for _, o := range out {
		across, up = append(across, o.From, o.To), append(up, o.Bottom, o.Top)
	}
	across, up = within(across, -width/2, width/2), within(up, 0, height)
	cells := make([]Opening, max(0, len(across)-1)*max(0, len(up)-1))
	wood, gone := 0, len(cells) // from the front on, and from the end back
	for i := 1; i < len(across); i++ {
		for j := 1; j < len(up); j++ {
			c := Opening{across[i-1], across[i], up[j-1], up[j]}
			y, z := c.middle()
			if slices.ContainsFunc(out, func(o Opening) bool { return y > o.From && y < o.To && z > o.Bottom && z < o.Top }) {
				gone--
				cells[gone] = c
			} else {
				cells[wood] = c
				wood++
			}
		}
	}
	n.wood, n.gone = cells[:wood:wood], cells[gone:]
	slices.Reverse(n.gone)
	return n
}

// within sorts what lies from lo to hi, each value once.
func within(v []float64, lo, hi float64) []float64 {
	v = slices.DeleteFunc(v, func(x float64) bool { return x < lo || x > hi })
	slices.Sort(v)
	return slices.Compact(v)
}

func (o Opening) middle() (y, z float64) { return (o.From + o.To) / 2, (o.Bottom + o.Top) / 2 }

// moments are the integrals of 1, y and z with each of 1, y and z over a row of rectangles.
func moments(over []Opening) (m [3][3]float64) {
	for _, o := range over {
		y, z := o.middle()
		w, h := o.To-o.From, o.Top-o.Bottom
		area := w * h
		for i, row := range [3][3]float64{{1, y, z}, {y, y*y + w*w/12, y * z}, {z, y * z, z*z + h*h/12}} {
			for j, v := range row {
				m[i][j] += area * v
			}
		}
	}
	return m
}

// Left returns the shares of the section modulus that are left: bent sideways, about the
// upright axis through the middle of what is left, and in the tall way, about the level one.
// 0 where no wood is left. Beam theory.
func (n Net) Left() (flat, tall float64) {
	m := moments(n.wood)
	area := m[0][0]
	if area == 0 {
		return 0, 0
	}
	y, z := m[0][1]/area, m[0][2]/area
	var side, top float64 // the farthest wood
	for _, o := range n.wood {
		side = max(side, math.Abs(o.From-y), math.Abs(o.To-y))
		top = max(top, math.Abs(o.Bottom-z), math.Abs(o.Top-z))
	}
	return (m[1][1] - area*y*y) / side / Rectangle(n.height, n.width).Modulus, (m[2][2] - area*z*z) / top / Rectangle(n.width, n.height).Modulus
}

// Stress is what a stick bears at a place across and up its section, N/mm2: straight within
// each ply, and along no seam asked for.
type Stress func(y, z float64) float64

// Over returns what the wood that is left bears when the stress in the whole stick was so
// much.
//
// How: the wood that goes takes its share of force and moments with it, and the rest takes
// those over as an even pull and a bend, plane sections staying plane: what the whole
// section bore, the net one does. In a stick without seams that is the moment over the net
// section's second moment about its own middle. That stress crowds at the edge of a hole is left out,
// as timber codes do for wood.
func (n Net) Over(whole Stress) Stress {
	var lost [3]float64
	for _, o := range n.gone {
		f := o.plane(whole)
		m := moments([]Opening{o})
		for i := range lost {
			lost[i] += m[i][0]*f[0] + m[i][1]*f[1] + m[i][2]*f[2]
		}
	}
	m := moments(n.wood)
	more, ok := equations.Eliminate([][]float64{m[0][:], m[1][:], m[2][:]}, lost[:])
	if !ok {
		return whole // of no wood
	}
	even, side, tall := more[0], more[1], more[2]
	return func(y, z float64) float64 { return whole(y, z) + even + side*y + tall*z }
}

// Worst returns the greatest stress in what is left, N/mm2, pull or push, when it bears so
// much: +Inf where nothing is left.
func (n Net) Worst(bears Stress) float64 {
	if len(n.wood) == 0 {
		return math.Inf(1)
	}
	worst := 0.0
	for _, o := range n.wood {
		f := o.plane(bears)
		for _, y := range []float64{o.From, o.To} {
			for _, z := range []float64{o.Bottom, o.Top} {
				worst = max(worst, math.Abs(f[0]+f[1]*y+f[2]*z))
			}
		}
	}
	return worst
}

// plane returns the plane f0 + f1 y + f2 z that a stress is over a rectangle, read inside it.
func (o Opening) plane(stress Stress) [3]float64 {
	y, z := o.middle()
	w, h := (o.To-o.From)/4, (o.Top-o.Bottom)/4
	f := stress(y, z)
	dy, dz := (stress(y+w, z)-f)/w, (stress(y, z+h)-f)/h
	return [3]float64{f - dy*y - dz*z, dy, dz}
}
