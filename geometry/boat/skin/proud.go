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
	ends := append(append([]float64{0}, f.Design.Stringers.At...), 1)
	worst := Proud{r.Name, math.Inf(-1), 0}
	for gap := range len(ends) - 1 {
		if by := over(r, ends[gap]*girth, ends[gap+1]*girth, corners[2*gap], corners[2*gap+1]); by > worst.By {
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
func ProudRibs(f *frame.Frame) (out []Proud, worst Proud) {
	worst.By = math.Inf(-1)
	for _, r := range f.Ribs {
		p := ProudAt(f, r)
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
	Proud   []Proud // ribs that stand outside it, from aft forward
	Nearest Proud   // the rib that comes out farthest, whether or not it stands outside
	Cure    *Cure   // what keeps every rib inside; nil where none is needed or none is known
}

// ClearanceOf works out how the cloth clears the ribs of a frame.
func ClearanceOf(f *frame.Frame) *Clearance {
	c := &Clearance{}
	c.Proud, c.Nearest = ProudRibs(f)
	if len(c.Proud) > 0 {
		if cure, ok := CureOf(f); ok {
			c.Cure = &cure
		}
	}
	return c
}
