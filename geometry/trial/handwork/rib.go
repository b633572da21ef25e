package handwork

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
	"ribwright/geometry/curve"
)

// rib is one rib as an error meets it. It is fixed at its middle and free at its head.
type rib struct {
	frame.Rib
	at   float64
	head geometry.Point // from its middle, mm
	last float64        // heading at the head, radians

	// The bending of the half rib by its head, without its stiffness, mm3: level force
	// and level way, level force and rise, rise and rise. Castigliano.
	level, cross, rise float64
	lift               float64 // how much the head rises for each mm that it is pushed in level
}

// step is how far the free head of a half rib comes to lie off: out and up, mm.
type step struct{ out, up float64 }

func newRib(r frame.Rib) rib {
	head, last := r.Section.Half.End()
	out := rib{Rib: r, at: r.Station, head: head, last: last}
	out.along(func(s float64) float64 { y := out.lever(s).Y; return y * y }, &out.level)
	out.along(func(s float64) float64 { l := out.lever(s); return l.X * l.Y }, &out.cross)
	out.along(func(s float64) float64 { x := out.lever(s).X; return x * x }, &out.rise)
	if out.level > 0 {
		out.lift = out.cross / out.level
	}
	return out
}

// along integrates over the half rib, bend by bend.
func (r *rib) along(f func(s float64) float64, sum *float64) {
	from := 0.0
	for _, b := range r.Section.Half {
		// Two panels of five points leave 1e-10 for a quarter turn.
		*sum += curve.Integrate(f, from, from+b.Length, 2)
		from += b.Length
	}
}

// lever is the way from the place s along the half rib to the head.
func (r *rib) lever(s float64) geometry.Point {
	p, _ := r.Section.Half.At(s)
	return r.head.Sub(p)
}

// longer is a rib a millimeter longer, shoulder to shoulder: half of it at each end.
func (r rib) longer() step { return step{math.Cos(r.last) / 2, math.Sin(r.last) / 2} }

// markedOut is a rib with its tightest bend a millimeter too far out on both sides: its
// bottom is longer by that and its side shorter. A straight rib has no bend.
func (r rib) markedOut() step {
	bend, from := r.Bilge()
	if bend < 0 {
		return step{}
	}
	_, a := r.Section.Half.At(from)
	b := a + r.Section.Half[bend].Sweep
	return step{math.Cos(a) - math.Cos(b), math.Sin(a) - math.Sin(b)}
}

// opened is a rib whose bends have all opened by a share of themselves: it swings out
// and down about each of them.
func (r rib) opened(share float64) step {
	var s step
	from := 0.0
	for _, b := range r.Section.Half {
		if b.Radius > 0 {
			s.out += share / b.Radius * curve.Integrate(func(s float64) float64 { return r.lever(s).Y }, from, from+b.Length, 1)
			s.up -= share / b.Radius * curve.Integrate(func(s float64) float64 { return r.lever(s).X }, from, from+b.Length, 1)
		}
		from += b.Length
	}
	return s
}

// upright returns how stiffly the middle of a rib stands against the keel while its
// heads are held apart, over the wood's bending stiffness, 1/mm3.
func (r rib) upright() float64 {
	if r.level == 0 { // a flat bar
		return 2 / r.rise
	}
	room := r.level*r.rise - r.cross*r.cross
	const straight = 1e-6 // a rib that is nearly a straight strut stands as stiff as that
	return 2 * r.level / math.Max(room, straight*r.level*r.rise)
}
