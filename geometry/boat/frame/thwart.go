package frame

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Thwart is a cross piece under the gunwales, seen from above: x across the
// boat from the middle line, y along it from its own middle, forward up, mm.
type Thwart struct {
	Name            string
	Kind            design.Kind
	At              float64    // station of its middle, mm
	Outline         curve.Path // closed, counter-clockwise
	Holes           []curve.Path
	Hole            float64 // their diameter, mm
	Thickness       float64
	Length          float64 // greatest, across the boat, mm
	Between         float64 // between the gunwales' inner lower edges at its middle, mm
	EndCut          float64 // plan angle of the end cuts off square, radians
	ForeEnd, AftEnd float64 // how far the forward and the after corner of an end lie from the middle line, mm
	Under           float64 // how far its ends are cut back at the lower face, to stay clear of the skin, mm
}

const (
	boltHole = 6.0  // mm across, for bolts of 5 mm; common practice, no source
	twoBolts = 40.0 // mm: width from which each end takes two bolts, a quarter of it off the middle: 4 diameters and more between them, 2 to the edges
	edgeIn   = 1.5  // mm that the ends stay inside the gunwale's outer face, clear of the skin; what is left of it keeps the bolt off the end grain
	square   = 70.0 // mm of full width at each end, under the gunwale and a little beyond
)

// CrossMark is what the stick of a cross piece is marked, by its number in the design from 0.
func CrossMark(i int) string { return fmt.Sprintf("C%d", i+1) }

func newThwarts(d *design.Design, g Gunwale) ([]Thwart, error) {
	var out []Thwart
	for _, t := range d.Thwarts {
		if err := clearOfMortises(t, g); err != nil {
			return nil, err
		}
		w, err := newThwart(t, g)
		if err != nil {
			return nil, err
		}
		for i, o := range d.Thwarts[:len(out)] {
			if apart := math.Abs(float64(t.At-o.At)) - float64(t.Width+o.Width)/2; apart < 0 {
				return nil, fmt.Errorf("thwart %q at %.1f mm overlaps %q at %.1f mm by %.0f mm; move one of them", t.Name, float64(t.At), out[i].Name, float64(o.At), -apart)
			}
		}
		out = append(out, w)
	}
	return out, nil
}

// clearOfMortises keeps a thwart from covering a rib head, which would hold it
// off the gunwale.
func clearOfMortises(t design.Thwart, g Gunwale) error {
	half := float64(t.Width) / 2
	aft, fore := g.OnStock(float64(t.At)-half), g.OnStock(float64(t.At)+half)
	for _, m := range g.Mortises {
		lo, hi := m.Ends()
		if fore < lo || aft > hi {
			continue
		}
		room, gaps := 0.0, []Zone(nil)
		for i := 1; i < len(g.Mortises); i++ {
			a, b := g.Mortises[i-1], g.Mortises[i]
			room = math.Max(room, b.Station-a.Station-m.Length)
			gaps = append(gaps, Zone{a.FromMidship, b.FromMidship})
		}
		if room < float64(t.Width)+1 {
			return fmt.Errorf("thwart %q is %.0f mm wide at its ends and does not fit between two ribs; accepted: up to %.0f mm (thwart.width), or a wider ribs.pitch", t.Name, float64(t.Width), math.Floor(room)-1)
		}
		middle := g.StationOf(middleNear(gaps, (aft+fore)/2))
		return fmt.Errorf("thwart %q at %.1f mm lies across the mortise of rib %s at station %.1f mm; put it at %.1f mm", t.Name, float64(t.At), m.Rib, m.Station, middle)
	}
	return nil
}

// BoltsOn returns where its bolts go through the gunwale, mm along the stock from midship.
func (t *Thwart) BoltsOn(g *Gunwale) (out []float64) {
	for _, h := range t.Holes {
		if b := h.Bounds(); b.Min.X > 0 {
			out = append(out, g.OnStock(t.At+(b.Min.Y+b.Max.Y)/2))
		}
	}
	return out
}

func newThwart(t design.Thwart, g Gunwale) (Thwart, error) {
	at, half := float64(t.At), float64(t.Width)/2
	across := g.Width/2 - edgeIn
	aft, mid, fore := g.EdgeAt(at-half, across, 0), g.EdgeAt(at, across, 0), g.EdgeAt(at+half, across, 0)
	out := Thwart{
		Name: t.Name, Kind: t.Kind, At: at, Hole: boltHole, ForeEnd: fore.Y, AftEnd: aft.Y, Thickness: float64(t.Thickness),
		Length:  2 * math.Max(aft.Y, fore.Y),
		Between: 2 * g.EdgeAt(at, -g.Width/2, 0).Y,
		EndCut:  math.Atan2(math.Abs(fore.Y-aft.Y), 2*half),
	}
	if mid.Y < square+20 {
		return out, fmt.Errorf("thwart %q at %.0f mm: the gunwales stand only %.0f mm apart there; put it nearer midship", t.Name, at, out.Between)
	}
	places := []float64{0}
	if 2*half >= twoBolts {
		places = []float64{-half / 2, half / 2}
	}
	for _, side := range []float64{1, -1} {
		for _, y := range places {
			out.Holes = append(out.Holes, curve.Circle(geometry.Point{X: side * g.Line.Point(at+y).Y, Y: y}, boltHole/2))
		}
	}
	out.Outline = thwartOutline(fore.Y, aft.Y, half, float64(t.Waist)/2, t.Kind)
	return out, nil
}

// thwartOutline draws the cross piece: ends cut to the gunwales, full width
// under them, eased in to the waist; a yoke has a hollow for the neck in its
// forward edge, because the bar lies behind the neck.
func thwartOutline(foreX, aftX, half, waist float64, kind design.Kind) curve.Path {
	neck := 0.0
	if kind == design.Yoke {
		neck = 2 * waist / 3
	}
	right := curve.Line{A: geometry.Point{X: aftX, Y: -half}, B: geometry.Point{X: foreX, Y: half}}
	left := curve.Line{A: geometry.Point{X: -foreX, Y: half}, B: geometry.Point{X: -aftX, Y: -half}}
	return slices.Concat(easedEdge(aftX, half, waist, 0).Map(geometry.Stretch(1, -1)), curve.Path{right},
		easedEdge(foreX, half, waist, neck).Reverse(), curve.Path{left})
}

// neckWide is the width of a yoke's neck hollow where there is room for it, mm.
// Common practice, no source.
const neckWide = 150.0

// easedEdge runs from (-end, half) to (end, half), drawn in to waist at the
// middle by smooth curves, with a hollow of the given depth there.
func easedEdge(end, half, waist, hollow float64) curve.Path {
	in := end - square
	left := curve.Line{A: geometry.Point{X: -end, Y: half}, B: geometry.Point{X: -in, Y: half}}
	right := curve.Line{A: geometry.Point{X: in, Y: half}, B: geometry.Point{X: end, Y: half}}
	flat := 0.0
	if hollow > 0 {
		flat = math.Min(neckWide, in) / 2
	}
	out := curve.Path{left, ease(geometry.Point{X: -in, Y: half}, geometry.Point{X: -flat, Y: waist})}
	if flat > 0 {
		out = append(out, hollowArc(geometry.Point{X: -flat, Y: waist}, geometry.Point{X: flat, Y: waist}, hollow))
	}
	return append(out, ease(geometry.Point{X: flat, Y: waist}, geometry.Point{X: in, Y: half}), right)
}

// ease joins two level runs by a cubic that is level at both ends.
func ease(a, b geometry.Point) curve.Cubic {
	mid := (a.X + b.X) / 2
	return curve.Cubic{P0: a, P1: geometry.Point{X: mid, Y: a.Y}, P2: geometry.Point{X: mid, Y: b.Y}, P3: b}
}

// hollowArc is the arc from a to b (both on one level, a left of b) that dips
// by depth below them.
func hollowArc(a, b geometry.Point, depth float64) curve.Arc {
	half := (b.X - a.X) / 2
	r := (half*half + depth*depth) / (2 * depth)
	turn := math.Asin(half / r)
	if depth > half {
		turn = math.Pi - turn
	}
	center := geometry.Point{X: (a.X + b.X) / 2, Y: a.Y - depth + r}
	return curve.Arc{Center: center, Radius: r, From: -math.Pi/2 - turn, Sweep: 2 * turn}
}
