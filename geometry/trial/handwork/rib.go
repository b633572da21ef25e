package handwork

import (
	"math"

	"ribwright/geometry"
	"ribwright/geometry/boat/frame"
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
	opens              step    // when every bend opens by all of itself, to the first order
}

// step is how far the free head of a half rib comes to lie off: out and up, mm.
type step struct{ out, up float64 }

func newRib(r frame.Rib) rib {
	out := rib{Rib: r, at: r.Station}
	out.head, out.last = r.Section.Half.End()
	r.Section.Half.Along(func(i int, p geometry.Point, ds float64) {
		lever, b := out.head.Sub(p), r.Section.Half[i]
		out.level += ds * lever.Y * lever.Y
		out.cross += ds * lever.X * lever.Y
		out.rise += ds * lever.X * lever.X
		out.opens.out += ds * b.Sweep / b.Length * lever.Y
		out.opens.up -= ds * b.Sweep / b.Length * lever.X
	})
	if out.level > 0 {
		out.lift = out.cross / out.level
	}
	return out
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
func (r rib) opened(share float64) step { return step{share * r.opens.out, share * r.opens.up} }

// Opened returns how much wider a rib stands free when it loses a share of all its bends,
// and how much deeper it then is while its heads are held at their breadth, mm for all of
// them, to the first order.
func Opened(r frame.Rib) (wider, deeper float64) {
	n := newRib(r)
	s := n.opened(1)
	return 2 * s.out, s.up + n.lift*s.out
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
