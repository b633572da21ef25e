package sail

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// Edge is one side of a sail.
type Edge struct {
	Name  string
	Round bool // cut round by the roach, for it lies on a spar or a laced mast
}

// Plan is a sail as flat cloth, mm: X forward from the mast, Y up from the tack. The
// vee's lies across the boat, X to port.
type Plan struct {
	Rig     design.Rig
	Corners []geometry.Point // counter-clockwise seen from starboard: forward is +X
	Names   []string         // of the corners
	Edges   []Edge           // from each corner to the next
	Spars   []Spar
	Mast    float64 // of the mast above the tack, mm; 0 without one
}

// Spar is a stick of the rig besides the mast.
type Spar struct {
	Name     string
	From, To geometry.Point
	Pressed  bool    // a strut between its ends; else it is bent by the sail along it
	Share    float64 // of the sail's force that it bears
	Hinge    bool    // held at its foot like a mast
	Foot     float64 // of it below the sail, mm
	Diameter float64 // mm, sized later
}

// sparEnds is what of a spar stands over at its ends, mm. Common practice, no source.
const sparEnds = 60.0

// Length returns the length of the spar with what stands over at its ends, mm.
func (s Spar) Length() float64 { return s.To.Sub(s.From).Norm() + s.Foot + sparEnds }

// unit has the proportions of each rig with a mast for a luff of 1, drawn after common
// small boats; common practice, no source.
func unit(r design.Rig) Plan {
	pt := geometry.Pt
	switch r {
	case design.LegOfMutton:
		return Plan{Rig: r, Mast: 1.04, Corners: []geometry.Point{pt(0, 0), pt(0, 1), pt(-0.62, 0.08)},
			Names: []string{"tack", "head", "clew"},
			Edges: []Edge{{"luff", true}, {"leech", false}, {"foot", true}},
			Spars: []Spar{{Name: "sprit boom", From: pt(0, 0.20), To: pt(-0.62, 0.08), Pressed: true, Share: 0.6}}}
	case design.Lug:
		return Plan{Rig: r, Mast: 1.12, Corners: []geometry.Point{pt(0, 0), pt(0.12, 0.92), pt(-0.60, 1.62), pt(-0.98, 0.10)},
			Names: []string{"tack", "throat", "peak", "clew"},
			Edges: []Edge{{"luff", false}, {"head", true}, {"leech", false}, {"foot", true}},
			Spars: []Spar{{Name: "yard", From: pt(0.12, 0.92), To: pt(-0.60, 1.62), Share: 0.45}, {Name: "boom", From: pt(0.05, 0), To: pt(-0.98, 0.10), Share: 0.30}}}
	}
	return Plan{Rig: r, Mast: 1.05, Corners: []geometry.Point{pt(0, 0), pt(0, 1), pt(-0.62, 1.52), pt(-0.98, 0.10)},
		Names: []string{"tack", "throat", "peak", "clew"},
		Edges: []Edge{{"luff", true}, {"head", false}, {"leech", false}, {"foot", true}},
		Spars: []Spar{{Name: "sprit", From: pt(0, 0.28), To: pt(-0.62, 1.52), Pressed: true, Share: 0.6}}}
}

// NewPlan draws the rig with a sail of an area in m2, as a flat polygon between its corners.
// apart is how far a vee's spars stand from the boat's middle where its cloth begins, mm, over
// 0; no other rig asks for it.
func NewPlan(r design.Rig, area, apart float64) Plan {
	if r == design.Vee {
		return veePlan(veeHigh(area, apart), apart)
	}
	p := unit(r)
	return p.scaled(math.Sqrt(area * 1e6 / math.Abs(curve.Area(p.Corners))))
}

func (p Plan) scaled(k float64) Plan {
	out := p
	out.Corners, out.Spars = nil, nil
	for _, c := range p.Corners {
		out.Corners = append(out.Corners, c.Scale(k))
	}
	for _, s := range p.Spars {
		s.From, s.To = s.From.Scale(k), s.To.Scale(k)
		out.Spars = append(out.Spars, s)
	}
	out.Mast *= k
	return out
}

// Area returns the area between the corners, m2.
func (p Plan) Area() float64 { return math.Abs(curve.Area(p.Corners)) / 1e6 }

// Center returns the middle of the area between the corners, where the wind's force
// is taken to act, mm.
func (p Plan) Center() geometry.Point { return Centroid(p.Corners) }

// Centroid returns the middle of the area of a polygon, exactly.
func Centroid(pts []geometry.Point) geometry.Point {
	sum, area := geometry.Point{}, 0.0
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		c := a.Cross(b)
		area += c
		sum = sum.Add(a.Add(b).Scale(c))
	}
	return sum.Scale(1 / (3 * area))
}

// reefShare is how much of the luff one reef takes in. Common practice, no source.
const reefShare = 0.24

// Reefed returns the sail after so many reefs: what is over a line parallel to the
// foot, let down to where the foot was. The vee is rolled up from its head.
func (p Plan) Reefed(reefs int) Plan {
	if reefs == 0 {
		return p
	}
	if p.Rig == design.Vee {
		return p.rolled(1 - reefShare*float64(reefs))
	}
	tack, clew := p.Corners[0], p.Corners[len(p.Corners)-1]
	drop := geometry.Point{Y: reefShare * float64(reefs) * (p.Corners[1].Y - tack.Y)}
	along := clew.Sub(tack)
	over := func(q geometry.Point) float64 { return -along.Cross(q.Sub(tack.Add(drop))) } // right of it, looking aft along the foot
	out := p
	out.Corners = nil
	for _, q := range geometry.Beside(p.Corners, over) {
		out.Corners = append(out.Corners, q.Sub(drop))
	}
	return out
}
