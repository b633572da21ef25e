// Package skin gives the outside of a framed boat as stations for floating it.
// Cloth bridges flat between the outer corners of keel, stringers and gunwales,
// so the boat that floats is the polygon through them, not the ribs' arcs.
package skin

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/water/float"
)

// Hull returns the boat as its cloth makes it: polygons at the ribs, and in the
// ends polygons through the battens on their way to the stem.
func Hull(f *frame.Frame) (*float.Hull, error) {
	at := make([]float.Station, len(f.Ribs))
	for i, r := range f.Ribs {
		at[i] = float.Station{X: r.Station, Half: covered(f.SkinAt(r), float64(f.Design.Skin.Thickness))}
	}
	return float.New(closed(f, at, endSteps))
}

// Smooth returns the boat with its cloth on the arcs, as if there were a stringer
// everywhere: for comparison.
//
// Errors: a rib whose arcs have no line outside them.
func Smooth(f *frame.Frame) (*float.Hull, error) {
	at := make([]float.Station, len(f.Ribs))
	for i, r := range f.Ribs {
		half, err := arcs(f, r)
		if err != nil {
			return nil, err
		}
		at[i] = float.Station{X: r.Station, Half: half}
	}
	return float.New(closed(f, at, endSteps))
}

// chordMM is how far a chord may leave an arc of the smooth section, mm.
const chordMM = 0.2

// arcs draws the section a stringer's depth and the skin outside the rib, from
// the keel's skin up to the gunwale.
func arcs(f *frame.Frame, r frame.Rib) ([]geometry.Point, error) {
	d := f.Design
	out := r.Thickness/2 + float64(d.Stringers.Depth+d.Skin.Thickness)
	chain, err := r.Section.Half.Offset(-out)
	if err != nil {
		return nil, err
	}
	skin := covered(f.SkinAt(r), float64(d.Skin.Thickness))
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

// covered moves an outline out by the thickness of the skin: every corner along
// the line that halves it, so that each side moves by the thickness. The ends
// move square to their sides; the first stays on the middle line and the last,
// the gunwale's upper edge, at its height.
func covered(pts []geometry.Point, skin float64) []geometry.Point {
	out := make([]geometry.Point, len(pts))
	for i, p := range pts {
		var before, after geometry.Point
		if i > 0 {
			before = p.Sub(pts[i-1]).Unit()
		}
		if i < len(pts)-1 {
			after = pts[i+1].Sub(p).Unit()
		}
		if i == 0 {
			before = after
		}
		if i == len(pts)-1 {
			after = before
		}
		// Out is to the right of the way from keel to gunwale.
		n := before.Add(after).Left().Scale(-1).Unit()
		reach := skin / math.Max(0.5, n.Dot(before.Left().Scale(-1)))
		out[i] = p.Add(n.Scale(reach))
	}
	out[0].X, out[len(out)-1].Y = pts[0].X, pts[len(pts)-1].Y
	return out
}
