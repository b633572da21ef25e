// Package relief opens the inside corners of parts, where a round cutter would
// leave wood that keeps the mating part from closing.
package relief

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/layout"
)

// Kind is how a corner is opened.
type Kind int

// The kinds of relief.
const (
	None    Kind = iota
	Round        // a hole of the cutter's size about the corner
	Dogbone      // a bite of the cutter's size that just reaches the corner, along its middle
)

var names = [...]string{"none", "round", "dogbone"}

func (k Kind) String() string { return names[k] }

// Parse reads the name of a kind.
func Parse(s string) (Kind, error) {
	for k, n := range names {
		if s == n {
			return Kind(k), nil
		}
	}
	return None, fmt.Errorf("no relief %q; accepted: none, round, dogbone", s)
}

// square is how far a corner may be off 90 degrees and still be a square corner
// into which another part is fitted.
const square = 20 * math.Pi / 180

// Part returns the part with its square inside corners opened for a cutter of the
// given diameter, mm. Corners between sides shorter than the cutter's radius or
// between curves are left alone. The part that is given is not changed.
func Part(p layout.Part, k Kind, diameter float64) layout.Part {
	if k == None {
		return p
	}
	cut := make([]curve.Path, len(p.Cut))
	for i, c := range p.Cut {
		// Waste lies outside the outer edge, and inside a hole.
		cut[i] = open(c, k, diameter/2, i < len(p.Cut)-1)
	}
	p.Cut = cut
	return p
}

func open(c curve.Path, k Kind, r float64, hole bool) curve.Path {
	if !c.Closed() || len(c) < 3 {
		return c
	}
	left := (curve.Area(c.Flatten(0.1)) > 0) == hole // of the edge lies waste
	var bites []bite
	for i := range c {
		bites = append(bites, biteAt(c[(i-1+len(c))%len(c)], c[i], k, r, left))
	}
	// What is left of each side stands between the bites at its two ends.
	var out curve.Path
	for i, s := range c {
		b, next := bites[i], bites[(i+1)%len(c)]
		if b.ok {
			out = append(out, b.arc)
		}
		l, straight := s.(curve.Line)
		if !straight {
			out = append(out, s)
			continue
		}
		if b.ok {
			l.A = b.arc.End()
		}
		if next.ok {
			l.B = next.arc.Start()
		}
		out = append(out, l)
	}
	return out
}

// bite is the arc that takes the place of a corner.
type bite struct {
	arc curve.Arc
	ok  bool
}

// biteAt returns the bite at the corner between two sides.
func biteAt(before, after curve.Segment, k Kind, r float64, left bool) bite {
	a, isA := before.(curve.Line)
	b, isB := after.(curve.Line)
	if !isA || !isB {
		return bite{}
	}
	u, v := a.A.Sub(a.B).Unit(), b.B.Sub(b.A).Unit() // away from the corner along both sides
	wedge := math.Acos(math.Max(-1, math.Min(1, u.Dot(v))))
	turnsLeft := a.B.Sub(a.A).Cross(b.B.Sub(b.A)) > 0
	if turnsLeft != left || math.Abs(wedge-math.Pi/2) > square {
		return bite{}
	}
	center, along := a.B, r
	if k == Dogbone {
		center, along = a.B.Add(u.Add(v).Unit().Scale(r)), 2*r*math.Cos(wedge/2)
	}
	if a.Length() < 2*along || b.Length() < 2*along {
		return bite{}
	}
	from, to := a.B.Add(u.Scale(along)).Sub(center), a.B.Add(v.Scale(along)).Sub(center)
	start := math.Atan2(from.Y, from.X)
	sweep := math.Mod(math.Atan2(to.Y, to.X)-start+4*math.Pi, 2*math.Pi)
	// The arc runs round the side where the corner is, away from the waste.
	if through := geometry.Polar(1, start+sweep/2); through.Dot(u.Add(v)) > 0 {
		sweep -= 2 * math.Pi
	}
	return bite{curve.Arc{Center: center, Radius: r, From: start, Sweep: sweep}, true}
}
