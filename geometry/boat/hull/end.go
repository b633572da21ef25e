package hull

import (
	"fmt"
	"math"

	"ribwright/geometry"
	"ribwright/geometry/curve"
	"ribwright/geometry/design"
)

// End is the outline of one end of the boat in the middle plane, drawn as if
// it were the bow: X is the distance from midship, Y the height above the
// baseline, mm. The outer edge is the skin's face.
type End struct {
	Toe     geometry.Point // where the keel line ends and the forefoot begins
	Heading float64        // of the keel line at the toe, radians above level
	Outer   curve.Chain    // from the toe up to the top of the stem head

	GunwaleX float64 // where the gunwale lines end, mm from midship
	GunwaleZ float64 // height of the gunwale lines there
	TopZ     float64 // height of the stem head, level with the gunwales' tops
}

// newEnd finds the toe such that the outermost point of the stem stands at
// half the length overall. The outer edge leaves the keel line smoothly.
func newEnd(name string, d *design.Design, s design.Stem, rocker, gunwaleZ float64) (End, error) {
	e := End{GunwaleZ: gunwaleZ, TopZ: gunwaleZ + float64(d.Gunwale.Height)*math.Cos(float64(d.Gunwale.Tilt))}
	half, straight := float64(d.Hull.Length)/2, float64(d.Hull.KeelStraight)/2
	lo, hi := straight+4*rocker+1, half // from a keel that rises at 27 degrees, steeper than any
	if err := e.build(lo, straight, rocker, s); err != nil {
		return End{}, fmt.Errorf("%s: %w", name, err)
	}
	if e.Tip() > half {
		return End{}, fmt.Errorf("%s: the forefoot and rake need %.0f mm beyond the straight keel but only %.0f mm are left; shorten hull.keel_straight or %s.forefoot_radius",
			name, e.Tip()-straight, half-straight, name)
	}
	over := func(toe float64) float64 {
		if e.build(toe, straight, rocker, s) != nil {
			return half // a toe that lies too far out: the keel is flattest and the forefoot highest there
		}
		return e.Tip() - half
	}
	if e.build(curve.Root(lo, hi, 0, over), straight, rocker, s) != nil {
		return End{}, fmt.Errorf("%s: %w", name, e.build(hi, straight, rocker, s)) // what serves there serves anywhere
	}
	if in := float64(d.Skin.Thickness() + s.Moulded); e.Tightest() <= in {
		return End{}, fmt.Errorf("%s: its outer edge is bent to a radius of %.0f mm, which leaves no inner edge to wood %.0f mm deep; accepted: more than %.0f mm; give less head_turn, a larger forefoot_radius or head_radius, or less moulded depth",
			name, e.Tightest(), float64(s.Moulded), in)
	}
	e.GunwaleX = e.OuterAt(gunwaleZ) - float64(s.Horn)
	return e, nil
}

// build draws the end with its toe at the distance toe from midship.
func (e *End) build(toe, straight, rocker float64, s design.Stem) error {
	e.Toe = geometry.Point{X: toe, Y: rocker}
	e.Heading = math.Atan2(2*rocker, toe-straight)
	up := math.Pi/2 - float64(s.Rake)
	turn := up - e.Heading
	radius := float64(s.ForefootRadius)
	e.Outer = curve.Chain{curve.Turned(radius, turn)}
	z := rocker + radius*(math.Cos(e.Heading)-math.Cos(up))
	if z >= e.GunwaleZ {
		return fmt.Errorf("a forefoot radius of %.0f mm ends %.0f mm up, above the gunwales at %.0f mm; accepted: less than %.0f mm",
			radius, z, e.GunwaleZ, radius*(e.GunwaleZ-rocker)/(z-rocker))
	}
	bends, err := head(s, up, e.TopZ-z)
	e.Outer = append(e.Outer, bends...)
	return err
}

// head rises by the given height from the heading up: straight, or turning on inboard.
func head(s design.Stem, up, rise float64) (curve.Chain, error) {
	radius, turn := float64(s.HeadRadius), float64(s.HeadTurn)
	switch {
	case turn > 0:
		return turnedHead(radius, turn, up, rise)
	case radius == 0:
		return curve.Chain{curve.Straight(rise / math.Sin(up))}, nil
	}
	c := math.Cos(up) - rise/radius
	if c <= -1 {
		return nil, fmt.Errorf("a head radius of %.0f mm curls over before it has risen the %.0f mm to the stem head; accepted: more than %.0f mm, or 0 mm for a straight rake",
			radius, rise, rise/(1+math.Cos(up)))
	}
	return curve.Chain{curve.Turned(radius, math.Acos(c)-up)}, nil
}

// turnedHead ends with the given turn: of the given radius over a straight rake, or in
// one curve all the way for a radius of zero.
func turnedHead(radius, turn, up, rise float64) (curve.Chain, error) {
	rises := math.Cos(up) - math.Cos(up+turn) // of each mm of radius
	whole := rise / rises
	switch {
	case radius > whole:
		return nil, fmt.Errorf("a head that turns by %.4g deg on a radius of %.0f mm needs %.0f mm of height and %.0f mm are left over the forefoot; accepted: a head_radius up to %.0f mm, or 0 mm for one even curve",
			degrees(turn), radius, radius*rises, rise, math.Floor(whole))
	case radius == 0:
		return curve.Chain{curve.Turned(whole, turn)}, nil
	}
	return curve.Chain{curve.Straight((rise - radius*rises) / math.Sin(up)), curve.Turned(radius, turn)}, nil
}

// Point returns the place on the outer edge at the length s from the toe, mm,
// and the heading there.
func (e End) Point(s float64) (geometry.Point, float64) {
	p, heading := e.Outer.At(s)
	return geometry.Turn(e.Heading).Apply(p).Add(e.Toe), heading + e.Heading
}

// Points is Point for many places, quickest from the toe up.
func (e End) Points() func(s float64) (geometry.Point, float64) {
	outer, turn := e.Outer.Walk(), geometry.Turn(e.Heading)
	return func(s float64) (geometry.Point, float64) {
		p, heading := outer.At(s)
		return turn.Apply(p).Add(e.Toe), heading + e.Heading
	}
}

// Tightest returns the least radius of the outer edge, mm.
func (e End) Tightest() float64 {
	least := math.Inf(1)
	for _, b := range e.Outer {
		if b.Radius > 0 {
			least = math.Min(least, b.Radius)
		}
	}
	return least
}

// farthest is the length along the outer edge to its outermost place, mm: its end,
// but for a head that curls back in.
func (e End) farthest() float64 {
	heading, s := e.Heading, 0.0
	for _, b := range e.Outer {
		if left := math.Pi/2 - heading; b.Sweep > left {
			return s + b.Radius*left
		}
		heading, s = heading+b.Sweep, s+b.Length
	}
	return s
}

// Tip returns the distance of the outermost place from midship, mm.
func (e End) Tip() float64 {
	p, _ := e.Point(e.farthest())
	return p.X
}

// HeightAt returns the height of the outer edge at the distance u from midship, mm,
// under its outermost place; distances beyond the edge give its ends.
func (e End) HeightAt(u float64) float64 {
	p, _ := e.Point(e.lengthUnder(u))
	return p.Y
}

// lengthUnder returns the length along the outer edge from the toe to the distance u from
// midship, mm, under its outermost place.
func (e End) lengthUnder(u float64) float64 {
	return math.Min(e.Outer.Until(u-e.Toe.X, e.Heading), e.farthest())
}

// Inside returns the place in mm inside the outer edge at the length s along it, and
// the heading there, radians above level.
func (e End) Inside(s, in float64) (geometry.Point, float64) {
	p, heading := e.Point(s)
	return p.Add(geometry.Polar(in, heading+math.Pi/2)), heading
}

// OuterAt returns the distance of the outer edge from midship at the height z
// above the baseline, mm; heights beyond the edge's ends give its end points.
func (e End) OuterAt(z float64) float64 {
	p, _ := e.Point(e.LengthTo(z))
	return p.X
}

// LengthTo returns the length along the outer edge from the toe up to the height
// z above the baseline, mm; heights beyond the edge give its ends.
func (e End) LengthTo(z float64) float64 { return e.Outer.Until(z-e.Toe.Y, e.Heading-math.Pi/2) }
