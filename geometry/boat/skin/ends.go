package skin

import (
	"math"

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

// closed adds both ends to the stations at the ribs.
func closed(f *frame.Frame, ribs []float.Station, steps int) []float.Station {
	aft := newEnd(f, f.Hull.Stern, f.Stern, f.Ribs[0], -1)
	fore := newEnd(f, f.Hull.Bow, f.Bow, f.Ribs[len(f.Ribs)-1], 1)
	ribs[0].Knuckle, ribs[len(ribs)-1].Knuckle = true, true
	var out []float.Station
	for k := steps; k > 0; k-- {
		out = append(out, aft.station(k, steps))
	}
	out = append(out, ribs...)
	for k := 1; k <= steps; k++ {
		out = append(out, fore.station(k, steps))
	}
	return out
}

// end is the part of the boat between the last rib and the point of one stem.
type end struct {
	f    *frame.Frame
	e    hull.End
	stem frame.Stem
	rib  frame.Rib        // the last
	side float64          // 1 at the bow, -1 at the stern
	last []geometry.Point // the skin's corners on the last rib
	skin float64
}

func newEnd(f *frame.Frame, e hull.End, stem frame.Stem, rib frame.Rib, side float64) end {
	skin := float64(f.Design.Skin.Thickness)
	return end{f, e, stem, rib, side, covered(f.SkinAt(rib), skin), skin}
}

// station returns the k-th station from the last rib out; the last stands at
// the outermost point of the stem.
func (e end) station(k, steps int) float.Station {
	from := e.rib.Station * e.side
	tip := e.e.OuterAt(e.e.TopZ)
	for _, s := range []float64{0, 0.25, 0.5, 0.75, 1} { // a curved head may reach farther out lower down
		p, _ := e.e.Point(e.e.Outer.Length() * s)
		tip = math.Max(tip, p.X)
	}
	u := from + (tip-from)*float64(k)/float64(steps)
	return float.Station{X: e.side * u, Half: e.half(u, tip)}
}

// half draws the section at the distance u from midship: the keel or the stem's
// outer edge, the stringers that have not yet landed on the stem, the gunwale or
// the stem's head.
func (e end) half(u, tip float64) []geometry.Point {
	low := geometry.Point{Y: e.profile(u)}
	if u >= tip {
		top := e.e.TopZ
		return []geometry.Point{{Y: math.Min(low.Y, top)}, {Y: top}}
	}
	from := e.rib.Station * e.side
	share := math.Min(1, (u-from)/(e.e.Toe.X-from))
	edge := float64(e.f.Design.Keel.Width)/2*(1-share) + e.stem.Thickness/2*share
	pts := []geometry.Point{low, {X: edge, Y: low.Y}}
	pts = append(pts, e.corners(u, low.Y)...)
	return append(pts, e.rail(u)...)
}

// profile is the height of the skin on the middle line: the keel line, then the
// outer edge of the stem.
func (e end) profile(u float64) float64 {
	if u <= e.e.Toe.X {
		z, _ := e.f.Hull.KeelZ(e.side * u)
		return z
	}
	lo, hi := 0.0, e.e.Outer.Length()
	for range 60 {
		mid := (lo + hi) / 2
		if p, _ := e.e.Point(mid); p.X < u {
			lo = mid
		} else {
			hi = mid
		}
	}
	p, _ := e.e.Point(hi)
	return p.Y
}

// corners are the outer corners of the stringers at u, drawn in from their places
// on the last rib to their landings.
func (e end) corners(u, low float64) []geometry.Point {
	from := e.rib.Station * e.side
	var pts []geometry.Point
	for i, s := range e.f.Stringers {
		land := e.stem.Landings[i].At
		if u >= land.X {
			continue
		}
		share := (u - from) / (land.X - from)
		mid, was := s.Line.Point(e.side*u), s.Line.Point(e.rib.Station)
		for c := range 2 {
			corner := e.last[2+2*i+c]
			off := corner.Sub(geometry.Point{X: was.Y, Y: was.Z}).Scale(1 - share)
			p := geometry.Point{X: math.Max(0, mid.Y+off.X), Y: mid.Z + off.Y}
			if p.Y > low {
				pts = append(pts, p)
			}
		}
	}
	return pts
}

// rail is the gunwale's outer face at u, and past its end the stem's head.
func (e end) rail(u float64) []geometry.Point {
	if u > e.e.GunwaleX {
		return []geometry.Point{{X: e.stem.Thickness / 2, Y: e.e.TopZ}}
	}
	g := e.f.Gunwale
	var pts []geometry.Point
	for _, up := range []float64{0, g.Height} {
		p := g.EdgeAt(e.side*u, g.Width/2, up)
		pts = append(pts, geometry.Point{X: p.Y + e.skin, Y: p.Z})
	}
	return pts
}
