package skin

import (
	"fmt"
	"math"
	"strings"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
)

// Proud is where a rib comes farthest out towards the cloth, or through it.
type Proud struct {
	Rib string
	By  float64 // mm that its outer face stands outside the flat cloth; negative inside
	Gap int     // after how many of the stringers, counted from the keel
}

// ProudAt measures a rib against the cloth, which spans flat between the battens.
func ProudAt(f *frame.Frame, r frame.Rib) Proud {
	corners, girth := f.Corners(r)[1:], r.Section.Half.Length()
	ends := append(append([]float64{0}, r.Stringers...), girth)
	worst := Proud{r.Name, math.Inf(-1), 0}
	for gap := range len(ends) - 1 {
		if by := over(r, ends[gap], ends[gap+1], corners[2*gap], corners[2*gap+1]); by > worst.By {
			worst.By, worst.Gap = by, gap
		}
	}
	return worst
}

// shows is how far a rib must stand out to be told of, mm: what rounds to 0.1.
const shows = 0.05

// ProudRibs returns the ribs that stand outside the cloth, from aft forward, and the
// place of the rib that comes out farthest, whether or not it stands outside. Only
// the part from batten to batten is looked at, at the ribs' middles.
func ProudRibs(f *frame.Frame) (out []Proud, worst Proud) { return proudOf(all(f)) }

// all measures every rib of a frame, from aft forward.
func all(f *frame.Frame) []Proud {
	out := make([]Proud, len(f.Ribs))
	for i, r := range f.Ribs {
		out[i] = ProudAt(f, r)
	}
	return out
}

// proudOf picks the ribs that stand outside the cloth, and the one that comes out farthest.
func proudOf(ribs []Proud) (out []Proud, worst Proud) {
	worst.By = math.Inf(-1)
	for _, p := range ribs {
		if p.By > worst.By {
			worst = p
		}
		if p.By >= shows {
			out = append(out, p)
		}
	}
	return out, worst
}

// Runs names ribs, those that follow each other as "A6 to F6".
func Runs(f *frame.Frame, ribs []Proud) string {
	in := map[string]bool{}
	for _, p := range ribs {
		in[p.Rib] = true
	}
	var out []string
	for i := 0; i < len(f.Ribs); i++ {
		first := i
		for i < len(f.Ribs) && in[f.Ribs[i].Name] {
			i++
		}
		switch name := func(k int) string { return f.Ribs[k].Name }; i - first {
		case 0:
		case 1:
			out = append(out, name(first))
		case 2:
			out = append(out, name(first), name(i-1))
		default:
			out = append(out, name(first)+" to "+name(i-1))
		}
	}
	return strings.Join(out, ", ")
}

// over returns how far the outer face of a rib between two places along its mid-line,
// mm, stands to the right of the line from a to b. A rib only ever turns left, so
// the face comes out farthest where it runs along the line.
func over(r frame.Rib, from, to float64, a, b geometry.Point) float64 {
	d := b.Sub(a)
	s := math.Min(math.Max(headed(r.Section.Half, math.Atan2(d.Y, d.X)), from), to)
	return d.Unit().Cross(a.Sub(r.Face(s, r.Thickness/2)))
}

// headed returns where along a chain, mm, it first has a heading, radians; its end
// when it never turns that far.
func headed(c curve.Chain, heading float64) float64 {
	s, turned := 0.0, 0.0
	for _, b := range c {
		if b.Sweep > 0 && turned+b.Sweep >= heading {
			return s + b.Radius*math.Max(0, heading-turned)
		}
		s, turned = s+b.Length, turned+b.Sweep
	}
	return s
}

// Between names the battens on either side of the place.
func (p Proud) Between(f *frame.Frame) string {
	name := func(i int) string {
		switch {
		case i == 0:
			return "the keel"
		case i > len(f.Stringers):
			return "the gunwale"
		}
		return fmt.Sprintf("stringer %d", i)
	}
	return name(p.Gap) + " and " + name(p.Gap+1)
}

// Clearance is how the flat cloth clears the ribs.
type Clearance struct {
	Ribs    []Proud // every rib, from aft forward
	Proud   []Proud // ribs that stand outside it, from aft forward
	Nearest Proud   // the rib that comes out farthest, whether or not it stands outside
	Cure    *Cure   // what keeps every rib inside; nil where none is needed or none is known
}

// ClearanceOf works out how the cloth clears the ribs of a frame.
func ClearanceOf(f *frame.Frame) *Clearance {
	c := &Clearance{Ribs: all(f)}
	c.Proud, c.Nearest = proudOf(c.Ribs)
	if len(c.Proud) > 0 {
		if cure, ok := CureOf(f); ok {
			c.Cure = &cure
		}
	}
	return c
}

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
