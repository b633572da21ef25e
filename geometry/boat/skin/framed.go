package skin

import (
	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/water/float"
)

// endSteps is how many stations stand between the last rib and the end of the
// boat, even so that Simpson's rule fits: 30 to 40 mm apart in a canoe, where
// twice as many change the volume by less than one part in a thousand
// (TestEnds).
const endSteps = 12

// Of covers a finished frame.
//
// Errors: an outline that is no section of a hull, which a frame that was built has
// not.
func Of(f *frame.Frame) (*Cloth, error) { return New(framed{f}, endSteps) }

// framed is a finished frame as what the cloth lies on.
type framed struct{ f *frame.Frame }

func (b framed) Thickness() float64                  { return float64(b.f.Design.Skin.Thickness()) }
func (b framed) Gunwale(x float64) [2]geometry.Point { return b.f.Gunwale.Outer(x) }

func (b framed) Ribs() []Rib {
	out := make([]Rib, len(b.f.Ribs))
	for i, r := range b.f.Ribs {
		out[i] = Rib{r.Station, b.f.Corners(r)}
	}
	return out
}

func (b framed) Keel(x float64) float64 {
	if e, u := b.f.Hull.End(x); u > e.Toe.X {
		return e.HeightAt(u)
	}
	z, _ := b.f.Hull.KeelZ(x)
	return z
}

func (b framed) Stringer(i int, x float64) geometry.Point {
	p := b.f.Stringers[i].Line.Point(x)
	return geometry.Point{X: p.Y, Y: p.Z}
}

func (b framed) Ends() (stern, bow End) {
	return EndOf(b.f.Hull.Stern, b.f.Stern.Thickness, b.f.Stern.Landings), EndOf(b.f.Hull.Bow, b.f.Bow.Thickness, b.f.Bow.Landings)
}

// EndOf is an end of a hull whose stem has a thickness and bears the stringers' ends.
func EndOf(e hull.End, siding float64, landings []geometry.Point) End {
	out := End{Tip: e.Tip(), Toe: e.Toe.X, Gunwale: e.GunwaleX, Top: e.TopZ, Siding: siding}
	for _, p := range landings {
		out.Landings = append(out.Landings, p.X)
	}
	return out
}

// Smooth returns the boat with its cloth on the arcs, as if there were a stringer
// everywhere: for comparison.
//
// Errors: a rib whose arcs have no line outside them.
func Smooth(f *frame.Frame, c *Cloth) (*float.Hull, error) {
	round := map[float64][]geometry.Point{}
	for i, r := range f.Ribs {
		half, err := arcs(f, r, c.covered[i])
		if err != nil {
			return nil, err
		}
		round[r.Station] = half
	}
	return c.float(func(x float64) []geometry.Point {
		if half, ok := round[x]; ok {
			return half
		}
		return c.At(x)
	})
}

// chordMM is how far a chord may leave an arc of the smooth section, mm.
const chordMM = 0.2

// arcs draws the section a stringer's depth and the skin outside the rib, from
// the keel's skin up to the gunwale.
func arcs(f *frame.Frame, r frame.Rib, skin []geometry.Point) ([]geometry.Point, error) {
	d := f.Design
	out := r.Thickness/2 + float64(d.Stringers.Depth+d.Skin.Thickness())
	chain, err := r.Section.Half.Offset(-out)
	if err != nil {
		return nil, err
	}
	keel, gunwale := skin[0], skin[len(skin)-2:]
	pts := []geometry.Point{keel}
	edge := float64(d.Keel.Width) / 2
	for _, p := range chain.Path(geometry.Point{Y: r.Section.KeelZ - out}, 0).Flatten(chordMM) {
		switch {
		case p.X <= edge && keel.Y < p.Y: // the keel stands proud of the arcs
			if len(pts) == 1 {
				pts = append(pts, geometry.Point{X: edge, Y: keel.Y})
			}
		case p.Y < gunwale[0].Y:
			pts = append(pts, p)
		}
	}
	return append(pts, gunwale...), nil
}
