package frame

import (
	"fmt"
	"math"
	"slices"

	"ribwright/geometry"
	"ribwright/geometry/curve"
)

// Gauge is a flat template that lies inside a bent rib, from its middle to one
// head, to show by eye where the bend is off. x is the half-breadth, y the
// height above the baseline, mm.
type Gauge struct {
	Names   []string   // of the ribs it serves
	Outline curve.Path // closed, counter-clockwise
	Ticks   []curve.Path
	Middle  geometry.Point // of its band near the keel, for lettering
}

// gaugeBand is the width of a gauge, mm: stiff enough in 4 mm ply. It narrows
// inside tight bends.
const gaugeBand = 40.0

func newGauge(g Group) (Gauge, error) {
	r := g.Rib
	band := gaugeBand
	for _, b := range r.Section.Half {
		if b.Radius > 0 {
			band = math.Min(band, 0.6*(b.Radius-r.Thickness/2))
		}
	}
	back, err := r.faceLine(-r.Thickness/2 - band)
	if err != nil {
		return Gauge{}, fmt.Errorf("gauge for rib %s: %w", r.Name, err)
	}
	head := curve.Line{A: r.Inner[len(r.Inner)-1].End(), B: back[len(back)-1].End()}
	foot := curve.Line{A: back[0].Start(), B: r.Inner[0].Start()}
	out := Gauge{Names: g.Names, Outline: slices.Concat(r.Inner, curve.Path{head}, back.Reverse(), curve.Path{foot})}
	s := 0.0
	for _, b := range r.Section.Half[:len(r.Section.Half)-1] {
		s += b.Length
		out.Ticks = append(out.Ticks, curve.Polyline(r.Face(s, -r.Thickness/2), r.Face(s, -r.Thickness/2-band/4)))
	}
	out.Middle = r.Face(r.Section.Half.Length()*0.16, -r.Thickness/2-band/2)
	return out, nil
}
