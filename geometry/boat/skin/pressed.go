package skin

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
)

// Pressed is the cloth as ribs press it out where they stand proud of it between two
// battens: what touches another boat. Flotation leaves the ribs out and says so.
type Pressed struct {
	*Cloth
	out [][]float64 // by rib: how far at even shares between two battens, mm; nil for a rib inside the cloth
}

// Between is how many places are looked at between two battens: of an arc that stands
// 10 mm proud the chords between them cut off 0.3 mm.
const Between = 5

// Press lays the cloth of a frame over its ribs.
func (c *Cloth) Press(f *frame.Frame) Pressed {
	p := Pressed{c, make([][]float64, len(f.Ribs))}
	for i, r := range f.Ribs {
		if ProudAt(f, r).By > 0 {
			p.out[i] = c.pressed(i, r)
		}
	}
	return p
}

// pressed measures how far a rib and its cloth stand outside the straight lines from
// corner to corner, at even shares of each.
func (c *Cloth) pressed(i int, r frame.Rib) []float64 {
	corners := c.covered[i]
	girth, out := r.Section.Half.Length(), r.Thickness/2+c.boat.Thickness()
	const looks = 240
	face := make([]geometry.Point, looks+1)
	for k := range face {
		face[k] = r.Face(girth*float64(k)/looks, out)
	}
	var all []float64
	for gap := 1; gap+1 < len(corners); gap += 2 {
		for k := range Between {
			all = append(all, beyond(face, corners[gap], corners[gap+1], float64(k+1)/(Between+1)))
		}
	}
	return all
}

// beyond returns how far a line stands to the right of the way from a to b, a share
// t along it; 0 when it does not, or does not pass there.
func beyond(line []geometry.Point, a, b geometry.Point, t float64) float64 {
	d := b.Sub(a)
	on := a.Lerp(b, t)
	most := 0.0
	for i := 1; i < len(line); i++ {
		p, q := line[i-1].Sub(on), line[i].Sub(on)
		u, v := p.Dot(d), q.Dot(d)
		if u > 0 || v < 0 || u == v {
			continue
		}
		most = max(most, p.Lerp(q, u/(u-v)).Dot(d.Left().Unit().Scale(-1)))
	}
	return most
}

// At returns the outline at a station like that of the cloth, with Between more points
// between two battens.
func (p Pressed) At(x float64) []geometry.Point {
	corners := p.Cloth.At(x)
	out := []geometry.Point{corners[0]}
	for gap := 1; gap+1 < len(corners); gap += 2 {
		a, b := corners[gap], corners[gap+1]
		out = append(out, a)
		n := b.Sub(a).Left().Unit().Scale(-1)
		for k := range Between {
			out = append(out, a.Lerp(b, float64(k+1)/(Between+1)).Add(n.Scale(p.by(x, gap/2*Between+k))))
		}
		out = append(out, b)
	}
	return append(out, corners[len(corners)-1])
}

// by is how far the cloth is pressed out at a station between two ribs, mm; nothing
// past the last.
func (p Pressed) by(x float64, k int) float64 {
	for i := 1; i < len(p.ribs); i++ {
		a, b := p.ribs[i-1].Station, p.ribs[i].Station
		if x < a || x > b {
			continue
		}
		at := func(rib int) float64 {
			if p.out[rib] == nil {
				return 0
			}
			return p.out[rib][k]
		}
		t := (x - a) / (b - a)
		return at(i-1)*(1-t) + at(i)*t
	}
	return 0
}
