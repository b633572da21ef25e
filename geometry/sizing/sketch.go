package sizing

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/design"
	"ribwright/geometry/water/float"
)

// sketch is a boat drawn quickly: enough of its outside, weight and lengths to
// judge it, without making its parts. A whole frame takes some ten times as
// long; a search looks at hundreds of boats and makes the parts of one.
//
// TestSketchAgainstFrame says how near it comes.
type sketch struct {
	d     *design.Design
	hull  *hull.Hull
	ribs  []hull.Section // from aft forward
	outer [][]geometry.Point
	rows  []float.Station
	float *float.Hull
	bow   edge
	stern edge

	offStringer, offKeel float64 // of the skin beyond mid-thickness of the ribs, mm
}

// endSketch is how many stations a sketch has between the last rib and the end.
const endSketch = 6

// newSketch draws a design that need not have passed Check.
func newSketch(d *design.Design) (*sketch, error) {
	h, err := hull.New(d)
	if err != nil {
		return nil, err
	}
	s := &sketch{d: d, hull: h, bow: newEdge(h.Bow), stern: newEdge(h.Stern)}
	skin := float64(d.Skin.Thickness)
	s.offStringer = float64(d.Ribs.Thickness)/2 + float64(d.Stringers.Depth) + skin
	s.offKeel = float64(d.Ribs.Thickness)/2 + float64(d.Keel.Depth) + skin
	pitch := float64(d.Ribs.Pitch)
	first := 0.0
	if !d.Ribs.AtMidship {
		first = pitch / 2
	}
	aft := first + pitch*math.Floor((h.Stern.GunwaleX-float64(d.Ribs.FromStern)-first)/pitch+1e-9)
	fore := first + pitch*math.Floor((h.Bow.GunwaleX-float64(d.Ribs.FromBow)-first)/pitch+1e-9)
	if !(pitch >= 20 && fore > 0 && aft > 0) {
		return nil, fmt.Errorf("ribs %.0f mm apart have no room between the ends; give ribs.pitch, ribs.from_bow or ribs.from_stern less", pitch)
	}
	n := int(math.Round((fore+aft)/pitch)) + 1
	for i := range n {
		sec, err := h.Section(-aft + pitch*float64(i))
		if err != nil {
			return nil, err
		}
		s.ribs = append(s.ribs, sec)
		s.outer = append(s.outer, s.outline(sec))
	}
	s.rows = s.stations()
	s.float, err = float.New(s.rows)
	return s, err
}

// outline is the skin of the port half at a rib, from the keel out: cloth flat
// between the outer corners of keel, stringers and gunwale.
func (s *sketch) outline(sec hull.Section) []geometry.Point {
	d := s.d
	half := float64(d.Stringers.Width) / 2
	low := sec.KeelZ - s.offKeel
	out := []geometry.Point{{Y: low}, {X: float64(d.Keel.Width) / 2, Y: low}}
	girth := sec.Half.Length()
	for _, share := range d.Stringers.At {
		p, heading := sec.Half.At(share * girth)
		p = p.Add(geometry.Polar(s.offStringer, heading-math.Pi/2))
		p.Y += sec.KeelZ
		along := geometry.Polar(half, heading)
		out = append(out, p.Sub(along), p.Add(along))
	}
	return append(out, s.rail(sec.Station)...)
}

// rail is the gunwale's outer face at a station.
func (s *sketch) rail(x float64) []geometry.Point {
	g := s.d.Gunwale
	p := s.hull.Gunwale.Point(x)
	sin, cos := math.Sincos(float64(g.Tilt))
	w, h, skin := float64(g.Width)/2, float64(g.Height), float64(s.d.Skin.Thickness)
	low := geometry.Point{X: p.Y + w*cos + skin, Y: p.Z - w*sin}
	return []geometry.Point{low, {X: low.X + h*sin, Y: low.Y + h*cos}}
}

// stations lists the sections from aft forward, both ends included.
func (s *sketch) stations() []float.Station {
	last := len(s.ribs) - 1
	var out []float.Station
	for k := endSketch; k > 0; k-- {
		out = append(out, s.endStation(s.stern, 0, -1, k))
	}
	for i, r := range s.ribs {
		out = append(out, float.Station{X: r.Station, Half: s.outer[i], Knuckle: i == 0 || i == last})
	}
	for k := 1; k <= endSketch; k++ {
		out = append(out, s.endStation(s.bow, last, 1, k))
	}
	return out
}

// endStation draws the k-th section from the last rib to the end: every corner
// goes in a straight line from its place on the rib to the stem.
func (s *sketch) endStation(e edge, rib int, side float64, k int) float.Station {
	from := s.ribs[rib].Station * side
	tip := e.at(e.TopZ)
	u := from + (tip-from)*float64(k)/endSketch
	low, thick := s.profile(e, u, side), float64(s.stem(side).Siding)/2
	if k == endSketch {
		return float.Station{X: side * u, Half: []geometry.Point{{Y: math.Min(low, e.TopZ)}, {Y: e.TopZ}}}
	}
	corners := s.outer[rib]
	gunwale := corners[len(corners)-2].Y
	out := make([]geometry.Point, 0, len(corners)+1)
	out = append(out, geometry.Point{Y: low})
	for i, p := range corners[1 : len(corners)-2] {
		land, height := e.Toe.X, low
		if i > 0 {
			height = p.Y + (e.GunwaleZ-gunwale)*p.Y/math.Max(1, gunwale)
			land = e.at(height) - float64(s.stem(side).Moulded)/2
		}
		if u >= land {
			continue
		}
		share := (u - from) / (land - from)
		out = append(out, geometry.Point{X: p.X + (thick-p.X)*share, Y: math.Max(low, p.Y+(height-p.Y)*share)})
	}
	if u > e.GunwaleX {
		return float.Station{X: side * u, Half: append(out, geometry.Point{X: thick, Y: e.TopZ})}
	}
	return float.Station{X: side * u, Half: append(out, s.rail(side*u)...)}
}

func (s *sketch) stem(side float64) design.Stem {
	if side < 0 {
		return s.d.After()
	}
	return s.d.Bow
}

// profile is the height of the skin on the middle line at u from midship.
func (s *sketch) profile(e edge, u, side float64) float64 {
	if u > e.Toe.X {
		return e.over(u)
	}
	z, _ := s.hull.KeelZ(side * u)
	return z
}
