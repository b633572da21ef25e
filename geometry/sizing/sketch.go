package sizing

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/hull"
	"ribwright/geometry/boat/skin"
	"ribwright/geometry/boat/stringer"
	"ribwright/geometry/design"
)

// sketch is a boat drawn quickly: enough of its outside, weight and lengths to
// judge it, without making its parts. A whole frame takes some ten times as
// long; a search looks at hundreds of boats and makes the parts of one. It fills
// skin.Boat, so that its cloth is that of a finished frame but for what it leaves out:
// stringers run straight from rib to rib and on to the stems, and the gunwales' outer
// faces are taken square across the boat.
//
// TestSketchAgainstFrame says how near it comes.
type sketch struct {
	d     *design.Design
	hull  *hull.Hull
	ribs  []hull.Section // from aft forward
	rail  rail
	ways  *stringer.Courses
	bow   edge
	stern edge
	cloth *skin.Cloth
}

// endSketch is how many stations a sketch has between the last rib and the end.
const endSketch = 6

// newSketch draws a design that need not have passed Check.
func newSketch(d *design.Design) (*sketch, error) {
	h, err := hull.New(d)
	if err != nil {
		return nil, err
	}
	s := &sketch{d: d, hull: h, bow: newEdge(h.Bow, d.Bow)}
	if s.stern = s.bow; !d.EndsAlike() {
		s.stern = newEdge(h.Stern, d.After())
	}
	if err := s.placeRibs(); err != nil {
		return nil, err
	}
	s.rail = newRail(h.Gunwale, float64(d.Gunwale.Tilt), s.ribs)
	if s.ways, err = stringer.Of(d, h, s.ribs); err != nil {
		return nil, err
	}
	s.cloth, err = skin.New(s, endSketch)
	return s, err
}

// placeRibs steps outward from midship by the pitch until the next rib would come too
// near an end.
func (s *sketch) placeRibs() error {
	h, d := s.hull, s.d
	pitch := float64(d.Ribs.Pitch)
	first := 0.0
	if !d.Ribs.AtMidship {
		first = pitch / 2
	}
	aft := first + pitch*math.Floor((h.Stern.GunwaleX-float64(d.Ribs.FromStern)-first)/pitch+1e-9)
	fore := first + pitch*math.Floor((h.Bow.GunwaleX-float64(d.Ribs.FromBow)-first)/pitch+1e-9)
	if !(pitch >= 20 && fore > 0 && aft > 0) {
		return fmt.Errorf("ribs %.0f mm apart have no room between the ends; give ribs.pitch, ribs.from_bow or ribs.from_stern less", pitch)
	}
	n := int(math.Round((fore+aft)/pitch)) + 1
	s.ribs = make([]hull.Section, 0, n)
	for i := range n {
		sec, err := h.Section(-aft + pitch*float64(i))
		if err != nil {
			return err
		}
		s.ribs = append(s.ribs, sec)
	}
	return nil
}

// Thickness returns that of the cloth, mm.
func (s *sketch) Thickness() float64 { return float64(s.d.Skin.Thickness()) }

// Ribs returns the wood under the cloth.
func (s *sketch) Ribs() []skin.Rib {
	out := make([]skin.Rib, len(s.ribs))
	for i, r := range s.ribs {
		out[i] = skin.Rib{Station: r.Station, Corners: r.Corners(s.d, s.ways.On[i], s.Gunwale(r.Station))}
	}
	return out
}

// Keel returns the height of the cloth on the middle line.
func (s *sketch) Keel(x float64) float64 {
	e, u := s.bow, x
	if x < 0 {
		e, u = s.stern, -x
	}
	if u > e.Toe.X {
		return e.over(u)
	}
	z, _ := s.hull.KeelZ(x)
	return z
}

// Stringer returns the middle of a stringer at a station.
func (s *sketch) Stringer(i int, x float64) geometry.Point {
	k := 1
	for k <= len(s.ribs) && s.ribs[k-1].Station < x {
		k++
	}
	a, b := s.ways.Pin(i, k-1), s.ways.Pin(i, k)
	return geometry.Point{X: a.Y, Y: a.Z}.Lerp(geometry.Point{X: b.Y, Y: b.Z}, (x-a.X)/(b.X-a.X))
}

// Gunwale returns the gunwale's outer face at a station.
func (s *sketch) Gunwale(x float64) [2]geometry.Point {
	g := s.d.Gunwale
	p := s.hull.Gunwale.Point(x)
	sin, cos := math.Sincos(float64(g.Tilt))
	w, h := float64(g.Width)/2, float64(g.Height)
	low := geometry.Point{X: p.Y + w*cos, Y: p.Z - w*sin}
	return [2]geometry.Point{low, {X: low.X + h*sin, Y: low.Y + h*cos}}
}

// Ends returns both ends.
func (s *sketch) Ends() (stern, bow skin.End) {
	return skin.EndOf(s.hull.Stern, s.stern.siding, s.ways.Stern), skin.EndOf(s.hull.Bow, s.bow.siding, s.ways.Bow)
}

// edge is one end of the boat with its outer edge as a row of points, which is
// quicker to ask than its arcs.
type edge struct {
	hull.End
	pts    []geometry.Point // from the toe up, as if it were the bow
	siding float64          // of the stem, mm
}

// edgeSteps leaves under half a millimetre between a forefoot of 230 mm and its
// chords.
const edgeSteps = 32

func newEdge(e hull.End, s design.Stem) edge {
	out := edge{End: e, pts: make([]geometry.Point, edgeSteps+1), siding: float64(s.Siding)}
	length, place := e.Outer.Length(), e.Points()
	for i := range out.pts {
		out.pts[i], _ = place(length * float64(i) / edgeSteps)
	}
	return out
}

// over returns the height of the outer edge at the distance u from midship.
func (e edge) over(u float64) float64 {
	for i := 1; i < len(e.pts); i++ {
		if a, b := e.pts[i-1], e.pts[i]; u <= b.X {
			return a.Y + (b.Y-a.Y)*max(0, u-a.X)/max(1e-9, b.X-a.X)
		}
	}
	return e.pts[edgeSteps].Y
}
